import type { CheckKind, Lead, PowerState, Trial, TrialOutcome, Verdict } from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";

const select = {
  id: true,
  position: true,
  kind: true,
  at: true,
  placeKnown: true,
  to: true,
  lead: true,
  when: true,
  power: true,
  what: true,
  outcome: true,
  expected: true,
  expectedFrom: true,
  measured: true,
  value: true,
  unit: true,
  reading: true,
  unreadable: true,
  computedVerdict: true,
  chosenVerdict: true,
  chosenReason: true,
  because: true,
  direction: true,
  size: true,
  outdated: true,
  note: true,
  takenAt: true,
  repeatsId: true,
  version: true,
  member: { select: { handle: true, name: true } },
} as const satisfies Prisma.CheckSelect;
type CheckRow = Prisma.CheckGetPayload<{ select: typeof select }>;

/** A check as pages and the interface show it. */
export interface CheckView {
  id: string;
  position: number;
  kind: CheckKind;
  at: string;
  /** False: the board's record has no such place; the reading counts all the same. */
  placeKnown: boolean;
  to: string;
  lead: Lead | null;
  when: string;
  power: PowerState;
  what: Trial | null;
  outcome: TrialOutcome | null;
  expected: string;
  expectedFrom: string;
  /** As typed. */
  measured: string;
  /** Base unit, where it is a quantity. */
  value: number | null;
  unit: string | null;
  reading: string | null;
  /** Why the text could not be read; empty: it could. */
  unreadable: string;
  /** What counts: the chosen verdict, else the computed one. */
  verdict: Verdict;
  computedVerdict: Verdict;
  chosenVerdict: Verdict | null;
  chosenReason: string;
  because: string;
  direction: "low" | "high" | null;
  size: "marginal" | "clear" | "absent" | null;
  outdated: boolean;
  note: string;
  takenAt: string;
  by: { handle: string; name: string } | null;
  /** Id of the check that this one repeats. */
  repeats: string | null;
  version: number;
}

function of(row: CheckRow): CheckView {
  const { member, repeatsId, takenAt, ...rest } = row;
  // The casts stand on the database's CHECK constraints.
  return {
    ...rest,
    kind: row.kind as CheckKind,
    lead: row.lead as Lead | null,
    power: row.power as PowerState,
    what: row.what as Trial | null,
    outcome: row.outcome as TrialOutcome | null,
    verdict: (row.chosenVerdict ?? row.computedVerdict) as Verdict,
    computedVerdict: row.computedVerdict as Verdict,
    chosenVerdict: row.chosenVerdict as Verdict | null,
    direction: row.direction as CheckView["direction"],
    size: row.size as CheckView["size"],
    takenAt: takenAt.toISOString(),
    by: member,
    repeats: repeatsId,
  };
}

export const checkView = { select, of };
