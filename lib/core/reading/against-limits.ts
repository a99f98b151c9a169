import type { CheckKind } from "../shared/index.ts";
import {
  isOhmic,
  printQuantity,
  printState,
  printValue,
  UNIT_NOUNS,
  type Quantity,
  type Reading,
  type ReadingState,
} from "../quantity/index.ts";
import { largestError, rangeFor, standardUncertainty } from "./instrument.ts";
import {
  inconclusive,
  isSame,
  judged,
  printLimits,
  printOneLimit,
  type Direction,
  type JudgeInput,
  type Judgement,
  type Limits,
  type Size,
} from "./judgement.ts";
import type { KnownLimits } from "./limits.ts";
import { inputLimits, LEVELS } from "./levels.ts";
import { probabilityWithin } from "./normal.ts";

/** Probability from which on a reading counts as in spec, and one minus which as out of spec. The club may set another. */
export const DECISION_LEVEL = 0.95;

/** Common practice, no source. */
export const SIZES = {
  /** At most this share of the nearest limit: the rail or signal is not there. */
  absentShare: 0.1,
  /** Beyond a single limit by at most this share of it: marginal. With two limits: by half their distance. */
  marginalShare: 0.1,
} as const;

/** What a buzzer or a diode test calls a short. Common practice, no source. */
export const SHORT = { ohms: 2, diodeVolts: 0.02 } as const;

/** `about 5 V` may be off by this many steps of its last typed digit. Common practice, no source. */
const ABOUT_STEPS = 1;

/** Where the true value may lie; one point for an exact reading. */
type Span = { low: number; high: number };

/** Holds a reading against limits: by probability where the instrument's error is known, else by plain comparison. */
export function judgeAgainstLimits(input: JudgeInput & { measured: Reading }, known: KnownLimits): Judgement {
  const { measured, kind } = input;
  const { limits } = known;
  if (measured.form === "words") return inconclusive("These are words; the expectation is a number.", { limits });
  if (measured.form === "over-limit" && !isOhmic(kind))
    return inconclusive("OL: the meter's range was exceeded; measure again on a higher one.", { limits });
  if (measured.form !== "value") {
    const isLower = measured.form === "over-limit" && limits.high === undefined;
    const note = isLower ? ", if the meter's range reaches that far" : "";
    return judgeSpan(spanOfState(measured, input), printed(measured), known, note);
  }
  const quantity = { ...measured.quantity, unit: measured.quantity.unit ?? limits.unit };
  const mismatch = mismatchOf(quantity, known, kind);
  if (mismatch) return inconclusive(mismatch, { limits });
  return quantity.bound
    ? judgeSpan(spanOfBound(quantity), printQuantity(quantity), known)
    : judgeValue(input, quantity, known);
}

function printed(measured: Exclude<Reading, { form: "value" | "words" }>): string {
  return measured.form === "over-limit" ? "OL" : `“${printState(measured.state)}”`;
}

function mismatchOf(quantity: Quantity, { limits, form }: KnownLimits, kind: CheckKind): string | null {
  const shown = printQuantity(quantity);
  if (quantity.unit !== limits.unit) {
    const noun = quantity.unit ? UNIT_NOUNS[quantity.unit] : "a bare number";
    return `${shown} is ${noun} and cannot be held against ${printLimits(limits, form)}.`;
  }
  if (quantity.form && form && quantity.form !== form)
    return `${shown} cannot be held against ${printLimits(limits, form)} without knowing the waveform.`;
  if (quantity.form && !form && (kind === "dc-voltage" || kind === "level" || kind === "diode"))
    return `${shown} is an a.c. figure and this check is d.c.`;
  return null;
}

