import { commitImport } from "#lib/services/imports/index.ts";
import { json, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

export const POST = route({ role: "member", scope: "import" }, async ({ ctx, params }) =>
  json(await commitImport(ctx, recordId(params.id, "import"))),
);
