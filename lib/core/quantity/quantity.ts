import { done, failed, type CheckKind, type Result } from "../shared/index.ts";
import { MAX_DIGITS, MAX_LENGTH, readNumberText, typedNumber, valueOf, type TypedNumber } from "./number.ts";
import {
  isPlainPrefix,
  PLAIN_PREFIXES,
  PREFIX_SYMBOLS,
  readUnitText,
  UNIT_NOUNS,
  UNIT_SYMBOLS,
  UNITS_OF_KIND,
  type Form,
  type PrefixPower,
  type Unit,
  type UnitText,
} from "./units.ts";

export type Bound = "above" | "below" | "about";

/** A measured or stated amount in its base unit (V, A, ohm, F, H, Hz, s, degC, %, ppm, bit, W). */
export type Quantity = {
  value: number;
  /** Null where none was written and the kind of check has none of its own. */
  unit: Unit | null;
  /** Significant digits as typed; leading zeros do not count, trailing ones do. One for zero. */
  digits: number;
  /** What one step of the last typed digit is worth, in the base unit. */
  resolution: number;
  bound?: Bound;
  form?: Form;
};

/** What is known before reading: the kind of check, or the unit that a bare number is in. */
export type QuantityHint = { unit?: Unit; kind?: CheckKind };

/** Why a text is no answer, and, where it has two meanings, what to ask the person. */
export type Unreadable = { reason: string; question?: string };

/**
 * Up to where a number without a unit can only mean one thing. Beyond, the person is asked.
 * Common practice, no source.
 */
export const BARE_NUMBERS = {
  /** Diode tests show whole millivolts (612) or volts with decimals (0.612); no meter drives more than 3 V. */
  diodeMillivolts: 3000,
  diodeVolts: 5,
  /** Amperes: a bench supply shows 0.45; a bare 35.2 is more likely milliamperes. */
  current: 1,
  /** Volts: a ripple of 50 is more likely millivolts. */
  ripple: 1,
  /** Hertz: from here on nobody means megahertz; a bare 3.58 does. */
  frequency: 1000,
} as const;

const BOUND_MARKS: readonly (readonly [mark: RegExp, bound: Bound])[] = [
  [/^(?:>=?|≥|⩾|(?:over|above|more than|greater than|at least)\s)\s*/i, "above"],
  [/^(?:<=?|≤|⩽|(?:below|under|less than|at most)\s)\s*/i, "below"],
  [/^(?:~|≈|≃|(?:about|around|approx(?:\.|imately)?|ca\.?|circa)\s)\s*/i, "about"],
];

/** Words behind a reading that repeat what the kind of check says already. */
const TAIL_WORDS = /\s+(?:diode|drop|forward|to\s+(?:gnd|ground|0\s?v|chassis|earth))$/i;

/** IEC 60062: a letter for the decimal mark and the multiplier. `5V1` is how zener diodes are marked. */
const LETTER_MARK = /^([+\-\u2212]?)(\d*)([pnu\u00b5\u03bcmkKMGRrV])(\d+)(?![\d.,])(.*)$/;

/**
 * Reads a quantity as repairers write it: `4.87`, `4,87 V`, `4k7`, `R47`, `3.579545 MHz`, `50mVpp`, `>20M`.
 * Both decimal marks, SI prefixes, IEC 60062. Where milli and mega, or a comma and thousands, cannot be told apart the
 * answer is a question and never a number.
 */
export function readQuantity(text: string, hint: QuantityHint = {}): Result<Quantity, Unreadable> {
  const trimmed = text.trim();
  if (trimmed === "") return failed({ reason: "Nothing was typed." });
  if (trimmed.length > MAX_LENGTH) return failed({ reason: "This is too long to be a reading." });
  const { bound, body } = takeBound(trimmed.replace(TAIL_WORDS, ""));
  const read = readLetterMark(body, hint) ?? readPlain(body, hint);
  return read.ok && bound ? done({ ...read.value, bound }) : read;
}

function takeBound(text: string): { bound: Bound | null; body: string } {
  for (const [mark, bound] of BOUND_MARKS) {
    const body = text.replace(mark, "");
    if (body !== text) return { bound, body };
  }
  return { bound: null, body: text };
}

function readLetterMark(text: string, hint: QuantityHint): Result<Quantity, Unreadable> | null {
  const match = LETTER_MARK.exec(text);
  if (!match) return null;
  const [, sign = "", whole = "", letter = "", decimals = "", rest = ""] = match;
  if (whole === "" && letter === "V") return null;
  const number = typedNumber(sign !== "" && sign !== "+", `${whole || "0"}.${decimals}`, 0);
  const mark = readUnitText(letter);
  const suffix = readUnitText(rest);
  if (!mark || !suffix || suffix.power !== 0) return null;
  const unit = mark.unit ?? suffix.unit;
  if (suffix.unit !== null && suffix.unit !== unit) return null;
  const written: UnitText = { power: mark.power, unit, spelledOut: false };
  return complete(text, number, suffix.form ? { ...written, form: suffix.form } : written, hint);
}