function judgeValue(input: JudgeInput, quantity: Quantity, known: KnownLimits): Judgement {
  const range = input.instrument ? rangeFor(input.instrument, quantity, input.kind) : null;
  const largest = range ? largestError(range, quantity.value) : 0;
  if (largest > 0) return judgeByProbability(quantity, largest, known, input.decisionLevel ?? DECISION_LEVEL);
  const missing = input.instrument
    ? "no accuracy of this instrument on record for it"
    : "the meter's own error is not counted";
  const note = range ? "" : `; ${missing}`;
  const span = { low: quantity.value, high: quantity.value };
  return judgeSpan(span, printQuantity(quantity), known, note);
}

function judgeByProbability(quantity: Quantity, largest: number, known: KnownLimits, decisionLevel: number): Judgement {
  const { limits } = known;
  const y = quantity.value;
  const uncertainty = standardUncertainty(largest);
  const probabilityInSpec = probabilityWithin(limits, y, uncertainty);
  const level = Math.max(decisionLevel, 0.5);
  const more = { limits, uncertainty, probabilityInSpec };
  const shown = printQuantity(quantity);
  const error = `±${printValue(largest, quantity.unit, 2)}`;
  const side = sideOf({ low: y, high: y }, limits);
  if (side === "inside" && probabilityInSpec >= level)
    return judged("in-spec", insideSentence(shown, known, `, the meter's ${error} counted`), more);
  if ((side === "below" || side === "above") && probabilityInSpec <= 1 - level) {
    const text = outsideSentence(side, y, shown, known, `, the meter's ${error} counted`);
    return judged("out-of-spec", text, { ...more, ...wrongness(side, { low: y, high: y }, limits) });
  }
  const chance = `probability in spec ${probabilityInSpec.toFixed(2)}`;
  return inconclusive(sentence(shown, "against", known, `: with ${error} this meter cannot tell; ${chance}`), more);
}

function judgeSpan(span: Span | null, shown: string, known: KnownLimits, note = ""): Judgement {
  const { limits } = known;
  if (!span) return inconclusive(sentence(shown, "does not say enough to hold it against", known, note), { limits });
  const side = sideOf(span, limits);
  switch (side) {
    case "inside":
      return judged("in-spec", insideSentence(shown, known, note), { limits });
    case "at":
      return inconclusive(sentence(shown, "is exactly at the limit of", known, note), { limits });
    case "across":
      return inconclusive(sentence(shown, "may be inside or outside of", known, note), { limits });
    case "below":
    case "above": {
      const nearest = side === "below" ? span.high : span.low;
      const text = outsideSentence(side, nearest, shown, known, note);
      return judged("out-of-spec", text, { limits, ...wrongness(side, span, limits) });
    }
  }
}

type Side = "inside" | "at" | "across" | "below" | "above";

/** A point at a limit is neither inside nor outside; an open span that ends there is on its own side of it. */
function sideOf({ low, high }: Span, limits: Limits): Side {
  const isPoint = low === high;
  const at = (limit: number | undefined) => limit !== undefined && isSame(low, limit);
  if (isPoint && (at(limits.low) || at(limits.high))) return "at";
  if (limits.low !== undefined && high <= limits.low) return "below";
  if (limits.high !== undefined && low >= limits.high) return "above";
  const isInside = low >= (limits.low ?? -Infinity) && high <= (limits.high ?? Infinity);
  return isInside ? "inside" : "across";
}

function isNegative({ high }: Limits): boolean {
  return high !== undefined && high < 0;
}

function relation(side: "below" | "above", value: number, limits: Limits): string {
  if (!isNegative(limits)) return side === "below" ? "is below" : "is above";
  const isNearZero = value <= SIZES.absentShare * Math.abs(limits.high ?? 0);
  if (value > 0 && !isNearZero) return "has the wrong sign for";
  return side === "above" ? "falls short of" : "goes beyond";
}

