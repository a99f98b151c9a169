import { removeDocument } from "#lib/services/attachments/index.ts";
import { route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params }) => {
  await removeDocument(ctx, recordId(params.id, "document"));
  return new Response(null, { status: 204 });
});
