import { restoreEvidence, retractEvidence } from "#lib/services/codes/index.ts";
import { RetractEvidence } from "#lib/services/codes/schema.ts";
import { body, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

/** Evidence is taken back, never deleted; the same way it is let count again. Only its giver does it, so no version. */
export const PUT = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const id = recordId(params.id, "evidence");
  const { retracted } = await body(request, RetractEvidence);
  await (retracted ? retractEvidence(ctx, id) : restoreEvidence(ctx, id));
  return new Response(null, { status: 204 });
});
