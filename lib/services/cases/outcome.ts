import type { CaseOutcome } from "#lib/core/shared/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import { invalid } from "../errors.ts";

/** A case counts as cured only with a proof; the database holds the same rule. */
export async function demandProofFor(tx: Tx, caseId: string, outcome: CaseOutcome): Promise<void> {
  if (outcome === "cured-cause-unknown") return;
  if (outcome !== "cured") return;
  const proofs = await tx.proof.count({ where: { caseId } });
  if (proofs > 0) return;
  throw invalid(
    "outcome",
    "A case counts as cured only with a proof: repeat the failed checks, or note a soak time. Until then: “works, not proved”.",
  );
}
