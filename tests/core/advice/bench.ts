import type { CheckContext, CheckFacts, KnownCase } from "#lib/core/advice/index.ts";
import type { PinRole } from "#lib/core/shared/index.ts";

// An invented bench: two boards that share a memory chip, and short ways to write down what was read on them.

const PINS: Record<string, readonly [string, PinRole]> = {
  "28": ["VCC", "supply"],
  "14": ["GND", "ground"],
  "20": ["/CE", "select"],
  "11": ["D0", "data"],
  "12": ["D1", "data"],
  "1": ["VPP", "unknown"],
};

const chip = (slug: string, name: string) => ({
  slug,
  name,
  pinRole: (pin: string) => PINS[pin]?.[1] ?? "unknown",
  pinName: (pin: string) => PINS[pin]?.[0] ?? pin,
});

const CHIPS: Record<string, Record<string, ReturnType<typeof chip>>> = {
  mira: { U7: chip("27c256", "27C256"), U4: chip("74ls244", "74LS244"), U1: chip("7805", "7805") },
  dora: { U12: chip("27c256", "27C256"), U3: chip("74ls245", "74LS245") },
};

export const onBoard = (board: string | null): CheckContext => ({
  board,
  chipAt: (designator) => CHIPS[board ?? "mira"]?.[designator] ?? null,
});

const NO_READING = { direction: null, size: null, state: null } as const;

export const low = (at: string, measured?: string): CheckFacts => ({
  kind: "dc-voltage",
  at,
  verdict: "out-of-spec",
  direction: "low",
  size: "clear",
  state: null,
  expected: "5 V ±5 %",
  ...(measured === undefined ? {} : { measured }),
});
export const slightlyLow = (at: string): CheckFacts => ({ ...low(at), size: "marginal" });
export const high = (at: string): CheckFacts => ({ ...low(at), direction: "high" });
export const fine = (at: string): CheckFacts => ({ ...low(at), verdict: "in-spec", ...NO_READING });
export const dead = (at: string): CheckFacts => ({
  kind: "activity",
  at,
  verdict: "out-of-spec",
  ...NO_READING,
  state: "no-activity",
  expected: "active",
});
export const alive = (at: string): CheckFacts => ({ ...dead(at), verdict: "in-spec", state: null });

export const aCase = (board: string | null, checks: CheckFacts[], symptoms: string[] = []): KnownCase => ({
  facts: { symptoms, checks },
  context: onBoard(board),
});
