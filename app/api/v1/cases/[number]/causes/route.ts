import { readCase, recordCause } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const number = caseNumber(params.number);
  const { id } = await recordCause(ctx, number, await rawJson(request));
  const found = await readCase(ctx, number);
  return json(
    found.causes.find((cause) => cause.id === id),
    { status: 201 },
  );
});
