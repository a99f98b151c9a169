import { addDocument, MOST_FILE_BYTES } from "#lib/services/attachments/index.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { json, route } from "#lib/web/http.ts";
import { readUpload } from "#lib/web/multipart.ts";

/** A form with the file and its fields; `sheets` is a JSON list. */
export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const { fields, file } = await readUpload(request, MOST_FILE_BYTES);
  const { sheets, ...plain } = fields;
  const input = { ...plain, board: params.slug, ...(sheets && { sheets: sheetList(sheets) }) };
  return json(await addDocument(ctx, input, file), { status: 201 });
});

function sheetList(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new ServiceError("invalid", "The list of sheets is not JSON.", {
      problems: [{ path: "sheets", message: "not JSON" }],
    });
  }
}
