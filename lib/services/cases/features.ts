import { caseFeatures } from "#lib/core/advice/index.ts";
import type { BoardFacts } from "#lib/core/board/index.ts";
import type { Db, Tx } from "#lib/infra/db/index.ts";
import { CASE_FACTS, knownCase, STORED_FEATURES } from "./known-case.ts";

/** Works out what the ranker needs of a case and stores it with the case, in the transaction that changed it. */
export async function writeFeatures(tx: Db | Tx, caseId: string, facts: BoardFacts | null): Promise<void> {
  const row = await tx.faultCase.findUniqueOrThrow({ where: { id: caseId }, select: CASE_FACTS });
  await tx.faultCase.update({
    where: { id: caseId },
    data: { features: caseFeatures(knownCase(row, facts)), featuresVersion: STORED_FEATURES },
    select: { id: true },
  });
}
