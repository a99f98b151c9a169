import type { EvidenceKind, InterchangeGrade } from "#lib/core/shared/index.ts";
import type { ProvedElsewhere } from "./schema.ts";

export interface WeighedEvidence {
  kind: EvidenceKind;
  provedElsewhere: ProvedElsewhere | null;
  /** Taken back by whoever gave it, or by a reviewer. */
  retracted: boolean;
}

export interface EvidenceSummary {
  /** How many of each kind count; kinds without any are left out. */
  counts: Partial<Record<EvidenceKind, number>>;
  /** Some of it says that the part fits, some that it does not. */
  contested: boolean;
}

/** Counts a claim's evidence and says whether it disagrees with itself. Nothing is averaged away. */
export function evidenceSummary(grade: InterchangeGrade, evidence: readonly WeighedEvidence[]): EvidenceSummary {
  const counting = evidence.filter((one) => !one.retracted);
  const counts: Partial<Record<EvidenceKind, number>> = {};
  for (const { kind } of counting) counts[kind] = (counts[kind] ?? 0) + 1;
  // A part that was itself found bad elsewhere says nothing of the claim.
  const failed = counting.some((one) => one.kind === "fitted-failed" && one.provedElsewhere !== "found-bad");
  const fits = counting.some(({ kind }) =>
    grade === "not-a-fit" ? kind === "fitted-worked" : kind !== "fitted-failed",
  );
  return { counts, contested: failed && fits };
}
