import { createClaim } from "#lib/services/codes/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const { made, ...claim } = await createClaim(ctx, await rawJson(request));
  const headers = { location: `/api/v1/codes/claims/${claim.id}`, etag: etag(claim.version) };
  return json(claim, { status: made ? 201 : 200, headers });
});
