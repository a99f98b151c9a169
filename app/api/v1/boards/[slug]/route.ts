import { readBoard, updateBoard } from "#lib/services/boards/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const board = await readBoard(ctx, params.slug ?? "");
  return json(board, { headers: { etag: etag(board.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const slug = params.slug ?? "";
  await updateBoard(ctx, slug, ifMatch(request), await rawJson(request));
  const board = await readBoard(ctx, slug);
  return json(board, { headers: { etag: etag(board.version) } });
});
