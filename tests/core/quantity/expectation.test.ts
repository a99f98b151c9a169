import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  EXPECTED_STATES,
  EXPECTED_WORDS,
  printExpectation,
  quantityOf,
  readExpectation,
  type Expectation,
  type Form,
  type Quantity,
  type Unit,
} from "#lib/core/quantity/index.ts";
import { CHECK_KINDS, type CheckKind } from "#lib/core/shared/index.ts";

const q = (value: number, unit: Unit, digits: number, resolution: number, form?: Form): Quantity => ({
  value,
  unit,
  digits,
  resolution,
  ...(form ? { form } : {}),
});
const both = (tolerance: Quantity) => ({ plus: tolerance, minus: tolerance });

const FIVE = q(5, "V", 1, 1);
const FIVE_PERCENT = q(5, "%", 1, 1);
const FIVE_NEAR: Expectation = { form: "near", nominal: FIVE, tolerance: both(FIVE_PERCENT) };
const FIVE_BETWEEN: Expectation = { form: "between", low: q(4.75, "V", 3, 0.01), high: q(5.25, "V", 3, 0.01) };

describe("expectations as they are written", () => {
  test.each<[kind: CheckKind, text: string, expectation: Expectation]>([
    ["dc-voltage", "5 V ±5 %", FIVE_NEAR],
    ["dc-voltage", "5V±5%", FIVE_NEAR],
    ["dc-voltage", "5 V +-5 %", FIVE_NEAR],
    ["dc-voltage", "5 V +/- 5 %", FIVE_NEAR],
    ["dc-voltage", "5 V + / - 5 %", FIVE_NEAR],
    ["dc-voltage", "5 V +/\u22125 %", FIVE_NEAR],
    ["dc-voltage", "5 ±5 percent", FIVE_NEAR],
    ["dc-voltage", "5 V", { form: "near", nominal: FIVE, tolerance: null }],
    ["dc-voltage", "about 5 V", { form: "near", nominal: FIVE, tolerance: null }],
    ["dc-voltage", "5 V ±0.25", { form: "near", nominal: FIVE, tolerance: both(q(0.25, "V", 2, 0.01)) }],
    ["dc-voltage", "-12 V ±10 %", { form: "near", nominal: q(-12, "V", 2, 1), tolerance: both(q(10, "%", 2, 1)) }],
    [
      "dc-voltage",
      "5 V +0.5/-0.25 V",
      { form: "near", nominal: FIVE, tolerance: { plus: q(0.5, "V", 1, 0.1), minus: q(0.25, "V", 2, 0.01) } },
    ],
    ["dc-voltage", "4.75..5.25 V", FIVE_BETWEEN],
    ["dc-voltage", "4.75...5.25 V", FIVE_BETWEEN],
    ["dc-voltage", "4.75…5.25 V", FIVE_BETWEEN],
    ["dc-voltage", "4.75 V to 5.25 V", FIVE_BETWEEN],
    ["dc-voltage", "4.75 to 5.25", FIVE_BETWEEN],
    ["dc-voltage", "4,75–5,25 V", FIVE_BETWEEN],
    ["dc-voltage", "4.75-5.25 V", FIVE_BETWEEN],
    ["dc-voltage", "-13..-11 V", { form: "between", low: q(-13, "V", 2, 1), high: q(-11, "V", 2, 1) }],
    ["dc-voltage", "-5 to +5 V", { form: "between", low: q(-5, "V", 1, 1), high: FIVE }],
    ["dc-voltage", "900 mV..1.1 V", { form: "between", low: q(0.9, "V", 3, 0.001), high: q(1.1, "V", 2, 0.1) }],
    ["dc-voltage", "≥ 2.4 V", { form: "at-least", limit: q(2.4, "V", 2, 0.1), strict: false }],
    ["dc-voltage", ">=2.4", { form: "at-least", limit: q(2.4, "V", 2, 0.1), strict: false }],
    ["dc-voltage", "> 2.4 V", { form: "at-least", limit: q(2.4, "V", 2, 0.1), strict: true }],
    ["dc-voltage", "at least 2.4 V", { form: "at-least", limit: q(2.4, "V", 2, 0.1), strict: false }],
    ["dc-voltage", "≤ -5.40 V", { form: "at-most", limit: q(-5.4, "V", 3, 0.01), strict: false }],
    ["ripple", "≤ 50 mVpp", { form: "at-most", limit: q(0.05, "V", 2, 0.001, "peak-to-peak"), strict: false }],
    ["ripple", "max 50 mVpp", { form: "at-most", limit: q(0.05, "V", 2, 0.001, "peak-to-peak"), strict: false }],
    ["ac-voltage", "6.3 Vrms", { form: "near", nominal: q(6.3, "V", 2, 0.1, "rms"), tolerance: null }],
    [
      "frequency",
      "3.58 MHz ±100 ppm",
      { form: "near", nominal: q(3.58e6, "Hz", 3, 1e4), tolerance: both(q(100, "ppm", 3, 1)) },
    ],
    [
      "frequency",
      "4 MHz ±1 kHz",
      { form: "near", nominal: q(4e6, "Hz", 1, 1e6), tolerance: both(q(1000, "Hz", 1, 1000)) },
    ],
    ["continuity", "< 2 ohm", { form: "at-most", limit: q(2, "ohm", 1, 1), strict: true }],
    ["continuity", "< 2 ohm to GND", { form: "at-most", limit: q(2, "ohm", 1, 1), strict: true, to: "GND" }],
    ["continuity", "< 2 ohm to +5V", { form: "at-most", limit: q(2, "ohm", 1, 1), strict: true, to: "+5V" }],
    ["continuity", "< 2 ohm to U7.14", { form: "at-most", limit: q(2, "ohm", 1, 1), strict: true, to: "U7.14" }],
    ["continuity", "< 2 ohm to 4F.12", { form: "at-most", limit: q(2, "ohm", 1, 1), strict: true, to: "4F.12" }],
    ["continuity", "no short", { form: "state", state: "no-short" }],
    ["continuity", "no short to +5V", { form: "state", state: "no-short", to: "+5V" }],
    ["continuity", "open", { form: "state", state: "open" }],
    ["continuity", "short", { form: "state", state: "short" }],
    ["resistance", "4k7 ±5 %", { form: "near", nominal: q(4700, "ohm", 2, 100), tolerance: both(FIVE_PERCENT) }],
    [
      "diode",
      "0.61 V ±0.05 V",
      { form: "near", nominal: q(0.61, "V", 2, 0.01), tolerance: both(q(0.05, "V", 1, 0.01)) },
    ],
    ["diode", "612 ±50", { form: "near", nominal: q(0.612, "V", 3, 0.001), tolerance: both(q(0.05, "V", 2, 0.001)) }],
    [
      "capacitance",
      "100 µF +80/-20 %",
      {
        form: "near",
        nominal: q(1e-4, "F", 3, 1e-6),
        tolerance: { plus: q(80, "%", 2, 1), minus: q(20, "%", 2, 1) },
      },
    ],
    ["level", "high", { form: "state", state: "high" }],
    ["level", "L", { form: "state", state: "low" }],
    ["activity", "active", { form: "state", state: "active" }],
    ["activity", "toggling", { form: "state", state: "active" }],
    ["activity", "steady", { form: "state", state: "steady" }],
    ["activity", "no activity", { form: "state", state: "no-activity" }],
    ["activity", "clock", { form: "state", state: "clock" }],
    [
      "activity",
      "clock 4 MHz",
      { form: "state", state: "clock", frequency: { nominal: q(4e6, "Hz", 1, 1e6), tolerance: null } },
    ],
    [
      "activity",
      "clock 4 MHz ±100 ppm",
      {
        form: "state",
        state: "clock",
        frequency: { nominal: q(4e6, "Hz", 1, 1e6), tolerance: both(q(100, "ppm", 3, 1)) },
      },
    ],
    ["trial", "cured", { form: "state", state: "cured" }],
    ["visual", "no burnt parts", { form: "words", text: "no burnt parts" }],
    ["visual", "no corrosion next to U7", { form: "words", text: "no corrosion next to U7" }],
    ["visual", "x".repeat(500), { form: "words", text: "x".repeat(500) }],
    ["visual", "ok", { form: "state", state: "ok" }],
    ["visual", "high", { form: "words", text: "high" }],
    ["self-test", "1 beep", { form: "words", text: "1 beep" }],
    ["waveform", "square, full swing", { form: "words", text: "square, full swing" }],
    ["contents", "CBF43926", { form: "words", text: "CBF43926" }],
    ["node-signature", "0001", { form: "words", text: "0001" }],
  ])("%s: %j", (kind, text, expectation) => {
    expect(readExpectation(text, kind)).toEqual({ ok: true, value: expectation });
  });
});

