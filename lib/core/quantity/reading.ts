import { done, failed, type CheckKind, type Result } from "../shared/index.ts";
import { MAX_LENGTH } from "./number.ts";
import { readQuantity, type Quantity, type Unreadable } from "./quantity.ts";
import { printQuantity } from "./print.ts";

/** What a check can show that is no number. */
export const READING_STATES = [
  "short",
  "open",
  "noise",
  "stuck-high",
  "stuck-low",
  "high",
  "low",
  "toggling",
  "pulsing",
  "clock",
  "no-activity",
  "floating",
  "steady",
  "ok",
  "not-ok",
  "changed",
  "no-change",
  "cured",
] as const;
export type ReadingState = (typeof READING_STATES)[number];

/** A reading as understood. The text as typed is kept by the caller beside it. */
export type Reading =
  | { form: "value"; quantity: Quantity }
  /** The meter shows that its range is exceeded: OL, or a lone 1 on older meters. */
  | { form: "over-limit" }
  | { form: "state"; state: ReadingState; frequency?: Quantity }
  | { form: "words"; text: string };

/** How states are written; the first spelling of each is also how it is printed. */
const STATE_WORDS: Record<ReadingState, readonly string[]> = {
  short: ["short", "shorted", "short circuit", "beep", "beeps", "dead short"],
  open: ["open", "open circuit", "no beep", "no continuity", "no connection", "not connected"],
  noise: ["noise", "noisy", "noise only", "only noise", "just noise", "hash"],
  "stuck-high": ["stuck high", "always high", "held high", "stuck hi"],
  "stuck-low": ["stuck low", "always low", "held low", "stuck lo"],
  high: ["high", "hi", "h", "logic high", "logic 1"],
  low: ["low", "lo", "l", "logic low", "logic 0"],
  toggling: ["toggling", "active", "activity", "moving", "alive", "busy", "toggles", "moves"],
  pulsing: ["pulsing", "pulses", "pulse", "pulsed", "blinking", "blinks"],
  clock: ["clock", "clocking", "clock present"],
  "no-activity": [
    "no activity",
    "inactive",
    "dead",
    "quiet",
    "none",
    "nothing",
    "no signal",
    "no clock",
    "no pulses",
    "flat",
    "not moving",
  ],
  floating: ["floating", "floats", "float", "three-state", "tri-state", "tristate", "high impedance", "hi-z", "high-z"],
  steady: ["steady", "stable", "static", "not changing"],
  ok: ["ok", "okay", "good", "pass", "passed", "passes", "fine"],
  "not-ok": ["not ok", "bad", "fail", "failed", "fails", "nok", "not good"],
  changed: ["changed", "change", "different", "changes"],
  "no-change": ["no change", "unchanged", "same", "no difference"],
  cured: ["cured", "fixed", "works", "works now"],
};

const STATE_BY_WORD = new Map(
  READING_STATES.flatMap((state) => [state, ...STATE_WORDS[state]].map((word) => [comparable(word), state] as const)),
);

/** `Stuck-High` and `stuck  high` are the same word. */
function comparable(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ");
}

const OVER_LIMIT =
  /^[>+-]?\s*(?:o\.?l\.?|0l|over|over\s?-?(?:range|limit|load|flow)|out of range|ovl|1 \.|1\.|inf|infinite|infinity|∞)$/i;
/** Older meters show an exceeded range as a 1 at the left with all other digits dark. */
const LONE_ONE = /^1\s?\.$/;
const NOT_TAKEN = new Set(["", "-", "--", "\u2013", "\u2014", "?", "n/a", "na", "skip", "skipped", "not taken"]);

/** What a kind of check can answer. */
type Answers = "meter" | "signal" | "words" | "words-or-value" | "trial";
const ANSWERS: Record<CheckKind, Answers> = {
  visual: "words",
  "self-test": "words",
  continuity: "meter",
  resistance: "meter",
  diode: "meter",
  "dc-voltage": "meter",
  "ac-voltage": "meter",
  current: "meter",
  ripple: "meter",
  frequency: "meter",
  level: "signal",
  activity: "signal",
  capacitance: "meter",
  esr: "meter",
  temperature: "meter",
  waveform: "words-or-value",
  contents: "words",
  "node-signature": "words",
  trial: "trial",
};

/** Kinds on which the meter drives the part itself, so that an open circuit exceeds its range. */
const OHMIC: ReadonlySet<CheckKind> = new Set<CheckKind>(["continuity", "resistance", "diode", "esr"]);

/** Whether the circuit's resistance or diode drop is what this kind of check reads. */
export function isOhmic(kind: CheckKind): boolean {
  return OHMIC.has(kind);
}

