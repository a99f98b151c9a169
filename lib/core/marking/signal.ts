import { clean } from "./clean.ts";
import { normalForm } from "./code.ts";

/** A supply voltage: sign, whole volts, decimals in either style (`3.3V`, `3V3`), what kind of voltage. */
const RAIL = /^([+-]|±|\+\/-)?\s?(\d{1,4})(?:[.,](\d{1,3}))?\s?v(?:olts?)?(\d{1,2})?\s?(dc|ac)?$/i;
/** `+5` and `-12` without a unit: a sign makes a rail of a bare number. */
const BARE_RAIL = /^([+-])(\d{1,3})(?:[.,](\d{1,3}))?$/;

/** A supply rail by its nominal voltage. */
export interface Rail {
  sign: "+" | "-" | "±";
  /** Volts as people write them, no zeros behind: `5`, `3.3`. */
  volts: string;
  alternating: boolean;
}

function joinDecimals(whole: string, decimals: string): string {
  const kept = decimals.replace(/0+$/, "");
  const units = whole.replace(/^0+(?=\d)/, "");
  return kept === "" ? units : `${units}.${kept}`;
}

/** Reads `+12V`, `12 V`, `-5V2`, `±15V`, `6.3 VAC`, `+5`; null for anything else. No sign means plus. */
export function readRail(text: string): Rail | null {
  const plain = clean(text);
  const match = RAIL.exec(plain);
  if (match) {
    const [, sign = "+", whole = "0", decimals, afterV, current] = match;
    if (decimals !== undefined && afterV !== undefined) return null;
    return {
      sign: sign === "+" || sign === "-" ? sign : "±",
      volts: joinDecimals(whole, decimals ?? afterV ?? ""),
      alternating: current?.toLowerCase() === "ac",
    };
  }
  const bare = BARE_RAIL.exec(plain);
  if (!bare) return null;
  return {
    sign: bare[1] === "-" ? "-" : "+",
    volts: joinDecimals(bare[2] ?? "0", bare[3] ?? ""),
    alternating: false,
  };
}

function railKeys({ sign, volts, alternating }: Rail): string[] {
  const size = `${volts.replace(".", "p")}v`;
  if (alternating) return [`ac${size}`];
  if (sign === "±") return [`pos${size}`, `neg${size}`];
  return [sign === "-" ? `neg${size}` : `pos${size}`];
}

/** Marks of an active-low signal in front of or behind its name, and a bar drawn over it. */
const LOW_BEFORE = /^(?:[/~!]|-(?=[A-Za-z_]))\s?\{?/;
const LOW_AFTER = /(?:[#*\\]|_[nN])+$/;
const SMALL_N = /^n(?=[A-Z])/;
const BAR_OVER = /[\u0304\u0305\u203E]/;

/** The name of a signal without its marks, and whether they say that it is active low. Letters as given. */
export function readActiveLow(text: string): { name: string; low: boolean } {
  const plain = clean(text);
  const barred = BAR_OVER.test(plain.normalize("NFD"));
  const bare = barred ? plain.normalize("NFD").replace(/[\u0304\u0305\u203E]/g, "") : plain;
  const name = bare.replace(LOW_BEFORE, "").replace(/\}$/, "").replace(LOW_AFTER, "").replace(SMALL_N, "");
  if (!/[A-Za-z0-9]/.test(name)) return { name: plain, low: false };
  return { name, low: barred || name !== bare };
}

/**
 * The keys of a signal or rail, the exact one first: `/CS`, `~CS`, `CS#` → ncs, cs; `+12V`, `12V` → pos12v; `-12V` →
 * neg12v; `3.3V` → pos3p3v. Each is `[a-z0-9]+`; empty for text without letters or digits.
 */
export function signalKeys(signal: string): string[] {
  const rail = readRail(signal);
  if (rail) return railKeys(rail);
  const { name, low } = readActiveLow(signal);
  const signed = /^([+-])(?=\d)/.exec(name);
  const form = normalForm(name.replace(/(\d)[.,](?=\d)/g, "$1p"));
  if (form === "") return [];
  if (signed) return [`${signed[1] === "-" ? "neg" : "pos"}${form}`];
  return low ? [`n${form}`, form] : [form];
}
