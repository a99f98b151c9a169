import { deleteComment, updateComment } from "#lib/services/comments/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const saved = await updateComment(ctx, recordId(params.id, "comment"), ifMatch(request), await rawJson(request));
  return json(saved, { headers: { etag: etag(saved.version) } });
});

export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  await deleteComment(ctx, recordId(params.id, "comment"), ifMatch(request));
  return new Response(null, { status: 204 });
});
