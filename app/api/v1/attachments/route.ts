import { attachFile, MOST_FILE_BYTES } from "#lib/services/attachments/index.ts";
import { json, route } from "#lib/web/http.ts";
import { readUpload } from "#lib/web/multipart.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, request }) => {
  const { fields, file } = await readUpload(request, MOST_FILE_BYTES);
  const made = await attachFile(ctx, fields, file);
  return json(made, { status: 201, headers: { location: made.url } });
});
