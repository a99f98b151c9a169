import type { CheckKind, PinRole, PinType, Technology } from "../shared/index.ts";
import { quantityOf, type Expectation, type Quantity, type Unit } from "../quantity/index.ts";
import { inputLimits, LEVELS } from "./levels.ts";

/** What should be read and, in one sentence, why. */
export type Expected = { expectation: Expectation; why: string };

/** Defaults where the board's record says nothing. Common practice, no source. */
export const RAIL_DEFAULTS = {
  /** Largest nominal voltage of a logic rail (V): TTL's ±5 % holds up to here, and for -5 and -5.2 V. */
  logicUpTo: 5.5,
  logicTolerancePercent: 5,
  /** ±12 V, ±15 V and everything else. */
  otherTolerancePercent: 10,
  /** Peak to peak on a regulated logic rail (V). */
  logicRipple: 0.05,
} as const;

/** Limits at a chip's pins. Common practice, no source. */
export const PIN_DEFAULTS = {
  /** Ohms, with the resistance of the leads. */
  continuityBelow: 2,
  /** Volts between a ground pin and ground, with current flowing. */
  groundLift: 0.1,
} as const;

export type RailInput = {
  /** Volts; RMS where `ac`. */
  nominal: number;
  tolerancePercent?: number | null;
  regulated: boolean;
  ac: boolean;
};

/** What a rail should read. An unregulated rail has a lower bound only: lightly loaded it stands well above its name. */
export function expectFromRail({ nominal, tolerancePercent, regulated, ac }: RailInput): Expected {
  const isLogic = Math.abs(nominal) <= RAIL_DEFAULTS.logicUpTo && !ac;
  const usual = isLogic ? RAIL_DEFAULTS.logicTolerancePercent : RAIL_DEFAULTS.otherTolerancePercent;
  const percent = tolerancePercent ?? usual;
  const from = tolerancePercent == null ? `±${percent} % is usual` : `the record says ±${percent} %`;
  if (nominal === 0) return { expectation: nearZero(), why: `0 V: ±${PIN_DEFAULTS.groundLift} V is usual.` };
  const volts = ac ? quantityOf(nominal, "V", "rms") : quantityOf(nominal, "V");
  const name = `${nominal > 0 && !ac ? "+" : ""}${nominal} V${ac ? " a.c." : ""}`;
  if (regulated || ac) {
    const tolerance = both(quantityOf(percent, "%"));
    return { expectation: { form: "near", nominal: volts, tolerance }, why: `${name} rail; ${from}.` };
  }
  const limit = quantityOf(nominal * (1 - percent / 100), "V");
  return {
    expectation: { form: nominal > 0 ? "at-least" : "at-most", limit, strict: false },
    why: `${name} unregulated: only too little is a fault.`,
  };
}

export type PinInput = {
  role: PinRole;
  type: PinType;
  /** Volts that the pin is supplied with, on supply pins, where known. */
  supply: number | null;
  activeLow: boolean;
  name: string;
  technology: Technology;
};

/** What a pin should show on a check of this kind to ground; null where the pin's role alone does not say. */
export function expectFromPin(pin: PinInput, kind: CheckKind): Expected | null {
  const role = electricalRole(pin);
  switch (role) {
    case "supply":
      return expectOfSupply(pin, kind);
    case "ground":
      return expectOfGround(pin, kind);
    case "clock":
    case "oscillator":
      return expectOfClock(pin, kind);
    case "reset":
      return expectOfReset(pin, kind);
    case "address":
    case "data":
    case "select":
      return kind === "activity" ? state("active", `${pin.name} moves while the program runs.`) : null;
    // What these show depends on the circuit around them.
    case "enable":
    case "control":
    case "interrupt":
    case "input":
    case "output":
    case "analog":
    case "unused":
    case "unknown":
      return null;
  }
}

/** A power pin without a role is known by its voltage; a pin that is not connected has none. */
function electricalRole({ role, type, supply }: PinInput): PinRole {
  if (type === "no-connect" || type === "do-not-connect") return "unused";
  if (role === "unknown" && type === "power-in" && supply !== null) return supply === 0 ? "ground" : "supply";
  return role;
}

function expectOfSupply({ supply, name }: PinInput, kind: CheckKind): Expected | null {
  if (kind === "continuity") return state("no-short", `${name} is a supply pin: no short to ground.`);
  if (supply === null) return null;
  if (kind === "dc-voltage") {
    const rail = expectFromRail({ nominal: supply, regulated: true, ac: false });
    return { ...rail, why: `${name} is a supply pin, ${rail.why}` };
  }
  if (kind === "ripple" && Math.abs(supply) <= RAIL_DEFAULTS.logicUpTo)
    return atMost(quantityOf(RAIL_DEFAULTS.logicRipple, "V", "peak-to-peak"), `${name} is a logic supply pin.`);
  return null;
}

function expectOfGround({ name }: PinInput, kind: CheckKind): Expected | null {
  const why = `${name} is a ground pin.`;
  if (kind === "continuity" || kind === "resistance") return below(PIN_DEFAULTS.continuityBelow, "ohm", why);
  if (kind !== "dc-voltage") return null;
  return { expectation: nearZero(), why };
}

function expectOfClock({ role, name }: PinInput, kind: CheckKind): Expected | null {
  if (kind !== "activity" && kind !== "frequency") return null;
  const care = role === "oscillator" ? " Measure at the buffer if there is one: a probe can stop a crystal." : "";
  return state("active", `${name} is a clock pin.${care}`);
}

function expectOfReset({ activeLow, name, technology }: PinInput, kind: CheckKind): Expected | null {
  const released = activeLow ? "high" : "low";
  const why = `${name} is reset, active ${activeLow ? "low" : "high"}: released it is ${released}.`;
  if (kind === "level") return state(released, why);
  if (kind === "activity") return state("steady", `${name} is reset: released once, it stays so.`);
  const table = LEVELS[technology];
  if (kind !== "dc-voltage" || !table) return null;
  const limits = inputLimits(table);
  if (!activeLow) return atMost(quantityOf(limits.low, "V"), why);
  return { expectation: { form: "at-least", limit: quantityOf(limits.high, "V"), strict: false }, why };
}

function nearZero(): Expectation {
  return { form: "near", nominal: quantityOf(0, "V"), tolerance: both(quantityOf(PIN_DEFAULTS.groundLift, "V")) };
}

function both(tolerance: Quantity): { plus: Quantity; minus: Quantity } {
  return { plus: tolerance, minus: tolerance };
}

function state(expected: "active" | "steady" | "high" | "low" | "no-short", why: string): Expected {
  return { expectation: { form: "state", state: expected }, why };
}

function atMost(limit: Quantity, why: string): Expected {
  return { expectation: { form: "at-most", limit, strict: false }, why };
}

function below(value: number, unit: Unit, why: string): Expected {
  return { expectation: { form: "at-most", limit: quantityOf(value, unit), strict: true }, why };
}
