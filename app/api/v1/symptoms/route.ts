import { symptomVocabulary } from "#lib/services/cases/index.ts";
import { json, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx }) =>
  json({ symptoms: await symptomVocabulary(ctx) }),
);
