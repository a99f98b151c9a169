import { closeSpare, updateSpare } from "#lib/services/spares/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const saved = await updateSpare(ctx, recordId(params.id, "spare"), ifMatch(request), await rawJson(request));
  return json(saved, { headers: { etag: etag(saved.version) } });
});

export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  await closeSpare(ctx, recordId(params.id, "spare"), ifMatch(request));
  return new Response(null, { status: 204 });
});
