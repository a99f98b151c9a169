import type { PlaceFacts } from "#lib/core/board/index.ts";
import { isNotTaken, readQuantity, readReading, type ReadingState, type Unit } from "#lib/core/quantity/index.ts";
import type { CheckKind } from "#lib/core/shared/index.ts";

/** How the kind of a check came about: what was typed or chosen beats what its unit, reading or place suggests. */
export type KindSource = "typed" | "chosen" | "unit" | "reading" | "place" | "usual";

export interface GuessedKind {
  kind: CheckKind;
  from: KindSource;
}

export const KIND_SOURCE_WORDS: Record<KindSource, string> = {
  typed: "as typed",
  chosen: "as chosen",
  unit: "from the unit",
  reading: "from the reading",
  place: "from the place",
  usual: "the usual one",
};

/**
 * A bare whole number from here on is the millivolts of a diode test, where the board cannot have such a voltage.
 * Common practice, no source.
 */
const DIODE_FROM = 100;
/** Volts: taken as the highest on a board whose record does not say. */
const USUAL_HIGHEST = 60;

const KIND_OF_UNIT: Record<Unit, CheckKind | null> = {
  V: "dc-voltage",
  A: "current",
  ohm: "resistance",
  F: "capacitance",
  Hz: "frequency",
  degC: "temperature",
  s: "waveform",
  H: null,
  "%": null,
  ppm: null,
  bit: null,
  W: null,
};

const KIND_OF_STATE: Record<ReadingState, CheckKind> = {
  short: "continuity",
  open: "continuity",
  noise: "activity",
  "stuck-high": "activity",
  "stuck-low": "activity",
  high: "level",
  low: "level",
  toggling: "activity",
  pulsing: "activity",
  clock: "activity",
  "no-activity": "activity",
  floating: "level",
  steady: "activity",
  ok: "visual",
  "not-ok": "visual",
  changed: "visual",
  "no-change": "visual",
  cured: "visual",
};

/**
 * The kind of check that a reading without a named kind most likely is. `highestVoltage` is the board's, in volts, where
 * known. Never fails: a person sees the guess and can choose another.
 */
export function guessKind(measured: string, found: PlaceFacts | null, highestVoltage: number | null): GuessedKind {
  const text = measured.trim();
  if (isNotTaken(text)) return kindOfPlace(found);
  const quantity = readQuantity(text);
  if (quantity.ok) {
    const { unit, form, value } = quantity.value;
    if (unit !== null) return { kind: kindOfUnit(unit, form), from: "unit" };
    if (/\d\s*[kMR]\d*$/.test(text)) return { kind: "resistance", from: "reading" };
    if (isDiodeDrop(text, value, highestVoltage)) return { kind: "diode", from: "reading" };
    return { kind: "dc-voltage", from: "usual" };
  }
  const state = readReading(text, "activity");
  if (state.ok && state.value.form === "state") return { kind: KIND_OF_STATE[state.value.state], from: "reading" };
  if (state.ok && state.value.form === "over-limit") return { kind: "continuity", from: "reading" };
  // A number with something behind it that cannot be read was meant for a meter; anything else is what was seen.
  return /^[<>~+-]?\d/.test(text) ? { kind: "dc-voltage", from: "usual" } : { kind: "visual", from: "reading" };
}

function kindOfUnit(unit: Unit, form: string | undefined): CheckKind {
  if (unit === "V" && form === "peak-to-peak") return "ripple";
  if (unit === "V" && form === "rms") return "ac-voltage";
  return KIND_OF_UNIT[unit] ?? "visual";
}

function isDiodeDrop(text: string, value: number, highestVoltage: number | null): boolean {
  return /^\d+$/.test(text) && value >= DIODE_FROM && value <= 3000 && value > (highestVoltage ?? USUAL_HIGHEST);
}

/** What one usually measures at such a place, before there is a reading. */
function kindOfPlace(found: PlaceFacts | null): GuessedKind {
  if (found === null || found.place.kind === "part") return { kind: "visual", from: "place" };
  if (found.rail) return { kind: found.rail.ac ? "ac-voltage" : "dc-voltage", from: "place" };
  switch (found.pin?.role ?? found.net?.role) {
    case "clock":
    case "oscillator":
    case "address":
    case "data":
    case "select":
      return { kind: "activity", from: "place" };
    case "reset":
      return { kind: "level", from: "place" };
    case "supply":
    case "power":
    case "ground":
      return { kind: "dc-voltage", from: "place" };
    case "enable":
    case "control":
    case "interrupt":
    case "input":
    case "output":
    case "analog":
    case "signal":
    case "unused":
    case "unknown":
    case undefined:
      return { kind: "dc-voltage", from: "usual" };
  }
}
