import type { CheckKind } from "../shared/index.ts";

/** Base units in which values are kept. `ppm` and `%` are shares of something named beside them. */
export const UNITS = ["V", "A", "ohm", "F", "H", "Hz", "s", "degC", "%", "ppm", "bit", "W"] as const;
export type Unit = (typeof UNITS)[number];

/** Power of ten of an SI prefix as read or printed; 0 is no prefix. */
export type PrefixPower = -12 | -9 | -6 | -3 | 0 | 3 | 6 | 9;

export const PREFIX_SYMBOLS: Record<PrefixPower, string> = {
  [-12]: "p",
  [-9]: "n",
  [-6]: "µ",
  [-3]: "m",
  0: "",
  3: "k",
  6: "M",
  9: "G",
};

export const UNIT_SYMBOLS: Record<Unit, string> = {
  V: "V",
  A: "A",
  ohm: "Ω",
  F: "F",
  H: "H",
  Hz: "Hz",
  s: "s",
  degC: "°C",
  "%": "%",
  ppm: "ppm",
  bit: "bit",
  W: "W",
};

/** What the unit measures, for sentences. */
export const UNIT_NOUNS: Record<Unit, string> = {
  V: "a voltage",
  A: "a current",
  ohm: "a resistance",
  F: "a capacitance",
  H: "an inductance",
  Hz: "a frequency",
  s: "a time",
  degC: "a temperature",
  "%": "a share in percent",
  ppm: "a share in ppm",
  bit: "a number of bits",
  W: "a power",
};

/**
 * Prefixes that a text may carry without a doubt, smallest first. Left out are those that a repairer only writes by
 * mistake or in an old habit: a megavolt, a milliohm (meant: megohm), a millihertz (meant: megahertz), a millifarad
 * (old drawings write mF for microfarad). Such a text gets a question. Common practice, no source.
 */
export const PLAIN_PREFIXES: Record<Unit | "none", readonly PrefixPower[]> = {
  V: [-9, -6, -3, 0, 3],
  A: [-12, -9, -6, -3, 0],
  ohm: [-6, 0, 3, 6, 9],
  F: [-12, -9, -6, 0],
  H: [-9, -6, -3, 0],
  Hz: [0, 3, 6, 9],
  s: [-12, -9, -6, -3, 0],
  degC: [0],
  "%": [0],
  ppm: [0],
  bit: [0],
  W: [-6, -3, 0, 3],
  none: [-12, -9, -6, 0, 3, 6, 9],
};

/** Whether `power` on `unit` can be taken as written. On ESR checks milliohms are what the meter shows. */
export function isPlainPrefix(power: PrefixPower, unit: Unit | null, kind: CheckKind | undefined): boolean {
  if (kind === "esr" && unit === "ohm" && power === -3) return true;
  return PLAIN_PREFIXES[unit ?? "none"].includes(power);
}

/** Units that a reading of this kind may have; the first one is meant when none is written. Empty: any unit. */
export const UNITS_OF_KIND: Record<CheckKind, readonly Unit[]> = {
  visual: [],
  "self-test": [],
  continuity: ["ohm"],
  resistance: ["ohm"],
  diode: ["V"],
  "dc-voltage": ["V"],
  "ac-voltage": ["V"],
  current: ["A"],
  ripple: ["V"],
  frequency: ["Hz"],
  level: ["V"],
  activity: [],
  capacitance: ["F"],
  esr: ["ohm"],
  temperature: ["degC"],
  waveform: [],
  contents: [],
  "node-signature": [],
  trial: [],
};

const PREFIX_SPELLINGS: Record<string, PrefixPower> = {
  p: -12,
  P: -12,
  n: -9,
  N: -9,
  u: -6,
  U: -6,
  // U+00B5 is the micro sign, U+03BC the Greek letter.
  "\u00b5": -6,
  "\u03bc": -6,
  m: -3,
  "": 0,
  k: 3,
  K: 3,
  M: 6,
  g: 9,
  G: 9,
};

