import { createCopy } from "#lib/services/boards/index.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const given = await rawJson(request);
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    throw new ServiceError("invalid", "Send an object.", { problems: [{ path: "", message: "not an object" }] });
  }
  return json(await createCopy(ctx, { ...given, board: params.slug }), { status: 201 });
});