describe("what is no expectation says why", () => {
  test.each<[kind: CheckKind, text: string, said: RegExp]>([
    ["dc-voltage", "", /Nothing was typed/],
    ["dc-voltage", "as usual", /neither a number nor a state/],
    ["dc-voltage", "5 V ".repeat(50), /too long to be an expectation/],
    ["dc-voltage", "noise", /neither a number nor a state/],
    ["dc-voltage", "5 MV ±5 %", /Milli or mega/],
    ["dc-voltage", "5 V ±5 ±6", /two tolerances/],
    ["dc-voltage", "5 V ±-5 %", /no tolerance|does not begin/],
    ["dc-voltage", "5 V ±1 A", /is a current/],
    ["dc-voltage", "5.25..4.75 V", /not below the second/],
    ["dc-voltage", "1..2 A", /is a current/],
    ["ripple", "1 mVrms..5 mVpp", /two ways of measuring/],
    ["frequency", "3.58 MHz ±100", /tolerance of what/],
    ["capacitance", "100", /pF, nF or µF/],
    ["level", "1", /Logic 1/],
    ["activity", "clock 4", /Hz, kHz or MHz/],
  ])("%s: %j", (kind, text, said) => {
    const read = readExpectation(text, kind);
    expect(read.ok ? "" : (read.problem.question ?? read.problem.reason)).toMatch(said);
  });
});

