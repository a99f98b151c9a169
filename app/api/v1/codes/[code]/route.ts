import { findCode, readCodeView, updateCode } from "#lib/services/codes/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";

/** By id or by any way of writing it; a form that several records share answers with the choices. */
export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) => {
  const found = await findCode(ctx, params.code ?? "");
  if (found.kind === "choices") return json({ choices: found.choices });
  const code = await readCodeView(ctx, found.id);
  return json(code, { headers: { etag: etag(code.version) } });
});

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const saved = await updateCode(ctx, params.code ?? "", ifMatch(request), await rawJson(request));
  return json(await readCodeView(ctx, saved.id), { headers: { etag: etag(saved.version) } });
});
