import { readCase, updateCase } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const found = await readCase(ctx, caseNumber(params.number));
  return json(found, { headers: { etag: etag(found.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const number = caseNumber(params.number);
  await updateCase(ctx, number, ifMatch(request), await rawJson(request));
  const found = await readCase(ctx, number);
  return json(found, { headers: { etag: etag(found.version) } });
});
