import { describe, expect, test } from "vitest";
import {
  inputLimits,
  LEVELS,
  noiseMargins,
  readLevel,
  readRs232Level,
  RS232_LEVELS,
  type Level,
} from "#lib/core/reading/index.ts";
import { TECHNOLOGIES, type Technology } from "#lib/core/shared/index.ts";

describe("VIL max, VIH min, VOL max, VOH min", () => {
  test.each<[Technology, supply: number, number, number, number, number, source: string]>([
    ["TTL", 5, 0.8, 2.0, 0.4, 2.4, "TI"],
    ["HCT", 4.5, 0.8, 2.0, 0.33, 3.84, "TI CD74HCT147, at 85 °C"],
    ["HC", 4.5, 1.35, 3.15, 0.1, 4.4, "from memory"],
    ["LS", 5, 0.8, 2.0, 0.5, 2.7, "from memory, at 8 mA"],
    ["NMOS", 5, 0.8, 2.0, 0.4, 2.4, "common practice: TTL levels"],
    ["CMOS-4000", 5, 1.5, 3.5, 0.05, 4.95, "from memory"],
  ])("%s at %d V: %d, %d, %d, %d (%s)", (technology, supply, inputLow, inputHigh, outputLow, outputHigh) => {
    expect(LEVELS[technology]).toMatchObject({ supply, inputLow, inputHigh, outputLow, outputHigh });
  });

  test("every figure names its load and its source", () => {
    const unnamed = TECHNOLOGIES.filter((each) => LEVELS[each]?.load === "" || LEVELS[each]?.source === "");
    expect(unnamed).toEqual([]);
  });

  test("plain CMOS follows its supply, TTL inputs do not", () => {
    const limits = (["HC", "CMOS-4000", "HCT", "LS"] as const).map((technology) => {
      const table = LEVELS[technology];
      return table ? inputLimits(table, 6) : null;
    });
    expect(limits.map((each) => each && [each.low.toFixed(2), each.high.toFixed(2)])).toEqual([
      ["1.80", "4.20"],
      ["1.80", "4.20"],
      ["0.80", "2.00"],
      ["0.80", "2.00"],
    ]);
  });

  test("RS-232: driver ±5 to ±15 V, receiver ±3 V (TI SLLA607)", () => {
    expect(RS232_LEVELS).toEqual({ driverSmallest: 5, driverLargest: 15, receiver: 3 });
    expect([-12, -3, -2.9, 0, 2.9, 3, 12].map(readRs232Level)).toEqual([
      "low",
      "low",
      "between",
      "between",
      "between",
      "high",
      "high",
    ]);
  });
});

describe("what an input takes a voltage for", () => {
  test.each<[volts: number, Technology, supply: number | undefined, level: Level | null]>([
    [0.2, "TTL", undefined, "low"],
    [0.8, "TTL", undefined, "low"],
    [0.81, "TTL", undefined, "between"],
    [1.5, "TTL", undefined, "between"],
    [1.99, "TTL", undefined, "between"],
    [2.0, "TTL", undefined, "high"],
    [3.4, "LS", undefined, "high"],
    [2.7, "HC", undefined, "between"],
    [3.15, "HC", undefined, "high"],
    [3.3, "HC", 5, "between"],
    [3.3, "HCT", 5, "high"],
    [6, "CMOS-4000", 12, "between"],
    [9, "CMOS-4000", 12, "high"],
    [3, "CMOS", undefined, "between"],
    [3.6, "CMOS", undefined, "high"],
    [0.8, "ECL", undefined, null],
    [3, "unknown", undefined, null],
  ])("%d V on %s (supply %s) is %s", (volts, technology, supply, level) => {
    expect(readLevel(volts, technology, supply)).toBe(level);
  });
});

describe("noise margins: low = VIL − VOL, high = VOH − VIH", () => {
  test.each<[driver: Technology, receiver: Technology, low: number, high: number]>([
    ["TTL", "TTL", 0.4, 0.4],
    // A TTL output does not reach an HC input's high: the row of the reference notes.
    ["TTL", "HC", 0.95, -0.75],
    ["TTL", "HCT", 0.4, 0.4],
    ["HCT", "LS", 0.47, 1.84],
    ["LS", "LS", 0.3, 0.7],
  ])("%s into %s: %d and %d", (driver, receiver, low, high) => {
    expect(noiseMargins(driver, receiver)).toEqual({ low, high });
  });

  test("a family without levels has no margins", () => {
    expect(noiseMargins("ECL", "TTL")).toBeNull();
  });
});
