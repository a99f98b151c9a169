import type { BoardKind, CheckKind, Failure, Lead, PinRole, Trial, TrialOutcome, Verdict } from "../shared/index.ts";

export type Direction = "low" | "high";

/** How far out: within twice the tolerance, clearly out, or nothing there at all. */
export type Size = "marginal" | "clear" | "absent";

/** A check as the judge left it: plain data, so that a query that was never stored looks the same as a stored case. */
export interface CheckFacts {
  kind: CheckKind;
  /** Designator, `designator.pin`, net name or connector pin, as printed. */
  at: string;
  verdict: Verdict;
  direction: Direction | null;
  size: Size | null;
  /** What was seen where a number says too little: `noise`, `stuck-high`, `stuck-low`, `slow`, `no-activity`, `open`, `short`. */
  state: string | null;
  outcome?: TrialOutcome;
  what?: Trial;
  /** Second point; ground where left out. */
  to?: string;
  /** Diode tests only: which lead is on `at`. */
  lead?: Lead;
  /** The reading as typed. Shown in explanations, never compared. */
  measured?: string;
  /** The expectation as typed. Shown in explanations, never compared. */
  expected?: string;
}

/** What is known about the chip at a place of the board. */
export interface ChipAtPlace {
  slug: string;
  name: string;
  pinRole(pin: string): PinRole;
  pinName(pin: string): string;
}

/** The board on which checks were made; `chipAt` answers null for a place that holds no chip or is not known. */
export interface CheckContext {
  board: string | null;
  boardKind?: BoardKind;
  chipAt(designator: string): ChipAtPlace | null;
}

/**
 * A case as far as advice needs it. Leave out checks that prove a cure: they pass because the fault is gone, and would
 * read as evidence against it.
 */
export interface CaseFacts {
  /** Slugs of the club's vocabulary. */
  symptoms: readonly string[];
  /** Telling words of the member's own description, already cut and normalised by the caller. */
  words?: readonly string[];
  /** Designators of recorded causes, so that a case written down in four lines, without checks, is still found. */
  parts?: readonly string[];
  checks: readonly CheckFacts[];
}

/** A case, or the repair in hand, together with the board that its places refer to. */
export interface KnownCase {
  facts: CaseFacts;
  context: CheckContext;
}

/** A recorded cause of a past case. */
export interface PastCause {
  case: number;
  /** Designator of the culprit, or another place as written. */
  at: string;
  /** Slug of the chip that sat there; null for anything else. */
  chip: string | null;
  failure: Failure;
  /** The case counts as cured: with a proof. */
  proved: boolean;
  /** How many members said "this cured mine". */
  helped: number;
  /** How many said "did not help mine". */
  didNotHelp: number;
}
