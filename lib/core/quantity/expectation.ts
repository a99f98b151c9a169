import { done, failed, type CheckKind, type Result } from "../shared/index.ts";
import { MAX_LENGTH } from "./number.ts";
import { printParts, printQuantity } from "./print.ts";
import { readQuantity, type Quantity, type QuantityHint, type Unreadable } from "./quantity.ts";
import { isOhmic, stateNamed, type ReadingState } from "./reading.ts";
import { readUnitText } from "./units.ts";

/** States that can be expected of a place. */
export const EXPECTED_STATES = [
  "high",
  "low",
  "active",
  "steady",
  "clock",
  "pulsing",
  "no-activity",
  "floating",
  "no-short",
  "short",
  "open",
  "ok",
  "changed",
  "no-change",
  "cured",
] as const;
export type ExpectedState = (typeof EXPECTED_STATES)[number];

/** How far a reading may lie above and below; `%` and `ppm` are of the nominal value, other units are absolute. */
export type Tolerance = { plus: Quantity; minus: Quantity };
export type Near = { nominal: Quantity; tolerance: Tolerance | null };

/** What should be read at a place. `to` is the second point, where the text names one (`< 2 ohm to GND`). */
export type Expectation =
  | ({ form: "near"; to?: string } & Near)
  | { form: "between"; low: Quantity; high: Quantity; to?: string }
  | { form: "at-least"; limit: Quantity; strict: boolean; to?: string }
  | { form: "at-most"; limit: Quantity; strict: boolean; to?: string }
  | { form: "state"; state: ExpectedState; frequency?: Near; to?: string }
  | { form: "words"; text: string };

const WORD_KINDS: ReadonlySet<CheckKind> = new Set<CheckKind>([
  "visual",
  "self-test",
  "waveform",
  "contents",
  "node-signature",
]);

/** Expected states in words, as they are printed and read. */
export const EXPECTED_WORDS: Record<ExpectedState, string> = {
  high: "high",
  low: "low",
  active: "active",
  steady: "steady",
  clock: "clock",
  pulsing: "pulsing",
  "no-activity": "no activity",
  floating: "floating",
  "no-short": "no short",
  short: "short",
  open: "open",
  ok: "ok",
  changed: "changed",
  "no-change": "no change",
  cured: "cured",
};

/** What a typed state means as an expectation; the faults among the states are not expected of anything. */
const EXPECTED_FOR_STATE: Record<ReadingState, ExpectedState | null> = {
  short: "short",
  open: "open",
  noise: null,
  "stuck-high": null,
  "stuck-low": null,
  high: "high",
  low: "low",
  toggling: "active",
  pulsing: "pulsing",
  clock: "clock",
  "no-activity": "no-activity",
  floating: "floating",
  steady: "steady",
  ok: "ok",
  "not-ok": null,
  changed: "changed",
  "no-change": "no-change",
  cured: "cured",
};

const PLUS_MINUS = /\s*(?:±|\+\s?\/\s?[-\u2212]|\+[-\u2212])\s*/;
const PLUS_THEN_MINUS = /^(.+?)\s*\+\s?([\d.,]+[^+\-\u2212/]*?)\s*\/?\s*[-\u2212]\s?([\d.,].*)$/;
const AT_LEAST = /^(?:(>=|≥|⩾|at least|min\.?|minimum)|(>|over|above|more than))\s*/i;
const AT_MOST = /^(?:(<=|≤|⩽|at most|max\.?|maximum|up to)|(<|below|under|less than))\s*/i;
const RANGE = /^(.+?)\s*(?:\.{2,3}|…|\u2013|\sto\s)\s*(.+)$/;
/** A hyphen parts a range only behind a digit or a unit, and never stands for a sign there. */
const HYPHEN_RANGE = /^([+-]?[\d.,]+[^\d\s-]*)\s?-\s?(\d.*)$/;
/** A second point has a name; a number behind `to` is the end of a range. */
const NAMED_POINT = /^(.*?)\s+to\s+([A-Za-z][\w./+-]*(?: rail)?|\d{1,2}[A-Z]\d*\.\w+)$/;
/** On ohmic checks only, for `-5 to +5 V` is a range of volts. */
const RAIL_POINT = /^(.*?)\s+to\s+((?:[+\-\u2212]\d+(?:[.,]\d+)?|0)\s?V\w*(?: rail)?)$/;

