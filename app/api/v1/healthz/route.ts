import { json, route } from "#lib/web/http.ts";

/** The process is alive. */
export const GET = route({ role: "anyone", scope: "read", always: true }, async () => json({ status: "ok" }));
