import { done, failed, type Result } from "../shared/index.ts";

/** A decimal number as typed: (-1)^negative × digits × 10^power. `digits` has no leading zeros ("0" for zero). */
export type TypedNumber = { negative: boolean; digits: string; power: number; isInteger: boolean };

/** What stands behind the number, and other ways to take the digits. */
export type NumberText = {
  number: TypedNumber;
  rest: string;
  /** `1,234` may be thousands; then this is the other reading. */
  orThousands?: TypedNumber;
  /** `612 610`: one number in groups, or two readings. */
  spaced: boolean;
};

/** Longest text that can be a reading or a limit; anything longer is a sentence, and no pattern is tried on it. */
export const MAX_LENGTH = 80;
/** A double keeps fifteen decimal digits exactly (IEEE 754 binary64). */
export const MAX_DIGITS = 15;

/** Minus as typed on phones and as pasted from documents: hyphens, the real minus sign, the en dash. */
const SIGN = /^([+\-\u2010\u2011\u2212\u2013])?\s*/;
const THOUSANDS_THEN_POINT = /^\d{1,3}(?:,\d{3})+\.\d+(?![\d.,])/;
const THOUSANDS_THEN_COMMA = /^\d{1,3}(?:\.\d{3})+,\d+(?![\d.,])/;
const REPEATED_GROUPS = /^(?:\d{1,3}(?:,\d{3}){2,}|\d{1,3}(?:\.\d{3}){2,})(?![\d.,])/;
const MARKED_GROUPS = /^\d{1,3}(?:['’\u00a0\u2009\u202f]\d{3})+(?:[.,]\d+)?(?![\d.,])/;
const SPACED_GROUPS = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d.,])/;
const ONE_COMMA_GROUP = /^[1-9]\d{0,2},\d{3}(?![\d.,])/;
const PLAIN = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)(?![\d.,])/;
const EXPONENT = /^[eE]([+\-\u2212]\d{1,3})(?!\d)/;

/** Reads the number a text begins with, in either decimal mark. Says why not, or what to ask, where it cannot. */
export function readNumberText(text: string): Result<NumberText, { reason: string; question?: string }> {
  const sign = SIGN.exec(text);
  const negative = sign?.[1] !== undefined && sign[1] !== "+";
  const body = text.slice(sign?.[0].length ?? 0);
  const match = matchBody(body);
  if (!match) return failed({ reason: `“${text}” does not begin with a number.` });

  const exponent = EXPONENT.exec(body.slice(match.length));
  const power = exponent ? Number(exponent[1]?.replace("\u2212", "-")) : 0;
  const rest = body.slice(match.length + (exponent?.[0].length ?? 0)).trim();
  if (!exponent && /^[eE]\d/.test(rest))
    return failed({
      reason: `“${text}” can be read in two ways.`,
      question: "Is the E a decimal mark (4E7 = 4.7 Ω) or a power of ten? Write 4R7, or 4e+7.",
    });

  const number = typedNumber(negative, match.plain, power);
  if (number.digits.length > MAX_DIGITS)
    return failed({ reason: `“${text}” has more digits than any instrument shows.` });
  const answer: NumberText = { number, rest, spaced: match.spaced };
  return done(match.thousands ? { ...answer, orThousands: typedNumber(negative, match.thousands, power) } : answer);
}

type BodyMatch = { length: number; plain: string; thousands?: string; spaced: boolean };

/** Digits with a point as decimal mark, and how many characters they took. */
function matchBody(body: string): BodyMatch | null {
  const withComma = THOUSANDS_THEN_COMMA.exec(body)?.[0];
  if (withComma !== undefined)
    return { length: withComma.length, plain: withComma.replaceAll(".", "").replace(",", "."), spaced: false };
  const withPoint = (THOUSANDS_THEN_POINT.exec(body) ?? REPEATED_GROUPS.exec(body))?.[0];
  if (withPoint !== undefined) return { length: withPoint.length, plain: withoutGroups(withPoint), spaced: false };
  const spaced = SPACED_GROUPS.exec(body)?.[0];
  const grouped = spaced ?? MARKED_GROUPS.exec(body)?.[0];
  if (grouped !== undefined)
    return {
      length: grouped.length,
      plain: grouped.replaceAll(/[^\d.,]/g, "").replace(",", "."),
      spaced: spaced !== undefined,
    };
  const plain = PLAIN.exec(body)?.[0];
  if (plain === undefined) return null;
  const match = { length: plain.length, plain: plain.replace(",", "."), spaced: false };
  return ONE_COMMA_GROUP.test(body) ? { ...match, thousands: plain.replace(",", "") } : match;
}

/** `12,345.6` → `12345.6`; `1.234.567` → `1234567`: a point that comes twice is no decimal mark. */
function withoutGroups(text: string): string {
  const withoutCommas = text.replaceAll(",", "");
  return withoutCommas.split(".").length > 2 ? withoutCommas.replaceAll(".", "") : withoutCommas;
}

/** `plain` is digits with at most one point; `power` shifts it by powers of ten. */
export function typedNumber(negative: boolean, plain: string, power: number): TypedNumber {
  const [whole = "", decimals = ""] = plain.split(".");
  const digits = (whole + decimals).replace(/^0+(?=\d)/, "") || "0";
  return { negative, digits, power: power - decimals.length, isInteger: decimals === "" && !plain.startsWith(".") };
}

/** The nearest double, or null where the number is too large or too small to keep. */
export function valueOf({ negative, digits, power }: TypedNumber, shift = 0): number | null {
  const size = Number(`${digits}e${power + shift}`);
  const isZero = digits === "0";
  if (!Number.isFinite(size) || (size === 0) !== isZero || Number(`1e${power + shift}`) === 0) return null;
  return negative && !isZero ? -size : size;
}