/** Whether the text says that this reading was left out, as in a run of pins with a gap. */
export function isNotTaken(text: string): boolean {
  return NOT_TAKEN.has(text.trim().toLowerCase());
}

/**
 * Reads what a person typed for a check of this kind: a quantity, `OL`, a state such as `stuck low`, or words where the
 * kind takes words. Where it cannot, says why and, where the text has two meanings, what to ask; the caller keeps the
 * text either way.
 */
export function readReading(text: string, kind: CheckKind): Result<Reading, Unreadable> {
  const trimmed = text.trim();
  if (isNotTaken(trimmed)) return failed({ reason: "No reading was typed." });
  const answers = ANSWERS[kind];
  if (trimmed.length > MAX_LENGTH)
    return answers === "words" || answers === "words-or-value"
      ? done({ form: "words", text: trimmed })
      : failed({ reason: "This is too long to be a reading." });
  switch (answers) {
    case "words":
      return done(readVerdictWord(trimmed) ?? { form: "words", text: trimmed });
    case "words-or-value":
      return done(readState(trimmed, kind) ?? readValueQuietly(trimmed, kind) ?? { form: "words", text: trimmed });
    case "trial":
      return readTrial(trimmed);
    case "meter":
    case "signal":
      return readMeter(trimmed, kind);
  }
}

function readMeter(text: string, kind: CheckKind): Result<Reading, Unreadable> {
  const doubt = doubtfulOne(text, kind);
  if (doubt) return failed(doubt);
  if (OVER_LIMIT.test(text)) return done({ form: "over-limit" });
  const state = readState(text, kind);
  if (state) return done(state);
  const quantity = readQuantity(text, { kind });
  if (quantity.ok) return done({ form: "value", quantity: quantity.value });
  return failed(
    /\d/.test(text) ? quantity.problem : { reason: `“${text}” is neither a number nor a state known here.` },
  );
}

/** A lone 1 is a number, a logic level, or what an older meter shows when its range is exceeded. */
function doubtfulOne(text: string, kind: CheckKind): Unreadable | null {
  const reason = `“${text}” can be read in two ways.`;
  if (kind === "diode" && text === "1")
    return { reason, question: "Over the meter's range, or 1 mV? Write OL or 0.001." };
  if (kind === "level" && text === "1") return { reason, question: "Logic 1, or one volt? Write high or 1 V." };
  if (LONE_ONE.test(text) && !isOhmic(kind))
    return { reason, question: "Over the meter's range, or exactly one? Write OL, or the number with its unit." };
  return null;
}

function readState(text: string, kind: CheckKind): Reading | null {
  const clock = /^clock\s+(?=[\d.,])(.+)$/i.exec(text)?.[1];
  if (clock !== undefined) {
    const frequency = readQuantity(clock, { kind: "frequency" });
    return frequency.ok ? { form: "state", state: "clock", frequency: frequency.value } : null;
  }
  const state = STATE_BY_WORD.get(comparable(text));
  if (state === undefined) return null;
  const saysOpen = state === "open" && comparable(text) !== "no beep";
  return saysOpen && isOhmic(kind) ? { form: "over-limit" } : { form: "state", state };
}

function readVerdictWord(text: string): Reading | null {
  const state = STATE_BY_WORD.get(comparable(text));
  return state === "ok" || state === "not-ok" ? { form: "state", state } : null;
}

function readValueQuietly(text: string, kind: CheckKind): Reading | null {
  const quantity = readQuantity(text, { kind });
  return quantity.ok && quantity.value.unit !== null ? { form: "value", quantity: quantity.value } : null;
}

function readTrial(text: string): Result<Reading, Unreadable> {
  const state = STATE_BY_WORD.get(comparable(text));
  if (state === "changed" || state === "no-change" || state === "cured") return done({ form: "state", state });
  return failed({ reason: `“${text}” is no outcome of a trial. Write changed, no change or cured.` });
}

/** The state a text names on its own, for expectations; null where it names none. */
export function stateNamed(text: string): ReadingState | null {
  return STATE_BY_WORD.get(comparable(text)) ?? null;
}

/** A state in words, as it stands in a sentence. */
export function printState(state: ReadingState): string {
  return STATE_WORDS[state][0] ?? state;
}

/** A reading as it is shown; `readReading` of the answer gives the same reading on the same kind of check. */
export function printReading(reading: Reading): string {
  switch (reading.form) {
    case "value":
      return printQuantity(reading.quantity);
    case "over-limit":
      return "OL";
    case "state":
      return printState(reading.state) + (reading.frequency ? ` ${printQuantity(reading.frequency)}` : "");
    case "words":
      return reading.text;
  }
}
