import { describe, expect, test } from "vitest";
import { printExpectation } from "#lib/core/quantity/index.ts";
import { expectFromPin, expectFromRail, type PinInput, type RailInput } from "#lib/core/reading/index.ts";
import type { CheckKind, PinRole } from "#lib/core/shared/index.ts";

// Rails of the period and their usual tolerances: TTL 5 %; the others common practice, no source.
describe("what a rail should read", () => {
  test.each<[RailInput, expectation: string, why: string]>([
    [{ nominal: 5, regulated: true, ac: false }, "5 V ±5 %", "+5 V rail; ±5 % is usual."],
    [{ nominal: -5, regulated: true, ac: false }, "-5 V ±5 %", "-5 V rail; ±5 % is usual."],
    [{ nominal: -5.2, regulated: true, ac: false }, "-5.2 V ±5 %", "-5.2 V rail; ±5 % is usual."],
    [{ nominal: 3.3, regulated: true, ac: false }, "3.3 V ±5 %", "+3.3 V rail; ±5 % is usual."],
    [{ nominal: 12, regulated: true, ac: false }, "12 V ±10 %", "+12 V rail; ±10 % is usual."],
    [{ nominal: -15, regulated: true, ac: false }, "-15 V ±10 %", "-15 V rail; ±10 % is usual."],
    [
      { nominal: 12, tolerancePercent: 4, regulated: true, ac: false },
      "12 V ±4 %",
      "+12 V rail; the record says ±4 %.",
    ],
    [{ nominal: 5, tolerancePercent: null, regulated: true, ac: false }, "5 V ±5 %", "+5 V rail; ±5 % is usual."],
    [{ nominal: 24, regulated: false, ac: false }, "≥ 21.6 V", "+24 V unregulated: only too little is a fault."],
    [{ nominal: -24, regulated: false, ac: false }, "≤ -21.6 V", "-24 V unregulated: only too little is a fault."],
    [
      { nominal: 50, tolerancePercent: 20, regulated: false, ac: false },
      "≥ 40 V",
      "+50 V unregulated: only too little is a fault.",
    ],
    [{ nominal: 6.3, regulated: false, ac: true }, "6.3 Vrms ±10 %", "6.3 V a.c. rail; ±10 % is usual."],
    [{ nominal: 0, regulated: true, ac: false }, "0 V ±0.1 V", "0 V: ±0.1 V is usual."],
  ])("%j", (rail, expectation, why) => {
    const expected = expectFromRail(rail);
    expect([printExpectation(expected.expectation), expected.why]).toEqual([expectation, why]);
  });
});

describe("what a pin should show", () => {
  const pin = (role: PinRole, more: Partial<PinInput> = {}): PinInput => ({
    role,
    type: "input",
    supply: null,
    activeLow: false,
    name: role.toUpperCase(),
    technology: "LS",
    ...more,
  });
  const VCC = pin("supply", { type: "power-in", supply: 5, name: "VCC" });
  const GND = pin("ground", { type: "power-in", supply: 0, name: "GND" });
  const RESET_LOW = pin("reset", { activeLow: true, name: "RES" });

  test.each<[PinInput, CheckKind, expectation: string, why: string]>([
    [VCC, "dc-voltage", "5 V ±5 %", "VCC is a supply pin, +5 V rail; ±5 % is usual."],
    [VCC, "continuity", "no short", "VCC is a supply pin: no short to ground."],
    [VCC, "ripple", "≤ 50 mVpp", "VCC is a logic supply pin."],
    [
      { ...VCC, supply: -12, name: "VBB" },
      "dc-voltage",
      "-12 V ±10 %",
      "VBB is a supply pin, -12 V rail; ±10 % is usual.",
    ],
    [{ ...VCC, role: "unknown" }, "dc-voltage", "5 V ±5 %", "VCC is a supply pin, +5 V rail; ±5 % is usual."],
    [GND, "continuity", "< 2 Ω", "GND is a ground pin."],
    [GND, "resistance", "< 2 Ω", "GND is a ground pin."],
    [GND, "dc-voltage", "0 V ±0.1 V", "GND is a ground pin."],
    [{ ...GND, role: "unknown" }, "continuity", "< 2 Ω", "GND is a ground pin."],
    [pin("clock"), "activity", "active", "CLOCK is a clock pin."],
    [pin("clock"), "frequency", "active", "CLOCK is a clock pin."],
    [
      pin("oscillator", { name: "X1" }),
      "activity",
      "active",
      "X1 is a clock pin. Measure at the buffer if there is one: a probe can stop a crystal.",
    ],
    [RESET_LOW, "level", "high", "RES is reset, active low: released it is high."],
    [RESET_LOW, "dc-voltage", "≥ 2 V", "RES is reset, active low: released it is high."],
    [RESET_LOW, "activity", "steady", "RES is reset: released once, it stays so."],
    [pin("reset"), "level", "low", "RESET is reset, active high: released it is low."],
    [pin("reset"), "dc-voltage", "≤ 0.8 V", "RESET is reset, active high: released it is low."],
    [pin("address", { name: "A0" }), "activity", "active", "A0 moves while the program runs."],
    [pin("data", { name: "D0", type: "three-state" }), "activity", "active", "D0 moves while the program runs."],
    [pin("select", { name: "CS", activeLow: true }), "activity", "active", "CS moves while the program runs."],
  ])("%j, %s", (input, kind, expectation, why) => {
    const expected = expectFromPin(input, kind);
    expect(expected && [printExpectation(expected.expectation), expected.why]).toEqual([expectation, why]);
  });

  test.each<[title: string, PinInput, CheckKind]>([
    ["a supply of unknown voltage", pin("supply"), "dc-voltage"],
    ["the resistance of a supply pin, until a good board is known", VCC, "resistance"],
    ["the ripple of a rail that is no logic rail", { ...VCC, supply: 12 }, "ripple"],
    ["an enable, which may be tied", pin("enable"), "activity"],
    ["an output, which may stand still", pin("output"), "activity"],
    ["an address line on a meter", pin("address"), "dc-voltage"],
    ["the voltage of reset on ECL", { ...RESET_LOW, technology: "ECL" }, "dc-voltage"],
    ["a pin that is not connected", pin("clock", { type: "no-connect" }), "activity"],
    ["a pin that must be left alone", pin("data", { type: "do-not-connect" }), "activity"],
    ["a pin of unknown role", pin("unknown"), "activity"],
  ])("nothing is said of %s", (_title, input, kind) => {
    expect(expectFromPin(input, kind)).toBeNull();
  });
});
