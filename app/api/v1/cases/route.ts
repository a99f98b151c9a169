import { createCase, listCases, readCase } from "#lib/services/cases/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await listCases(ctx, queryValues(query))),
);

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createCase(ctx, await rawJson(request));
  const found = await readCase(ctx, made.number);
  const headers = { location: `/api/v1/cases/${made.number}`, etag: etag(found.version) };
  return json(found, { status: made.made ? 201 : 200, headers });
});
