import type { CheckKind, PowerState } from "../shared/index.ts";
import type { CauseEstimate, LikelyCause } from "./causes.ts";
import type { CheckFacts, KnownCase, PastCause } from "./facts.ts";
import { placeSubject, senseOf } from "./features.ts";
import { informationGain, smoothedShare } from "./information.ts";
import { placeKey } from "./place.ts";
import { placeWords } from "./words.ts";

/** Numbers behind proposed checks: chosen, not measured. */
export const NEXT_CHECK = {
  /** How many are proposed. */
  limit: 5,
  /** Below this gain a check does not tell the causes apart, and is not proposed. */
  leastBits: 0.02,
  /** Gains per minute within this ratio count as equal; then what can be known with power off comes first. */
  equalRatio: 1.1,
  /** How many of the likeliest causes a proposed check is judged by. */
  causes: 8,
} as const;

/**
 * What each kind of check takes: whether the board is powered, and minutes for a member at the bench, set-up included.
 * The minutes are invented defaults; the power state is common practice (ohms, diode, capacitance, ESR unplugged only).
 */
export const CHECK_EFFORT: Record<Exclude<CheckKind, "trial">, { power: PowerState; minutes: number }> = {
  visual: { power: "off", minutes: 2 },
  "self-test": { power: "on", minutes: 3 },
  continuity: { power: "off", minutes: 1 },
  resistance: { power: "off", minutes: 1 },
  diode: { power: "off", minutes: 1 },
  "dc-voltage": { power: "on", minutes: 1 },
  "ac-voltage": { power: "on", minutes: 2 },
  current: { power: "on", minutes: 5 },
  ripple: { power: "on", minutes: 3 },
  frequency: { power: "on", minutes: 2 },
  level: { power: "on", minutes: 1 },
  activity: { power: "on", minutes: 2 },
  capacitance: { power: "off", minutes: 10 },
  esr: { power: "off", minutes: 2 },
  temperature: { power: "on", minutes: 3 },
  waveform: { power: "on", minutes: 5 },
  contents: { power: "off", minutes: 10 },
  "node-signature": { power: "on", minutes: 10 },
};

export interface NextCheck {
  kind: CheckKind;
  at: string;
  expected: string;
  power: PowerState;
  minutes: number;
  /** Expected drop in the entropy of the causes, in bits. */
  gainBits: number;
  because: string;
}

/** A past case on this board with what was wrong in it. */
export interface SolvedCase {
  known: KnownCase;
  causes: readonly Pick<PastCause, "at" | "failure">[];
}

interface Outcomes {
  check: CheckFacts;
  /** Failed and passed, by position in the list of causes; a case of none of them is not counted there. */
  failed: number[];
  passed: number[];
  failedInAll: number;
  madeInAll: number;
}

/**
 * Checks worth making next, best first: those that past cases on this board made, that were not made here, and whose
 * outcome differed between the causes that are likely now. A modest first version: it knows no check that no past case
 * made, proposes no trials, and where no past case tells two causes apart it answers nothing.
 */
export function nextChecks(query: KnownCase, estimate: CauseEstimate, solved: readonly SolvedCase[]): NextCheck[] {
  const causes = estimate.causes.slice(0, NEXT_CHECK.causes);
  if (query.context.board === null || causes.length === 0) return [];
  const made = new Set(query.facts.checks.map((check) => placeSubject(check, query.context)));
  const sameBoard = solved.filter(({ known }) => known.context.board === query.context.board);
  return [...outcomesByCheck(sameBoard, causes)]
    .filter(([subject]) => !made.has(subject))
    .flatMap(([, outcomes]) => propose(outcomes, causes, query))
    .toSorted(byWorth)
    .slice(0, NEXT_CHECK.limit);
}

function outcomesByCheck(solved: readonly SolvedCase[], causes: readonly LikelyCause[]): Map<string, Outcomes> {
  const found = new Map<string, Outcomes>();
  for (const { known, causes: culprits } of solved) {
    const which = causes.findIndex((cause) =>
      culprits.some(({ at, failure }) => placeKey(at) === cause.at && failure === cause.failure),
    );
    for (const [subject, { check, failed }] of outcomesOf(known)) {
      const outcomes = found.get(subject) ?? {
        check,
        failed: causes.map(() => 0),
        passed: causes.map(() => 0),
        failedInAll: 0,
        madeInAll: 0,
      };
      outcomes.madeInAll++;
      if (failed) outcomes.failedInAll++;
      const counts = failed ? outcomes.failed : outcomes.passed;
      if (which >= 0) counts[which] = (counts[which] ?? 0) + 1;
      // Of several wordings of the expectation the first in the alphabet, so that no order of cases can show.
      if (isBetterWording(check.expected, outcomes.check.expected)) outcomes.check = check;
      found.set(subject, outcomes);
    }
  }
  return found;
}

