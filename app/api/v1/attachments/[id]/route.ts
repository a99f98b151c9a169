import { detachFile, openAttachment } from "#lib/services/attachments/index.ts";
import { fileResponse } from "#lib/web/file-response.ts";
import { route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params, query, request }) => {
  const size = query.get("size") === "thumb" ? "thumb" : "full";
  return fileResponse(request, await openAttachment(ctx, recordId(params.id, "file"), size), size);
});

/** The id is that of its place on the record: taking a photo off one record leaves it on another. */
export const DELETE = route({ role: "member", scope: "write" }, async ({ ctx, params }) => {
  await detachFile(ctx, recordId(params.id, "photo or file"));
  return new Response(null, { status: 204 });
});
