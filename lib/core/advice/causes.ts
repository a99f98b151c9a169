import type { Failure, PinRole, Trial } from "../shared/index.ts";
import type { CheckFacts, KnownCase, PastCause } from "./facts.ts";
import { senseOf } from "./features.ts";
import { entropyBits, normalised, smoothedShare } from "./information.ts";
import { placeKey, placeOf } from "./place.ts";
import type { SimilarCase } from "./similar.ts";
import { outcomeWords, placeWords } from "./words.ts";

/**
 * Numbers of the first estimate of causes. They are chosen, not measured: the unit is the weight of one proved past
 * case that agrees in everything, before confirmations.
 */
export const CAUSE_WEIGHTS = {
  /** Held back for a cause that nobody has met: with one case that fits, the estimate stays below one half. */
  somethingElse: 1,
  /** Power of the match score: two cases that fit by half say less than one that fits wholly. */
  matchPower: 2,
  /** A cause without a proof of the cure counts this much of a proved one. */
  unproved: 0.5,
  /** The chip at which a check failed, from the board's structure alone. Below any good past case. */
  chipAtPlace: 0.3,
  /** A part that feeds or drives the place of a failed check; all such parts of one place share it. */
  feeder: 0.3,
  /** What a trial changed, or cured, here. */
  trialChanged: 1,
  trialCured: 3,
  /** What is left of a cause after a part known good was tried in its place and nothing changed. */
  acquitted: 0.1,
  /** A cause that comes below this share is not listed; it stays in "something else". */
  leastProbability: 0.01,
} as const;

/** What the estimate needs of the board in hand. Empty lists are fine: it then knows only past cases. */
export interface BoardStructure {
  /** Where chips sit: how a cause on another board is carried over to this one. */
  placements: readonly { designator: string; chip: string | null }[];
  /** Designators of what feeds or drives a place (the regulator of a supply pin); empty where nets are not known. */
  feeds(at: string): readonly string[];
}

export interface LikelyCause {
  /** Place on this board; null where the board, and with it the place, is not known. */
  at: string | null;
  /** Slug of the chip at the place. */
  chip: string | null;
  failure: Failure;
  probability: number;
  because: string[];
  /** Past cases behind it, ascending. */
  cases: number[];
}

export interface CauseEstimate {
  /** Most likely first. Their probabilities and `somethingElse` add up to 1. */
  causes: LikelyCause[];
  /** Probability of a cause that is not in the list. */
  somethingElse: number;
  basis: {
    /** Past cases that speak for a cause in the list. */
    cases: number;
    /** How much the evidence tells these causes (and something else) apart: entropy below that of a blind choice, in bits. */
    evidenceBits: number;
  };
}

interface Candidate {
  at: string | null;
  chip: string | null;
  failure: Failure;
  weight: number;
  because: string[];
  cases: Set<number>;
}

type Candidates = Map<string, Candidate>;

const keyOf = (at: string | null, chip: string | null, failure: Failure) => `${at ?? chip ?? ""}\n${failure}`;

/**
 * A first estimate of what is wrong: causes of similar cases, carried over to this board by place or by chip and
 * weighted by how well the case matches and how often its cure helped others, plus the parts that the failed checks
 * point at. Without past cases and failed checks everything is "something else".
 */
export function likelyCauses(
  query: KnownCase,
  similar: readonly Pick<SimilarCase, "case" | "score">[],
  pastCauses: readonly (PastCause & { board: string | null })[],
  structure: BoardStructure,
): CauseEstimate {
  const candidates: Candidates = new Map();
  const scores = new Map(similar.map(({ case: number, score }) => [number, score]));
  for (const cause of pastCauses.toSorted(inFixedOrder)) {
    const score = scores.get(cause.case);
    if (score !== undefined) addPastCause(candidates, cause, score, query, structure);
  }
  for (const check of query.facts.checks) addSuspects(candidates, check, query, structure);
  acquitTried(candidates, query);
  return estimateFrom([...candidates.values()]);
}

