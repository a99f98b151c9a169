import { judgeReading } from "#lib/services/advice/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "anyone", scope: "read" }, async ({ request }) =>
  json(judgeReading(await rawJson(request))),
);
