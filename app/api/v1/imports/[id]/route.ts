import { readImport } from "#lib/services/imports/index.ts";
import { json, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const GET = route({ role: "member", scope: "read" }, async ({ ctx, params }) =>
  json(await readImport(ctx, recordId(params.id, "import"))),
);
