import { commitImport, listImports, MOST_IMPORT_BYTES, planImport } from "#lib/services/imports/index.ts";
import { json, route } from "#lib/web/http.ts";
import { readUpload } from "#lib/web/multipart.ts";

export const GET = route({ role: "member", scope: "read" }, async ({ ctx }) =>
  json({ imports: await listImports(ctx) }),
);

/** A form with `file` and `format`: a dry run, and with `?commit=1` the writing at once. */
export const POST = route({ role: "member", scope: "import" }, async ({ ctx, request, query }) => {
  const { fields, file } = await readUpload(request, MOST_IMPORT_BYTES);
  const format = fields.format ?? query.get("format") ?? "";
  const planned = await planImport(ctx, { format, fileName: file.name, bytes: file.bytes });
  const done = query.get("commit") === "1" ? await commitImport(ctx, planned.id) : planned;
  return json(done, { status: 201, headers: { location: `/api/v1/imports/${done.id}` } });
});
