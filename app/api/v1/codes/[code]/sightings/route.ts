import { addSighting } from "#lib/services/codes/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const saved = await addSighting(ctx, params.code ?? "", await rawJson(request));
  const headers = { location: `/api/v1/codes/${saved.codeId}` };
  return json({ id: saved.id, code: saved.codeId }, { status: saved.made ? 201 : 200, headers });
});
