import { adviseCase } from "#lib/services/advice/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { json, route } from "#lib/web/http.ts";

export const GET = route({ role: "anyone", scope: "read" }, async ({ ctx, params }) =>
  json(await adviseCase(ctx, caseNumber(params.number))),
);