/**
 * Reads what should be there: `5 V ±5 %`, `4.75..5.25 V`, `≤ 50 mVpp`, `< 2 ohm to GND`, `clock 4 MHz`, `no short`; any
 * words on kinds that are judged by eye. Says why not, or what to ask, where it cannot.
 */
export function readExpectation(text: string, kind: CheckKind): Result<Expectation, Unreadable> {
  const trimmed = text.trim();
  if (trimmed === "") return failed({ reason: "Nothing was typed." });
  const asWords: Expectation = { form: "words", text: trimmed };
  if (trimmed.length > MAX_LENGTH)
    return WORD_KINDS.has(kind) ? done(asWords) : failed({ reason: "This is too long to be an expectation." });
  const second = NAMED_POINT.exec(trimmed) ?? (isOhmic(kind) ? RAIL_POINT.exec(trimmed) : null);
  const [body, to] = second ? [second[1] ?? "", second[2]] : [trimmed, undefined];
  const read = readBody(body, kind);
  if (!read.ok) return WORD_KINDS.has(kind) ? done(asWords) : read;
  if (read.value.form === "words") return done(asWords);
  return done(to === undefined ? read.value : { ...read.value, to });
}

function readBody(text: string, kind: CheckKind): Result<Expectation, Unreadable> {
  const state = readExpectedState(text, kind);
  if (state) return state;
  // A self-test or a signature may look like a number and is none.
  if (WORD_KINDS.has(kind) && kind !== "waveform") return done({ form: "words", text });
  return readBounded(text, kind) ?? readNear(text, kind) ?? readBetween(text, kind) ?? readNominal(text, kind);
}

function readExpectedState(text: string, kind: CheckKind): Result<Expectation, Unreadable> | null {
  const words = text.toLowerCase().replaceAll(/[\s-]+/g, " ");
  if (words === "no short" || words === "not short" || words === "not shorted")
    return done({ form: "state", state: "no-short" });
  const frequencyText = /^clock,?\s+(?:of\s+)?(?=[\d.,])(.+)$/i.exec(text)?.[1];
  if (frequencyText !== undefined) return readClock(frequencyText);
  if (kind === "level" && text === "1")
    return failed({ reason: "“1” can be read in two ways.", question: "Logic 1, or one volt? Write high or 1 V." });
  const state = stateNamed(text);
  const expected = state && EXPECTED_FOR_STATE[state];
  const isForEye = WORD_KINDS.has(kind) && kind !== "waveform" && expected !== "ok";
  return expected && !isForEye ? done({ form: "state", state: expected }) : null;
}

function readClock(text: string): Result<Expectation, Unreadable> {
  const near = readNear(text, "frequency") ?? readNominal(text, "frequency");
  if (!near.ok) return near;
  if (near.value.form !== "near") return failed({ reason: `“${text}” is no frequency.` });
  const { nominal, tolerance } = near.value;
  return done({ form: "state", state: "clock", frequency: { nominal, tolerance } });
}

function readBounded(text: string, kind: CheckKind): Result<Expectation, Unreadable> | null {
  for (const [mark, form] of [
    [AT_LEAST, "at-least"],
    [AT_MOST, "at-most"],
  ] as const) {
    const found = mark.exec(text);
    if (!found) continue;
    const limit = readQuantity(text.slice(found[0].length), { kind });
    return limit.ok ? done({ form, limit: limit.value, strict: found[2] !== undefined }) : limit;
  }
  return null;
}

function readNear(text: string, kind: CheckKind): Result<Expectation, Unreadable> | null {
  const [head, tail, ...more] = text.split(PLUS_MINUS);
  if (head !== undefined && head !== "" && tail !== undefined)
    return more.length > 0 ? failed({ reason: `“${text}” has two tolerances.` }) : nearFrom(head, tail, tail, kind);
  const apart = PLUS_THEN_MINUS.exec(text);
  if (!apart) return null;
  const [, nominal = "", plus = "", minus = ""] = apart;
  const unit = suffixOf(minus);
  return nearFrom(nominal, suffixOf(plus) === "" ? `${plus} ${unit}` : plus, minus, kind);
}

function nearFrom(head: string, plusText: string, minusText: string, kind: CheckKind): Result<Expectation, Unreadable> {
  const nominal = readNominal(head, kind);
  if (!nominal.ok || nominal.value.form !== "near") return nominal;
  const plus = readTolerance(plusText, head, nominal.value.nominal, kind);
  if (!plus.ok) return plus;
  const minus = readTolerance(minusText, head, nominal.value.nominal, kind);
  if (!minus.ok) return minus;
  return done({ ...nominal.value, tolerance: { plus: plus.value, minus: minus.value } });
}

