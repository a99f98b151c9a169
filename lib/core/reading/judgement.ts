import type { CheckKind, Technology, Verdict } from "../shared/index.ts";
import {
  printQuantity,
  printRange,
  quantityOf,
  type Expectation,
  type Form,
  type Reading,
  type Unit,
} from "../quantity/index.ts";
import type { Instrument } from "./instrument.ts";

/** Goes up whenever the same input may get another verdict; kept with each verdict so that old ones can be told. */
export const JUDGE_VERSION = 1;

export type JudgeInput = {
  kind: CheckKind;
  expected: Expectation | null;
  measured: Reading | null;
  /** None: the plain comparison, and the sentence says so. */
  instrument?: Instrument;
  /** Decides what a voltage means as a logic level; none: TTL levels are taken, and the sentence says so. */
  technology?: Technology;
  /** Volts, for families whose levels follow their supply. */
  supply?: number;
  /** Probability from which on a reading counts as decided, 0.5 to 1. */
  decisionLevel?: number;
};

/** In base units; a missing side has no limit. */
export type Limits = { low?: number; high?: number; unit: Unit | null };

/** `low` is too little and `high` too much, so that a -12 V rail at -9 V is low. */
export type Direction = "low" | "high";
/** How wrong: `absent` is next to nothing there, or no signal at all. */
export type Size = "marginal" | "clear" | "absent";

export type Judgement = {
  verdict: Verdict;
  limits: Limits | null;
  /** Standard uncertainty in the base unit. Null: no instrument was given, or none of its ranges fits. */
  uncertainty: number | null;
  probabilityInSpec: number | null;
  /** Only on a reading that is out of spec. */
  direction: Direction | null;
  size: Size | null;
  /** Why, in one plain sentence. */
  text: string;
};

const UNDECIDED = { limits: null, uncertainty: null, probabilityInSpec: null, direction: null, size: null } as const;

export function judged(verdict: Verdict, text: string, more: Partial<Judgement> = {}): Judgement {
  return { ...UNDECIDED, ...more, verdict, text };
}

export function inconclusive(text: string, more: Partial<Judgement> = {}): Judgement {
  return judged("inconclusive", text, more);
}

/** Limits in words: `4.75…5.25 V`, `≤ 50 mVpp`, `≥ 2.4 V`. */
export function printLimits({ low, high, unit }: Limits, form?: Form): string {
  if (low !== undefined && high !== undefined)
    return printRange(quantityOf(low, unit, form), quantityOf(high, unit, form), "…");
  if (low !== undefined) return `≥ ${printOneLimit(low, unit, form)}`;
  return high === undefined ? "no limit" : `≤ ${printOneLimit(high, unit, form)}`;
}

export function printOneLimit(value: number, unit: Unit | null, form?: Form): string {
  return printQuantity(quantityOf(value, unit, form));
}

/** Two doubles that differ only by the rounding of a percentage are the same limit. */
const SAME_WITHIN = 1e-12;
export function isSame(a: number, b: number): boolean {
  if (a === b) return true;
  return Number.isFinite(a - b) && Math.abs(a - b) <= SAME_WITHIN * Math.max(Math.abs(a), Math.abs(b));
}