/** Written out, a prefix is never in doubt: nobody types `milliohm` for a megohm. */
const PREFIX_WORDS: Record<string, PrefixPower> = {
  pico: -12,
  nano: -9,
  micro: -6,
  milli: -3,
  kilo: 3,
  kil: 3,
  meg: 6,
  mega: 6,
  giga: 9,
};

/** Longest spelling first, so that `volts` is not read as a prefix before `s`. */
const UNIT_SPELLINGS: readonly (readonly [spelling: RegExp, unit: Unit])[] = [
  [/(?:volts?|v)$/i, "V"],
  [/(?:amperes?|amps?|a)$/i, "A"],
  // U+03A9 is the Greek letter, U+2126 the ohm sign: keyboards and documents give either.
  [/(?:ohms?|\u03a9|\u2126|r)$/i, "ohm"],
  [/(?:hertz|hz)$/i, "Hz"],
  [/(?:farads?|fd?)$/i, "F"],
  [/(?:henrys?|henries|h)$/i, "H"],
  [/(?:°\s*c|deg(?:rees?)?\.?\s*c?|celsius|°|c)$/i, "degC"],
  [/(?:percent|pct|%)$/i, "%"],
  [/ppm$/i, "ppm"],
  [/bits?$/i, "bit"],
  [/(?:watts?|w)$/i, "W"],
  [/(?:seconds?|secs?|s)$/, "s"],
];

/** How a.c. was measured. Without it a figure in volts is d.c., or whatever the expectation beside it says. */
export type Form = "peak-to-peak" | "rms" | "peak";

export const FORM_SYMBOLS: Record<Form, string> = { "peak-to-peak": "pp", rms: "rms", peak: "pk" };

const FORM_SPELLINGS: readonly (readonly [spelling: RegExp, form: Form | null])[] = [
  [/(?:pp|p-p|p\.p\.|pk-pk|pkpk|ptp|peak[ -]to[ -]peak)$/i, "peak-to-peak"],
  [/(?:rms|eff|~|ac|a\.c\.)$/i, "rms"],
  [/(?:peak|pk|p)$/i, "peak"],
  [/(?:dc|d\.c\.|=)$/i, null],
];

export type UnitText = {
  power: PrefixPower;
  unit: Unit | null;
  form?: Form;
  /** The prefix is a word of its own and needs no second look. */
  spelledOut: boolean;
};

/**
 * Reads what stands behind a number: `mVpp`, `k ohm`, `M`, `µF`, `V a.c.`.
 * Null where it is no unit known here. Does not judge whether the prefix makes sense.
 */
export function readUnitText(text: string): UnitText | null {
  const trimmed = text.trim();
  for (const [spelling, form] of FORM_SPELLINGS) {
    const head = trimmed.replace(spelling, "");
    if (head === trimmed) continue;
    const inner = readPrefixedUnit(head.trim());
    if (inner && (inner.unit === "V" || inner.unit === "A")) return form ? { ...inner, form } : inner;
  }
  return readPrefixedUnit(trimmed);
}

function readPrefixedUnit(text: string): UnitText | null {
  const bare = readPrefix(text);
  if (bare) return { ...bare, unit: null };
  // A lone small h is an hour to most readers, never a henry.
  if (text === "h") return null;
  for (const [spelling, unit] of UNIT_SPELLINGS) {
    const head = text.replace(spelling, "");
    const prefix = head === text ? null : readPrefix(head.trim());
    if (prefix) return { ...prefix, unit };
  }
  return null;
}

function readPrefix(text: string): { power: PrefixPower; spelledOut: boolean } | null {
  const power = Object.hasOwn(PREFIX_SPELLINGS, text) ? PREFIX_SPELLINGS[text] : undefined;
  if (power !== undefined) return { power, spelledOut: false };
  const word = text.toLowerCase();
  const spelled = Object.hasOwn(PREFIX_WORDS, word) ? PREFIX_WORDS[word] : undefined;
  return spelled === undefined ? null : { power: spelled, spelledOut: true };
}
