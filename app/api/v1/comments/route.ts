import { createComment } from "#lib/services/comments/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const made = await createComment(ctx, await rawJson(request));
  return json(made, { status: made.made ? 201 : 200 });
});
