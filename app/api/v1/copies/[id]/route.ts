import { updateCopy } from "#lib/services/boards/index.ts";
import { etag, ifMatch, json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const PATCH = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const saved = await updateCopy(ctx, recordId(params.id, "copy"), ifMatch(request), await rawJson(request));
  return json(saved, { headers: { etag: etag(saved.version) } });
});
