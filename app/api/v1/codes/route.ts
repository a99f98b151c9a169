import { createCode, listCodes, readCodeView } from "#lib/services/codes/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await listCodes(ctx, queryValues(query))),
);

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createCode(ctx, await rawJson(request));
  const headers = { location: `/api/v1/codes/${made.id}`, etag: etag(made.version) };
  return json(await readCodeView(ctx, made.id), { status: made.made ? 201 : 200, headers });
});
