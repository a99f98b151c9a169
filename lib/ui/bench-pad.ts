import type { CheckKind } from "#lib/core/shared/index.ts";

/** A key of the large number pad. `word` replaces what stands there; `unit` goes behind the digits. */
export type PadKey =
  | { press: "digit"; text: string }
  | { press: "point" }
  | { press: "sign" }
  | { press: "back" }
  | { press: "unit"; text: string }
  | { press: "word"; text: string };

const NUMBER = /^-?\d*\.?\d*$/;
const WITH_UNIT = /^(-?\d+\.?\d*)([^\d.]*)$/;

/** The reading after a key was pressed. What makes no sense (a second point, a unit without a number) changes nothing. */
export function padText(text: string, key: PadKey): string {
  const isNumber = NUMBER.test(text);
  const [, number, unit = ""] = WITH_UNIT.exec(text) ?? [];
  switch (key.press) {
    case "digit":
      return isNumber ? text + key.text : key.text;
    case "point":
      if (!isNumber) return "0.";
      if (text.includes(".")) return text;
      return /\d$/.test(text) ? `${text}.` : `${text}0.`;
    case "sign":
      if (text.startsWith("-")) return text.slice(1);
      return isNumber || number !== undefined ? `-${text}` : text;
    case "back":
      // A word goes as a whole, a unit before its number.
      if (unit !== "") return number ?? "";
      return isNumber ? text.slice(0, -1) : "";
    case "unit":
      return number === undefined ? text : number.replace(/\.$/, "") + key.text;
    case "word":
      return key.text;
  }
}

interface PadKeys {
  units: readonly string[];
  words: readonly string[];
}

const ACTIVITY: PadKeys = {
  units: [],
  words: ["active", "no activity", "noise", "stuck low", "stuck high", "pulsing"],
};
const LOOK: PadKeys = { units: [], words: ["ok", "not ok"] };

/** The keys beside the digits, by kind of check: prefixes that the reading may carry, and words it may be. */
export const PAD_KEYS: Record<CheckKind, PadKeys> = {
  visual: LOOK,
  "self-test": LOOK,
  continuity: { units: ["k"], words: ["beep", "no beep", "OL"] },
  resistance: { units: ["k", "M"], words: ["OL", "short"] },
  diode: { units: [], words: ["OL", "short"] },
  "dc-voltage": { units: ["m"], words: ["noise", "stuck low", "stuck high", "floating"] },
  "ac-voltage": { units: ["m"], words: [] },
  current: { units: ["µ", "m", "A"], words: [] },
  ripple: { units: ["m", "V"], words: [] },
  frequency: { units: ["Hz", "k", "M"], words: ["no activity"] },
  level: { units: [], words: ["high", "low", "floating", "stuck low", "stuck high"] },
  activity: ACTIVITY,
  capacitance: { units: ["p", "n", "µ"], words: ["OL", "short"] },
  esr: { units: ["m"], words: ["OL"] },
  temperature: { units: [], words: [] },
  waveform: { units: ["m", "V"], words: ["noise", "no activity"] },
  contents: LOOK,
  "node-signature": LOOK,
  trial: { units: [], words: ["changed", "no change", "cured"] },
};