function add(candidates: Candidates, found: Omit<Candidate, "because" | "cases">, reason: string, from?: number): void {
  const key = keyOf(found.at, found.chip, found.failure);
  const known = candidates.get(key) ?? { ...found, weight: 0, because: [], cases: new Set<number>() };
  known.weight += found.weight;
  if (!known.because.includes(reason)) known.because.push(reason);
  if (from !== undefined) known.cases.add(from);
  candidates.set(key, known);
}

/** Sightings of a cause (the case itself and each "this cured mine") times the smoothed share of those it helped. */
export function confirmationWeight({
  proved,
  helped,
  didNotHelp,
}: Omit<PastCause, "at" | "chip" | "failure" | "case">): number {
  const sightings = 1 + helped;
  const share = smoothedShare(sightings, sightings + didNotHelp, 2);
  return (proved || helped > 0 ? 1 : CAUSE_WEIGHTS.unproved) * sightings * share;
}

function addPastCause(
  candidates: Candidates,
  cause: PastCause & { board: string | null },
  score: number,
  query: KnownCase,
  structure: BoardStructure,
): void {
  const places = placesHere(cause, query, structure);
  const weight = (score ** CAUSE_WEIGHTS.matchPower * confirmationWeight(cause)) / Math.max(1, places.length);
  for (const at of places)
    add(candidates, { at, chip: cause.chip, failure: cause.failure, weight }, pastReason(cause, query), cause.case);
}

function pastReason(cause: PastCause & { board: string | null }, query: KnownCase): string {
  const where = query.context.board !== null && cause.board === query.context.board ? "this board" : "another board";
  const helped = cause.helped > 0 ? `, cured ${cause.helped} more` : "";
  const not = cause.didNotHelp > 0 ? `, did not help ${cause.didNotHelp}` : "";
  return `was the cause in case ${cause.case} on ${where}${helped}${not}`;
}

/**
 * Where a past cause would sit on this board. The same board: the same place. Another: where the same chip sits, those
 * at which something failed alone if there are any. Something that is no chip is not carried to another board.
 */
function placesHere(
  cause: PastCause & { board: string | null },
  query: KnownCase,
  structure: BoardStructure,
): (string | null)[] {
  if (query.context.board !== null && cause.board === query.context.board) return [placeKey(cause.at)];
  if (cause.chip === null) return [];
  const sitting = new Set(
    structure.placements.filter(({ chip }) => chip === cause.chip).map(({ designator }) => placeKey(designator)),
  );
  const failing = new Set<string>();
  for (const check of query.facts.checks) {
    const { part } = placeOf(check.at);
    if (query.context.chipAt(part)?.slug !== cause.chip) continue;
    sitting.add(part);
    if (senseOf(check) === "failed") failing.add(part);
  }
  if (failing.size > 0) return [...failing];
  if (sitting.size > 0) return [...sitting];
  return query.context.board === null ? [null] : [];
}

/** The parts that a failed check points at by itself. */
function addSuspects(candidates: Candidates, check: CheckFacts, query: KnownCase, structure: BoardStructure): void {
  if (senseOf(check) !== "failed") return;
  const { part, pin } = placeOf(check.at);
  const chip = query.context.chipAt(part);
  const reason = `${placeWords(check, query.context)} ${outcomeWords(check)}`;
  if (check.kind === "trial") return addTried(candidates, check, part, chip?.slug ?? null, reason);
  if (chip !== null && (pin === null || chip.pinRole(pin) !== "ground"))
    addSuspect(
      candidates,
      part,
      chip.slug,
      failureAtPin(check, pin === null ? null : chip.pinRole(pin)),
      reason,
      CAUSE_WEIGHTS.chipAtPlace,
    );
  const feeders = [...new Set(structure.feeds(check.at).map(placeKey))].filter((feeder) => feeder !== part);
  for (const feeder of feeders)
    addSuspect(
      candidates,
      feeder,
      query.context.chipAt(feeder)?.slug ?? null,
      "dead",
      `feeds ${reason}`,
      CAUSE_WEIGHTS.feeder / feeders.length,
    );
}