function readTolerance(text: string, head: string, nominal: Quantity, kind: CheckKind): Result<Quantity, Unreadable> {
  const isShare = /(?:%|ppm|percent|pct)\s*$/i.test(text);
  const isBare = suffixOf(text) === "";
  if (isBare && (readUnitText(suffixOf(head))?.power ?? 0) !== 0)
    return failed({ reason: `“±${text}” has no unit.`, question: "A tolerance of what? Write %, ppm or the unit." });
  const hint: QuantityHint = isShare ? {} : nominal.unit ? { kind, unit: nominal.unit } : { kind };
  const tolerance = readQuantity(text, hint);
  if (!tolerance.ok) return tolerance;
  if (tolerance.value.value < 0 || tolerance.value.bound) return failed({ reason: `“±${text}” is no tolerance.` });
  return tolerance;
}

function readBetween(text: string, kind: CheckKind): Result<Expectation, Unreadable> | null {
  const parts = RANGE.exec(text) ?? HYPHEN_RANGE.exec(text);
  if (!parts) return null;
  const [, lowText = "", highText = ""] = parts;
  const low = readQuantity(withSharedUnit(lowText, highText), { kind });
  if (!low.ok) return low;
  const high = readQuantity(highText, { kind });
  if (!high.ok) return high;
  if (low.value.unit !== high.value.unit) return failed({ reason: `“${text}” names two units.` });
  if (low.value.form !== high.value.form) return failed({ reason: `“${text}” names two ways of measuring.` });
  if (low.value.value >= high.value.value)
    return failed({ reason: `In “${text}” the first limit is not below the second.` });
  return done({ form: "between", low: low.value, high: high.value });
}

/** `4.75..5.25 V` names the unit once, for both. */
function withSharedUnit(low: string, high: string): string {
  const unit = suffixOf(high);
  return suffixOf(low) === "" && /^[+\-\u2212]?[\d.,]+$/.test(low.trim()) ? `${low} ${unit}` : low;
}

/** What stands behind the last digit. */
function suffixOf(text: string): string {
  return /[^\d]*$/.exec(text.trim())?.[0].trim() ?? "";
}

function readNominal(text: string, kind: CheckKind): Result<Expectation, Unreadable> {
  const nominal = readQuantity(text, { kind });
  if (!nominal.ok)
    return failed(
      /\d/.test(text) ? nominal.problem : { reason: `“${text}” is neither a number nor a state known here.` },
    );
  const { bound: _about, ...exact } = nominal.value;
  return done({ form: "near", nominal: exact, tolerance: null });
}

/** An expectation as it is shown; `readExpectation` of the answer, on the same kind of check, gives it back. */
export function printExpectation(expectation: Expectation): string {
  if (expectation.form === "words") return expectation.text;
  const tail = expectation.to === undefined ? "" : ` to ${expectation.to}`;
  return printWithoutPoint(expectation) + tail;
}

function printWithoutPoint(expectation: Exclude<Expectation, { form: "words" }>): string {
  switch (expectation.form) {
    case "near":
      return printNear(expectation);
    case "between":
      return printRange(expectation.low, expectation.high, "..");
    case "at-least":
      return `${expectation.strict ? ">" : "≥"} ${printQuantity(expectation.limit)}`;
    case "at-most":
      return `${expectation.strict ? "<" : "≤"} ${printQuantity(expectation.limit)}`;
    case "state":
      return EXPECTED_WORDS[expectation.state] + (expectation.frequency ? ` ${printNear(expectation.frequency)}` : "");
  }
}

function printNear({ nominal, tolerance }: Near): string {
  if (!tolerance) return printQuantity(nominal);
  const plus = printQuantity(tolerance.plus);
  const minus = printQuantity(tolerance.minus);
  return `${printQuantity(nominal)} ${plus === minus ? `±${plus}` : `+${plus} / -${minus}`}`;
}

/** Two quantities with the unit named once where it is the same. */
export function printRange(low: Quantity, high: Quantity, mark: ".." | "…"): string {
  const [lowParts, highParts] = [printParts(low), printParts(high)];
  const isShared = lowParts.suffix === highParts.suffix;
  return isShared
    ? `${lowParts.number}${mark}${printQuantity(high)}`
    : `${printQuantity(low)}${mark}${printQuantity(high)}`;
}
