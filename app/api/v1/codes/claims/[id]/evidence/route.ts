import { addEvidence, readClaim } from "#lib/services/codes/index.ts";
import { json, rawJson, route } from "#lib/web/http.ts";
import { recordId } from "#lib/web/record-id.ts";

/** Answers with the claim as it stands with the new evidence. */
export const POST = route({ role: "member", scope: "write" }, async ({ ctx, params, request }) => {
  const claim = recordId(params.id, "claim");
  const saved = await addEvidence(ctx, claim, await rawJson(request));
  const headers = { location: `/api/v1/codes/evidence/${saved.id}` };
  return json(await readClaim(ctx, claim), { status: saved.made ? 201 : 200, headers });
});