/** A part already named by a past case gains there; only a new one makes a candidate with a guessed failure. */
function addSuspect(
  candidates: Candidates,
  part: string,
  chip: string | null,
  guess: Failure,
  reason: string,
  weight: number,
): void {
  const known = [...candidates.values()].filter((candidate) => candidate.at === part);
  if (known.length === 0) return add(candidates, { at: part, chip, failure: guess, weight }, reason);
  const total = known.reduce((sum, candidate) => sum + candidate.weight, 0);
  for (const candidate of known) add(candidates, { ...candidate, weight: (weight * candidate.weight) / total }, reason);
}

/** How a chip has probably failed whose pin reads like this; common practice, no source. */
const FAILURE_BY_STATE: ReadonlyMap<string | null, Failure> = new Map([
  ["stuck-high", "output-stuck-high"],
  ["stuck-low", "output-stuck-low"],
  ["noise", "outputs-dead"],
  ["no-activity", "outputs-dead"],
  ["slow", "marginal-timing"],
  ["open", "open"],
  ["short", "internal-short"],
]);

function failureAtPin(check: CheckFacts, role: PinRole | null): Failure {
  if (role === "supply") return "internal-short";
  return FAILURE_BY_STATE.get(check.state) ?? (check.kind === "contents" ? "contents-lost" : "dead");
}

function addTried(candidates: Candidates, check: CheckFacts, part: string, chip: string | null, reason: string): void {
  const weight = check.outcome === "cured" ? CAUSE_WEIGHTS.trialCured : CAUSE_WEIGHTS.trialChanged;
  addSuspect(candidates, part, chip, failureOfTrial(check.what ?? "swap"), reason, weight);
}

function failureOfTrial(what: Trial): Failure {
  switch (what) {
    case "reseat":
      return "bad-socket";
    case "clean":
      return "dirty-contact";
    case "press":
      return "cold-joint";
    case "cool":
    case "heat":
      return "intermittent";
    case "swap":
    case "piggy-back":
    case "lift-pin":
      return "dead";
  }
}

/** Failures that remain when a good chip in the same place changes nothing: the fault is not in the chip. */
const AROUND_THE_CHIP: readonly Failure[] = [
  "cold-joint",
  "broken-trace",
  "bad-socket",
  "dirty-contact",
  "shorted-trace",
  "corrosion",
  "setting",
];

function acquitTried(candidates: Candidates, query: KnownCase): void {
  for (const check of query.facts.checks) {
    if (check.kind !== "trial" || check.what !== "swap" || check.outcome !== "no-change") continue;
    const { part } = placeOf(check.at);
    for (const candidate of candidates.values()) {
      if (candidate.at !== part || AROUND_THE_CHIP.includes(candidate.failure)) continue;
      candidate.weight *= CAUSE_WEIGHTS.acquitted;
      candidate.because.push(`against it: ${part} swapped here, no change`);
    }
  }
}

function estimateFrom(candidates: readonly Candidate[]): CauseEstimate {
  const total = candidates.reduce<number>((sum, { weight }) => sum + weight, CAUSE_WEIGHTS.somethingElse);
  const causes: LikelyCause[] = candidates
    .map(({ at, chip, failure, weight, because, cases }) => ({
      at,
      chip,
      failure,
      probability: weight / total,
      because,
      cases: [...cases].toSorted((a, b) => a - b),
    }))
    .filter(({ probability }) => probability >= CAUSE_WEIGHTS.leastProbability)
    .toSorted(
      (a, b) =>
        b.probability - a.probability || compareText(keyOf(a.at, a.chip, a.failure), keyOf(b.at, b.chip, b.failure)),
    );
  const listed = causes.reduce((sum, { probability }) => sum + probability, 0);
  const somethingElse = 1 - listed;
  const shares = normalised([...causes.map(({ probability }) => probability), somethingElse]);
  return {
    causes,
    somethingElse,
    basis: {
      cases: new Set(causes.flatMap(({ cases }) => cases)).size,
      evidenceBits: Math.max(0, Math.log2(causes.length + 1) - entropyBits(shares)),
    },
  };
}

/** Float sums depend on their order, so causes are added up in one that no caller can change. */
function inFixedOrder(a: PastCause, b: PastCause): number {
  return a.case - b.case || compareText(keyOf(a.at, a.chip, a.failure), keyOf(b.at, b.chip, b.failure));
}

/** By code units, so that the order depends on no locale. */
function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
