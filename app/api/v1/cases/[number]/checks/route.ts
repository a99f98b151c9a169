import { recordChecks } from "#lib/services/cases/index.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { etag, json, rawJson, route } from "#lib/web/http.ts";

/** One check as an object, or a run of pins as a list: the answer has the same form. */
export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const number = caseNumber(params.number);
  const given = await rawJson(request);
  const isRun = Array.isArray(given);
  const { checks, made } = await recordChecks(ctx, number, isRun ? given : [given]);
  const status = made ? 201 : 200;
  if (isRun) return json({ checks }, { status });
  const [check] = checks;
  if (!check) throw new Error("a recorded check is gone");
  return json(check, {
    status,
    headers: { etag: etag(check.version), location: `/api/v1/cases/${number}/checks/${check.id}` },
  });
});
