import { json, route } from "#lib/web/http.ts";
import { openApiDocument } from "#lib/web/openapi.ts";

/** The description of this interface for programs. */
export const GET = route({ role: "anyone", scope: "read" }, async () => json(openApiDocument()));
