import { proseOf } from "#lib/services/prose/index.ts";
import { ProseInput } from "#lib/services/prose/schema.ts";
import { body, json, route } from "#lib/web/http.ts";

/** A text as a page would draw it, as a tree of elements: the preview beside an editor. Nothing is stored. */
export const POST = route({ role: "member", scope: "read" }, async ({ ctx, request }) => {
  const { text } = await body(request, ProseInput);
  const [tree] = await proseOf(ctx, [text]);
  return json({ tree });
});
