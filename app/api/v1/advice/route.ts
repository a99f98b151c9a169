import { advise } from "#lib/services/advice/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

/** Asks only; nothing is stored, so a visitor of an open club may ask too. */
export const POST = route({ role: "anyone", scope: "read" }, async ({ ctx, request }) =>
  json(await advise(ctx, await rawJson(request))),
);
