import { quantityOf, type Bound, type Quantity } from "./quantity.ts";
import { FORM_SYMBOLS, PLAIN_PREFIXES, PREFIX_SYMBOLS, UNIT_SYMBOLS, type PrefixPower, type Unit } from "./units.ts";

const BOUND_SYMBOLS: Record<Bound, string> = { above: ">", below: "<", about: "≈" };

/**
 * Engineering notation with the digits that were typed: `4.70 kΩ`, `>20 MΩ`, `50 mVpp`, `-12.1 V`.
 * `readQuantity` of the answer gives the same quantity; only prefixes that are never in doubt are used.
 */
export function printQuantity(quantity: Quantity): string {
  const { number, suffix } = printParts(quantity);
  const bound = quantity.bound ? BOUND_SYMBOLS[quantity.bound] : "";
  return `${bound}${number}${suffix && ` ${suffix}`}`;
}

/** A computed value (base unit), for sentences: at most `digits` significant digits, no padding zeros. */
export function printValue(value: number, unit: Unit | null, digits = 6): string {
  return printQuantity(quantityOf(Number(value.toPrecision(digits)), unit));
}

/** Number and unit apart, for columns and for ranges that name the unit once. `suffix` is empty without a unit. */
export function printParts(quantity: Quantity): { number: string; suffix: string } {
  const { digits, exponent, sign } = decimalParts(quantity);
  const last = exponent - digits.length + 1;
  const symbol = quantity.unit ? UNIT_SYMBOLS[quantity.unit] : "";
  const form = quantity.form ? FORM_SYMBOLS[quantity.form] : "";
  const prefix = choosePrefix(quantity.unit, quantity.value === 0 ? last : exponent, last);
  const number = prefix === null ? scientific(digits, exponent) : positional(digits, prefix - last);
  return { number: sign + number, suffix: `${PREFIX_SYMBOLS[prefix ?? 0]}${symbol}${form}` };
}

function decimalParts({ value, digits, resolution }: Quantity): { digits: string; exponent: number; sign: string } {
  if (value === 0) return { digits: "0", exponent: Math.round(Math.log10(resolution)), sign: "" };
  const [mantissa = "0", exponent = "0"] = Math.abs(value)
    .toExponential(digits - 1)
    .split("e");
  return { digits: mantissa.replace(".", ""), exponent: Number(exponent), sign: value < 0 ? "-" : "" };
}

/** The engineering prefix, or the next one in which no zeros have to be added that nobody typed. */
function choosePrefix(unit: Unit | null, exponent: number, last: number): PrefixPower | null {
  const usable = PLAIN_PREFIXES[unit ?? "none"].filter((power) => power >= last);
  return usable.findLast((power) => power <= exponent) ?? usable[0] ?? null;
}

function positional(digits: string, decimals: number): string {
  const padded = digits.padStart(decimals + 1, "0");
  const whole = padded.slice(0, padded.length - decimals);
  return decimals === 0 ? whole : `${whole}.${padded.slice(padded.length - decimals)}`;
}

/** Only where no prefix serves; the sign of the exponent keeps it apart from an E as decimal mark. */
function scientific(digits: string, exponent: number): string {
  const mantissa = digits.length > 1 ? `${digits.slice(0, 1)}.${digits.slice(1)}` : digits;
  return `${mantissa}e${exponent < 0 ? "-" : "+"}${Math.abs(exponent)}`;
}
