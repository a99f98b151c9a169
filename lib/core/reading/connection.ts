import type { CheckKind } from "../shared/index.ts";
import { EXPECTED_WORDS, printQuantity, printValue, type Quantity, type Unit } from "../quantity/index.ts";
import { SHORT } from "./against-limits.ts";
import { inconclusive, judged, type Judgement } from "./judgement.ts";

/** Ohms, when "open" or "no short" is expected. Common practice, no source. */
export const OPEN_OHMS = {
  /** Below it is connected; between the two limits a path through parts. */
  notOpenBelow: 100_000,
  openFrom: 1_000_000,
  /** From here on nobody would call it a short; between SHORT and this it may be a load or a nearly shorted part. */
  clearOfShort: 20,
} as const;

/** Volts of a diode test from which on a junction, not a short, is seen. Common practice, no source. */
const DIODE_CLEAR_OF_SHORT = 0.1;

/** A path as a meter saw it: its size is somewhere from `atLeast` to `atMost`, in ohms or, on diode tests, in volts. */
type Path = { shown: string; unit: Unit; atLeast: number; atMost: number; isShort: boolean; limits: PathLimits };
type PathLimits = { short: number; clearOfShort: number; notOpenBelow: number; openFrom: number };

const OHM_LIMITS: PathLimits = { short: SHORT.ohms, ...OPEN_OHMS };
/** A diode test that shows any drop has found a path; only OL is open. */
const DROP_LIMITS: PathLimits = {
  short: SHORT.diodeVolts,
  clearOfShort: DIODE_CLEAR_OF_SHORT,
  notOpenBelow: Infinity,
  openFrom: Infinity,
};

/** Holds a resistance or a diode drop against a connection or its absence. */
export function judgeConnection(
  kind: CheckKind,
  quantity: Quantity,
  expected: "short" | "no-short" | "open",
): Judgement {
  const unit = quantity.unit ?? (kind === "diode" ? "V" : "ohm");
  if (unit !== "ohm" && !(unit === "V" && kind === "diode"))
    return inconclusive(`${printQuantity(quantity)} cannot be held against “${EXPECTED_WORDS[expected]}”.`);
  const path = pathOf(quantity, unit);
  if (expected === "short") return judgeWanted(path);
  if (path.isShort)
    return judged("out-of-spec", `${path.shown} is a short (below ${printValue(path.limits.short, unit)}).`, {
      direction: "low",
      size: "clear",
    });
  return expected === "open" ? judgeOpen(path) : judgeNoShort(path);
}

/** Of a bounded reading only the bound is known: `<2 ohm` is at most 2 ohms, `>20 MΩ` at least 20 MΩ. */
function pathOf(quantity: Quantity, unit: Unit): Path {
  const limits = unit === "V" ? DROP_LIMITS : OHM_LIMITS;
  const size = Math.abs(quantity.value);
  const atLeast = quantity.bound === "below" ? 0 : size;
  const atMost = quantity.bound === "above" ? Infinity : size;
  const isShort = quantity.bound === "below" ? atMost <= limits.short : atMost < limits.short;
  return { shown: printQuantity({ ...quantity, unit }), unit, atLeast, atMost, isShort, limits };
}

function judgeWanted({ shown, unit, atLeast, isShort, limits }: Path): Judgement {
  const limit = printValue(limits.short, unit);
  if (isShort) return judged("in-spec", `${shown} is a connection (below ${limit}).`);
  if (atLeast <= limits.short)
    return inconclusive(`${shown} does not decide whether there is a connection (${limit}).`);
  return judged("out-of-spec", `${shown} is no connection (that is below ${limit}).`, {
    direction: "high",
    size: atLeast >= limits.openFrom ? "absent" : "clear",
  });
}

function judgeNoShort({ shown, atLeast, limits }: Path): Judgement {
  if (atLeast >= limits.clearOfShort) return judged("in-spec", `${shown} is no short.`);
  return inconclusive(`${shown} is low, but no short until a good board reads otherwise.`);
}

function judgeOpen({ shown, atLeast, atMost, limits }: Path): Judgement {
  if (atLeast >= limits.openFrom) return judged("in-spec", `${shown} is open.`);
  if (atMost >= limits.notOpenBelow) return inconclusive(`${shown} is neither plainly open nor plainly connected.`);
  return judged("out-of-spec", `${shown} is a path where open is expected.`, { direction: "low", size: "clear" });
}
