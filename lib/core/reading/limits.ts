import type { CheckKind } from "../shared/index.ts";
import { printValue, type Expectation, type Form, type Near, type Quantity, type Unit } from "../quantity/index.ts";
import { PIN_DEFAULTS, RAIL_DEFAULTS } from "./expect.ts";
import type { Limits } from "./judgement.ts";

type DefaultTolerance = { percent: number } | { absolute: number } | "at-most" | "rail";

/** What `5 V` means when nobody wrote a tolerance. Common practice, no source; the sentence always names it. */
export const DEFAULT_TOLERANCES: Partial<Record<CheckKind, DefaultTolerance>> = {
  "dc-voltage": "rail",
  level: "rail",
  diode: { absolute: 0.05 },
  frequency: { percent: 1 },
  current: { percent: 20 },
  capacitance: { percent: 20 },
  temperature: { absolute: 10 },
  /** Of these only too much is a fault. */
  continuity: "at-most",
  ripple: "at-most",
  esr: "at-most",
};
const OTHER_TOLERANCE = { percent: 10 } as const;

/** Around a nominal value of zero a share means nothing (V, ohm, A). Common practice, no source. */
const ZERO_TOLERANCES: Partial<Record<Unit, number>> = {
  V: PIN_DEFAULTS.groundLift,
  ohm: PIN_DEFAULTS.continuityBelow,
  A: 0.01,
};

/** Limits in the base unit, how they were to be measured, and what was assumed to get them. */
export type KnownLimits = { limits: Limits; form?: Form; assumed?: string };

/** The limits that an expectation with numbers sets; null where it sets none. */
export function limitsOf(expectation: Expectation, kind: CheckKind): KnownLimits | null {
  switch (expectation.form) {
    case "near":
      return limitsOfNear(expectation, kind);
    case "between": {
      const { low, high } = expectation;
      return withForm({ limits: { low: low.value, high: high.value, unit: high.unit } }, high);
    }
    case "at-least":
      return withForm({ limits: { low: expectation.limit.value, unit: expectation.limit.unit } }, expectation.limit);
    case "at-most":
      return withForm({ limits: { high: expectation.limit.value, unit: expectation.limit.unit } }, expectation.limit);
    case "state":
    case "words":
      return null;
  }
}

export function limitsOfNear({ nominal, tolerance }: Near, kind: CheckKind): KnownLimits {
  if (!tolerance) return withForm(assumedLimits(nominal, kind), nominal);
  const limits = around(nominal, spread(nominal, tolerance.minus), spread(nominal, tolerance.plus));
  return withForm({ limits }, nominal);
}

function assumedLimits(nominal: Quantity, kind: CheckKind): KnownLimits {
  const usual = DEFAULT_TOLERANCES[kind] ?? OTHER_TOLERANCE;
  if (usual === "at-most")
    return { limits: { high: nominal.value, unit: nominal.unit }, assumed: "taken as the most allowed" };
  if (nominal.value === 0) return absoluteLimits(nominal, (nominal.unit && ZERO_TOLERANCES[nominal.unit]) || 0);
  if (usual !== "rail" && "absolute" in usual) return absoluteLimits(nominal, usual.absolute);
  const percent = usual === "rail" ? railTolerance(nominal.value) : usual.percent;
  const width = Math.abs(nominal.value) * (percent / 100);
  return { limits: around(nominal, width, width), assumed: `no tolerance given, ±${percent} % taken` };
}

function absoluteLimits(nominal: Quantity, width: number): KnownLimits {
  const assumed = `no tolerance given, ±${printValue(width, nominal.unit)} taken`;
  return { limits: around(nominal, width, width), assumed };
}

function railTolerance(volts: number): number {
  const isLogic = Math.abs(volts) <= RAIL_DEFAULTS.logicUpTo;
  return isLogic ? RAIL_DEFAULTS.logicTolerancePercent : RAIL_DEFAULTS.otherTolerancePercent;
}

function spread(nominal: Quantity, tolerance: Quantity): number {
  if (tolerance.unit === "%") return Math.abs(nominal.value) * (tolerance.value / 100);
  if (tolerance.unit === "ppm") return Math.abs(nominal.value) * (tolerance.value / 1e6);
  return tolerance.value;
}

/** Twelve digits, so that 12 V - 10 % is 10.8 V and a reading of 10.8 V is exactly at the limit. */
function around(nominal: Quantity, minus: number, plus: number): Limits {
  const tidy = (value: number) => Number(value.toPrecision(12));
  return { low: tidy(nominal.value - minus), high: tidy(nominal.value + plus), unit: nominal.unit };
}

function withForm(known: KnownLimits, { form }: Quantity): KnownLimits {
  return form ? { ...known, form } : known;
}
