import { readMarkingText } from "#lib/services/codes/index.ts";
import { json, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, query }) =>
  json(await readMarkingText(ctx, query.get("text") ?? "")),
);
