import { deleteCause, readCase, updateCause } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const number = caseNumber(params.number);
  const id = recordId(params.id, "cause");
  const { version } = await updateCause(ctx, number, id, ifMatch(request), await rawJson(request));
  const found = await readCase(ctx, number);
  return json(
    found.causes.find((cause) => cause.id === id),
    { headers: { etag: etag(version) } },
  );
});

export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  await deleteCause(ctx, caseNumber(params.number), recordId(params.id, "cause"), ifMatch(request));
  return new Response(null, { status: 204 });
});