function readPlain(text: string, hint: QuantityHint): Result<Quantity, Unreadable> {
  const read = readNumberText(text);
  if (!read.ok) return read;
  const { number, rest, orThousands, spaced } = read.value;
  const written = readUnitText(rest);
  if (!written) return failed({ reason: `“${rest}” is no unit known here.` });
  if (spaced && rest === "")
    return failed({
      reason: `“${text}” can be read in two ways.`,
      question: "One number or several readings? Write one number without spaces, or with its unit.",
    });
  const plain = complete(text, number, written, hint);
  if (!orThousands) return plain;
  const thousands = complete(text, orThousands, written, hint);
  if (plain.ok && thousands.ok && plain.value.value === thousands.value.value) return plain;
  const decimal = text.replace(",", ".");
  return failed({
    reason: `“${text}” can be read in two ways.`,
    question: `Is the comma a decimal mark? Write ${decimal} if so, or ${text.replace(",", "")} if it parts thousands.`,
  });
}

/** Joins number, prefix and unit, or says what is doubtful about them. */
function complete(
  typed: string,
  number: TypedNumber,
  written: UnitText,
  hint: QuantityHint,
): Result<Quantity, Unreadable> {
  const allowed = hint.kind ? UNITS_OF_KIND[hint.kind] : [];
  const unit = written.unit ?? hint.unit ?? allowed[0] ?? null;
  const misfit = unit && unitMisfit(typed, unit, hint, allowed);
  if (misfit) return failed(misfit);
  if (!written.spelledOut && !isPlainPrefix(written.power, unit, hint.kind))
    return failed(doubtfulPrefix(typed, written.power, unit));

  const isBare = written.unit === null && written.power === 0;
  const shift = isBare ? bareShift(typed, number, hint) : done(written.power);
  if (!shift.ok) return shift;
  const value = valueOf(number, shift.value);
  if (value === null) return failed({ reason: `“${typed}” is outside of anything that can be measured.` });
  const quantity: Quantity = {
    value,
    unit,
    digits: number.digits.length,
    resolution: Number(`1e${number.power + shift.value}`),
  };
  return done(written.form ? { ...quantity, form: written.form } : quantity);
}

function unitMisfit(typed: string, unit: Unit, hint: QuantityHint, allowed: readonly Unit[]): Unreadable | null {
  const wanted = allowed.length > 0 ? allowed : hint.unit ? [hint.unit] : [];
  if (wanted.length === 0 || wanted.includes(unit)) return null;
  const names = wanted.map((each) => UNIT_SYMBOLS[each]).join(" or ");
  return { reason: `“${typed}” is ${UNIT_NOUNS[unit]}; this check is read in ${names}.` };
}

function doubtfulPrefix(typed: string, power: PrefixPower, unit: Unit | null): Unreadable {
  const reason = `“${typed}” can be read in two ways.`;
  const symbol = unit ? UNIT_SYMBOLS[unit] : "";
  if (unit === "F" && (power === -3 || power === 6))
    return {
      reason,
      question: "Microfarads, as old drawings write it, or millifarads? Write µF, or the farads in full.",
    };
  if (power === -3 || power === 6) {
    const likely = PREFIX_SYMBOLS[power === -3 ? 6 : -3];
    return { reason, question: `Milli or mega? Write ${likely}${symbol} if so, or the number without a prefix.` };
  }
  const asked = `${PREFIX_SYMBOLS[power]}${symbol}`;
  return { reason: `${asked} is not expected here.`, question: `Which unit is meant by “${typed}”? Write it out.` };
}

/** Power of ten that a number without prefix and unit carries on this kind of check. */
function bareShift(typed: string, number: TypedNumber, { kind, unit }: QuantityHint): Result<number, Unreadable> {
  const size = Math.abs(valueOf(number) ?? Infinity);
  const ask = (question: string): Result<number, Unreadable> => failed({ reason: `“${typed}” has no unit.`, question });
  if (kind === "diode") {
    const limit = number.isInteger ? BARE_NUMBERS.diodeMillivolts : BARE_NUMBERS.diodeVolts;
    return size <= limit
      ? done(number.isInteger ? -3 : 0)
      : ask("Millivolts or volts? A diode test shows 3 V at most.");
  }
  if (unit !== undefined || size === 0) return done(0);
  if (kind === "capacitance") return ask("pF, nF or µF? Write the unit.");
  if (kind === "current" && size >= BARE_NUMBERS.current) return ask("mA or A? Write the unit.");
  if (kind === "ripple" && size >= BARE_NUMBERS.ripple) return ask("mV or V? Write the unit.");
  if (kind === "frequency" && size < BARE_NUMBERS.frequency) return ask("Hz, kHz or MHz? Write the unit.");
  return done(0);
}

/**
 * A quantity from a computed value (base unit), so that 3.3 × 1.05 is 3.465 and not 3.4650000000000003. It has the fewest
 * digits that name the value to twelve significant ones, and zeros up to its engineering prefix (50 mV, not 0.05 V); tenths keep their unit (0.8 V).
 */
export function quantityOf(value: number, unit: Unit | null, form?: Form): Quantity {
  const [mantissa = "0", exponentText = "0"] = Number(value.toPrecision(12)).toExponential().split("e");
  const exponent = Number(exponentText);
  const shortest = mantissa.replace(/[-.]/g, "").length;
  const digits = Math.min(MAX_DIGITS, Math.max(shortest, exponent - prefixBelow(exponent, unit) + 1));
  const quantity: Quantity = {
    value: Number(`${mantissa}e${exponent}`) || 0,
    unit,
    digits,
    resolution: Number(`1e${exponent - digits + 1}`),
  };
  return form ? { ...quantity, form } : quantity;
}

function prefixBelow(exponent: number, unit: Unit | null): number {
  if (exponent === -1) return 0;
  return PLAIN_PREFIXES[unit ?? "none"].findLast((power) => power <= exponent) ?? exponent;
}
