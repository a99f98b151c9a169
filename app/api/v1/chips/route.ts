import { createChip, listChips, readChip } from "#lib/services/chips/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await listChips(ctx, queryValues(query))),
);

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createChip(ctx, await rawJson(request));
  const headers = { location: `/api/v1/chips/${made.slug}`, etag: etag(made.version) };
  return json(await readChip(ctx, made.slug), { status: made.made ? 201 : 200, headers });
});
