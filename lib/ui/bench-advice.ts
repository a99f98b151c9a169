import type { CheckKind, Failure, PowerState } from "#lib/core/shared/index.ts";

/** What the advice of a case looks like, as the interface answers it. */
export interface BenchAdvice {
  similar: {
    case: number;
    title: string;
    score: number;
    matched: string[];
    contradicted: string[];
    unchecked: string[];
    board: string | null;
    cause: string;
    cure: string;
    helped: number;
    didNotHelp: number;
  }[];
  causes: { at: string | null; chip: string | null; failure: Failure; probability: number; because: string[] }[];
  /** Probability of a cause that is not in the list. */
  somethingElse: number;
  next: {
    kind: CheckKind;
    at: string;
    expected: string;
    power: PowerState;
    minutes: number;
    gainBits: number;
    because: string;
  }[];
  basis: { cases: number; evidenceBits: number };
}

export function isAdvice(raw: unknown): raw is BenchAdvice {
  if (typeof raw !== "object" || raw === null) return false;
  const { similar, causes, next, basis } = raw as Record<string, unknown>;
  return Array.isArray(similar) && Array.isArray(causes) && Array.isArray(next) && typeof basis === "object";
}

/** When an estimate is too thin to be called one. Chosen, not measured. */
export const THIN_ESTIMATE = {
  /** Fewer bits than this tell the causes hardly apart from a blind choice. */
  evidenceBits: 0.3,
  /** From here on the cause is more likely one that is not in the list. */
  somethingElse: 0.6,
} as const;

export function isThin({ causes, somethingElse, basis }: BenchAdvice): boolean {
  return (
    causes.length === 0 ||
    somethingElse >= THIN_ESTIMATE.somethingElse ||
    basis.evidenceBits < THIN_ESTIMATE.evidenceBits
  );
}

/** A word for how well a past case matches; the bounds are chosen, no source. */
export function matchWord(score: number): string {
  if (score >= 0.7) return "strong match";
  if (score >= 0.4) return "good match";
  if (score >= 0.15) return "some match";
  return "faint match";
}

export type Move = "new" | "up" | "down";
export const MOVE_WORDS: Record<Move, string> = { new: "new", up: "more likely now", down: "less likely now" };

export function causeKey(cause: BenchAdvice["causes"][number]): string {
  return [cause.at ?? "", cause.chip ?? "", cause.failure].join(" ");
}

/** Shares that differ less are drawn alike. */
const SAME_SHARE = 0.02;

/** What a new answer changed, by key: what came in, what gained and what lost. Nothing is marked in the first answer. */
export function movesBetween(
  before: BenchAdvice | null,
  after: BenchAdvice,
): { similar: ReadonlyMap<string, Move>; causes: ReadonlyMap<string, Move> } {
  return {
    similar: moves(
      before?.similar.map((one) => [String(one.case), one.score]),
      after.similar.map((one) => [String(one.case), one.score]),
    ),
    causes: moves(
      before?.causes.map((one) => [causeKey(one), one.probability]),
      after.causes.map((one) => [causeKey(one), one.probability]),
    ),
  };
}

function moves(
  before: readonly (readonly [string, number])[] | undefined,
  after: readonly (readonly [string, number])[],
): ReadonlyMap<string, Move> {
  const marks = new Map<string, Move>();
  if (before === undefined) return marks;
  const was = new Map(before);
  for (const [key, share] of after) {
    const old = was.get(key);
    if (old === undefined) marks.set(key, "new");
    else if (Math.abs(share - old) >= SAME_SHARE) marks.set(key, share > old ? "up" : "down");
  }
  return marks;
}