function isBetterWording(offered: string | undefined, kept: string | undefined): boolean {
  return offered !== undefined && (kept === undefined || offered < kept);
}

/** Each place that a case checked with a clear outcome, once: failed where it failed at least once. */
function outcomesOf({ facts, context }: KnownCase): Map<string, { check: CheckFacts; failed: boolean }> {
  const found = new Map<string, { check: CheckFacts; failed: boolean }>();
  for (const check of facts.checks) {
    const subject = placeSubject(check, context);
    const sense = senseOf(check);
    if (subject === null || sense === null || sense === "seen" || check.kind === "trial") continue;
    if (sense === "failed" || !found.has(subject)) found.set(subject, { check, failed: sense === "failed" });
  }
  return found;
}

function propose(outcomes: Outcomes, causes: readonly LikelyCause[], query: KnownCase): NextCheck[] {
  const { check } = outcomes;
  if (check.kind === "trial") return [];
  // A cause that was never checked there fails as often as anything: it then does not speak for the check.
  const usual = smoothedShare(outcomes.failedInAll, outcomes.madeInAll, 2);
  const failShares = causes.map((_, cause) => {
    const failed = outcomes.failed[cause] ?? 0;
    const known = failed + (outcomes.passed[cause] ?? 0);
    return known === 0 ? usual : smoothedShare(failed, known, 2);
  });
  const known = causes.map(({ probability }) => probability);
  const rest = Math.max(0, 1 - known.reduce((sum, share) => sum + share, 0));
  const shares = [...known, rest];
  const fails = [...failShares, usual];
  const gainBits = informationGain([
    shares.map((share, cause) => share * (fails[cause] ?? 0)),
    shares.map((share, cause) => share * (1 - (fails[cause] ?? 0))),
  ]);
  if (gainBits < NEXT_CHECK.leastBits) return [];
  return [
    {
      kind: check.kind,
      at: placeKey(check.at),
      expected: check.expected ?? "",
      ...CHECK_EFFORT[check.kind],
      gainBits,
      because: whatItSplits(outcomes, causes, failShares, query),
    },
  ];
}

function whatItSplits(
  outcomes: Outcomes,
  causes: readonly LikelyCause[],
  failShares: readonly number[],
  query: KnownCase,
): string {
  const place = placeWords(outcomes.check, query.context);
  const seen = causes
    .map((cause, at) => {
      const failed = outcomes.failed[at] ?? 0;
      return { cause, failed, known: failed + (outcomes.passed[at] ?? 0), share: failShares[at] ?? 0 };
    })
    .filter(({ known }) => known > 0)
    .toSorted((a, b) => b.share - a.share);
  const most = seen[0];
  const least = seen[seen.length - 1];
  const say = ({ cause, failed, known }: { cause: LikelyCause; failed: number; known: number }) =>
    `failed in ${failed} of ${known} with ${cause.at ?? ""} ${cause.failure.replaceAll("-", " ")}`;
  if (most === undefined || least === undefined) return "";
  if (most === least) return `${place} ${say(most)}, ${outcomes.failedInAll} of ${outcomes.madeInAll} in all`;
  return `splits ${most.cause.at ?? ""} from ${least.cause.at ?? ""}: ${place} ${say(most)}, ${say(least)}`;
}

function byWorth(a: NextCheck, b: NextCheck): number {
  const step = ({ gainBits, minutes }: NextCheck) =>
    Math.round(Math.log(gainBits / minutes) / Math.log(NEXT_CHECK.equalRatio));
  const offFirst = ({ power }: NextCheck) => (power === "off" ? 0 : 1);
  const name = ({ at, kind }: NextCheck) => `${at}\n${kind}`;
  return (
    step(b) - step(a) ||
    offFirst(a) - offFirst(b) ||
    b.gainBits - a.gainBits ||
    (name(a) < name(b) ? -1 : name(a) > name(b) ? 1 : 0)
  );
}
