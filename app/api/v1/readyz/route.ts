import { health } from "#lib/web/health.ts";
import { json, route } from "#lib/web/http.ts";

/** Database, search and storage can be used; each is named. */
export const GET = route({ role: "anyone", scope: "read", always: true }, async () => {
  const parts = await health();
  const usable = Object.values(parts).every((part) => part.usable);
  return json({ status: usable ? "ok" : "degraded", parts }, { status: usable ? 200 : 503 });
});
