import { createHouse, listHouses } from "#lib/services/codes/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx }) => json({ houses: await listHouses(ctx) }));

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const { made, ...house } = await createHouse(ctx, await rawJson(request));
  const headers = { location: `/api/v1/codes/houses/${house.slug}`, etag: etag(house.version) };
  return json(house, { status: made ? 201 : 200, headers });
});