function wrongness(side: "below" | "above", span: Span, limits: Limits): { direction: Direction; size: Size } {
  const direction = (side === "below") === isNegative(limits) ? "high" : "low";
  const value = side === "below" ? span.high : span.low;
  const limit = (side === "below" ? limits.low : limits.high) ?? 0;
  const isGone = direction === "low" && limit !== 0 && Math.abs(value) <= SIZES.absentShare * Math.abs(limit);
  if (isGone || value === Infinity) return { direction, size: "absent" };
  // Of an open-ended reading only its end is known, and the end is the least wrong that it can be.
  if (!Number.isFinite(span.high - span.low)) return { direction, size: "clear" };
  const width =
    limits.low !== undefined && limits.high !== undefined
      ? (limits.high - limits.low) / 2
      : SIZES.marginalShare * Math.abs(limit);
  return { direction, size: Math.abs(value - limit) <= width ? "marginal" : "clear" };
}

function sentence(shown: string, verb: string, { limits, form, assumed }: KnownLimits, tail: string): string {
  return `${shown} ${verb} ${printLimits(limits, form)}${assumed ? ` (${assumed})` : ""}${tail}.`;
}

function insideSentence(shown: string, known: KnownLimits, tail: string): string {
  return sentence(shown, isOneSided(known.limits) ? "meets" : "is within", known, tail);
}

/** `is below 2.4 V` rather than `is below ≥ 2.4 V`. */
function outsideSentence(
  side: "below" | "above",
  nearest: number,
  shown: string,
  { limits, form, assumed }: KnownLimits,
  tail: string,
): string {
  const single = side === "below" ? limits.low : limits.high;
  const limit =
    isOneSided(limits) && single !== undefined ? printOneLimit(single, limits.unit, form) : printLimits(limits, form);
  return `${shown} ${relation(side, nearest, limits)} ${limit}${assumed ? ` (${assumed})` : ""}${tail}.`;
}

function isOneSided({ low, high }: Limits): boolean {
  return low === undefined || high === undefined;
}

function spanOfBound({ value, bound, unit, resolution }: Quantity): Span {
  if (bound === "above") return { low: value, high: Infinity };
  if (bound === "below") return { low: unit === "V" || unit === "A" || unit === "degC" ? -Infinity : 0, high: value };
  return { low: value - ABOUT_STEPS * resolution, high: value + ABOUT_STEPS * resolution };
}

/** What a state says about the number that a meter would show; null where it says nothing. */
function spanOfState(measured: Exclude<Reading, { form: "value" | "words" }>, input: JudgeInput): Span | null {
  const { kind } = input;
  if (measured.form === "over-limit") return isOhmic(kind) ? { low: Infinity, high: Infinity } : null;
  if (kind === "frequency") return measured.frequency ? pointOf(measured.frequency) : spanOfRhythm(measured.state);
  if (measured.state === "short") return { low: 0, high: shortLimit(kind) };
  if (measured.state === "open") return isOhmic(kind) ? { low: shortLimit(kind), high: Infinity } : null;
  return kind === "dc-voltage" || kind === "level" ? spanOfLevel(measured.state, input) : null;
}

function pointOf({ value }: Quantity): Span {
  return { low: value, high: value };
}

export function shortLimit(kind: CheckKind): number {
  if (kind === "diode") return SHORT.diodeVolts;
  return isOhmic(kind) ? SHORT.ohms : 0;
}

/** A line that does not move, or only carries noise, has no frequency. */
function spanOfRhythm(state: ReadingState): Span | null {
  const stands: readonly ReadingState[] = [
    "no-activity",
    "noise",
    "steady",
    "high",
    "low",
    "stuck-high",
    "stuck-low",
    "floating",
  ];
  return stands.includes(state) ? { low: 0, high: 0 } : null;
}

function spanOfLevel(state: ReadingState, { technology, supply }: JudgeInput): Span | null {
  const table = LEVELS[technology ?? "TTL"];
  if (!table) return null;
  const { low, high } = inputLimits(table, supply);
  if (state === "low" || state === "stuck-low") return { low: 0, high: low };
  return state === "high" || state === "stuck-high" ? { low: high, high: supply ?? table.supply } : null;
}
