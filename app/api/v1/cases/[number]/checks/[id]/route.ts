import { deleteCheck, updateCheck } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const id = recordId(params.id, "check");
  const check = await updateCheck(ctx, caseNumber(params.number), id, ifMatch(request), await rawJson(request));
  return json(check, { headers: { etag: etag(check.version) } });
});

export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  await deleteCheck(ctx, caseNumber(params.number), recordId(params.id, "check"), ifMatch(request));
  return new Response(null, { status: 204 });
});
