import { readHouse, updateHouse } from "#lib/services/codes/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const house = await readHouse(ctx, params.slug ?? "");
  return json(house, { headers: { etag: etag(house.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const slug = params.slug ?? "";
  await updateHouse(ctx, slug, ifMatch(request), await rawJson(request));
  const house = await readHouse(ctx, slug);
  return json(house, { headers: { etag: etag(house.version) } });
});
