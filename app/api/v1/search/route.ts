import { search } from "#lib/services/search/index.ts";
import { json, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await search(ctx, queryValues(query))),
);