describe("laws", () => {
  const amount = fc.integer({ min: 1, max: 99_999 }).map((mantissa) => mantissa / 100);
  const point = fc.constantFrom(undefined, "GND", "U7.14", "TP5");
  const tail = (to: string | undefined) => (to === undefined ? {} : { to });
  const volts = (value: number) => quantityOf(value, "V");
  const numeric: fc.Arbitrary<Expectation> = fc.oneof(
    fc
      .tuple(amount, amount, amount, fc.constantFrom("%" as const, "ppm" as const, "V" as const), point)
      .map(([nominal, plus, minus, unit, to]) => {
        const tolerance = { plus: quantityOf(plus, unit), minus: quantityOf(minus, unit) };
        return { form: "near" as const, nominal: volts(nominal), tolerance, ...tail(to) };
      }),
    fc
      .tuple(amount, amount, fc.boolean(), point)
      .map(([low, width, isBelowZero, to]) =>
        isBelowZero
          ? { form: "between" as const, low: volts(-low - width), high: volts(-low), ...tail(to) }
          : { form: "between" as const, low: volts(low), high: volts(low + width), ...tail(to) },
      ),
    fc
      .tuple(fc.constantFrom("at-least" as const, "at-most" as const), amount, fc.boolean(), point)
      .map(([form, limit, strict, to]) => ({ form, limit: volts(limit), strict, ...tail(to) })),
  );

  test("reading what was printed gives the same expectation", () => {
    fc.assert(
      fc.property(numeric, (expectation) => {
        expect(readExpectation(printExpectation(expectation), "dc-voltage")).toEqual({ ok: true, value: expectation });
      }),
      { numRuns: 1000 },
    );
  });

  test("every expected state prints as it is read", () => {
    for (const name of EXPECTED_STATES) {
      const expectation: Expectation = { form: "state", state: name };
      expect(printExpectation(expectation)).toBe(EXPECTED_WORDS[name]);
      expect(readExpectation(printExpectation(expectation), "activity")).toEqual({ ok: true, value: expectation });
    }
  });

  test("no text makes the reader throw, and what it read prints as something that reads the same", () => {
    const pieces = fc.constantFrom(
      "5",
      "4.7",
      " V",
      "±",
      "%",
      "..",
      " to ",
      "-",
      "+",
      "/",
      "<",
      "≥",
      "m",
      "k",
      "high",
      "GND",
      "clock ",
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(pieces, { maxLength: 7 }).map((each) => each.join("")),
    );
    fc.assert(
      fc.property(text, fc.constantFrom(...CHECK_KINDS), (typed, kind) => {
        const read = readExpectation(typed, kind);
        expect(read.ok ? readExpectation(printExpectation(read.value), kind) : read).toEqual(read);
      }),
      { numRuns: 4000 },
    );
  });
});
