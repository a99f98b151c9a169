import { createBoard, listBoards, readBoard } from "#lib/services/boards/index.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";
import { queryValues } from "#lib/web/query.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await listBoards(ctx, queryValues(query))),
);

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createBoard(ctx, await rawJson(request));
  const headers = { location: `/api/v1/boards/${made.slug}`, etag: etag(made.version) };
  return json(await readBoard(ctx, made.slug), { status: made.made ? 201 : 200, headers });
});
