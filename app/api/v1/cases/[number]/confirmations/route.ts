import { confirmCase } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { json, rawJson, route } from "#lib/web/http.ts";

export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) =>
  json(await confirmCase(ctx, caseNumber(params.number), await rawJson(request)), { status: 201 }),
);
