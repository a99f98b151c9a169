import { readClaim, updateClaim } from "#lib/services/codes/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const claim = await readClaim(ctx, recordId(params.id, "claim"));
  return json(claim, { headers: { etag: etag(claim.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const id = recordId(params.id, "claim");
  await updateClaim(ctx, id, ifMatch(request), await rawJson(request));
  const claim = await readClaim(ctx, id);
  return json(claim, { headers: { etag: etag(claim.version) } });
});
