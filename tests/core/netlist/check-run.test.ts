import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readCheckRun } from "#lib/core/netlist/index.ts";

/** The entries without the place as parts, or the problem. */
function entries(line: string): object[] | string {
  const run = readCheckRun(line);
  if (!run.ok) return run.problem;
  return run.value.map(({ at, to, kind, trial, lead, measured }) =>
    Object.fromEntries(
      Object.entries({ at, to, kind, trial, lead, measured }).filter(([, said]) => said !== undefined),
    ),
  );
}

describe("one place", () => {
  test.each([
    ["U7.14 4.87", { at: "U7.14", measured: "4.87" }],
    ["U7.14 4.87V", { at: "U7.14", measured: "4.87V" }],
    ["U7.14 4.87 V", { at: "U7.14", measured: "4.87 V" }],
    ["U7.14 4,87", { at: "U7.14", measured: "4,87" }],
    ["U7.14 = 4.87", { at: "U7.14", measured: "4.87" }],
    ["U7.14=4.87", { at: "U7.14", measured: "4.87" }],
    ["U7.14: 4.87", { at: "U7.14", measured: "4.87" }],
    ["u7 pin 14 4.87", { at: "U7.14", measured: "4.87" }],
    ["U7.14 dc 4.87V", { at: "U7.14", kind: "dc-voltage", measured: "4.87V" }],
    ["U7.14 dc voltage 4.87V", { at: "U7.14", kind: "dc-voltage", measured: "4.87V" }],
    ["U7.14 DC 4.87", { at: "U7.14", kind: "dc-voltage", measured: "4.87" }],
    ["T1.3 ac 6.1", { at: "T1.3", kind: "ac-voltage", measured: "6.1" }],
    ["R5 ohm 4k7", { at: "R5", kind: "resistance", measured: "4k7" }],
    ["R5 resistance 12 kohm", { at: "R5", kind: "resistance", measured: "12 kohm" }],
    ["F1 cont 0.2", { at: "F1", kind: "continuity", measured: "0.2" }],
    ["U7.3 diode 0.61", { at: "U7.3", kind: "diode", measured: "0.61" }],
    ["Y1.1 freq 3.58 MHz", { at: "Y1.1", kind: "frequency", measured: "3.58 MHz" }],
    ["Y1.1 3.58 MHz", { at: "Y1.1", measured: "3.58 MHz" }],
    ["U7.19 level low", { at: "U7.19", kind: "level", measured: "low" }],
    ["U7.19 act none", { at: "U7.19", kind: "activity", measured: "none" }],
    ["U7.19 stuck low", { at: "U7.19", measured: "stuck low" }],
    ["U7.19 act stuck low", { at: "U7.19", kind: "activity", measured: "stuck low" }],
    ["U7.19 no activity", { at: "U7.19", measured: "no activity" }],
    ["U7.19 OL", { at: "U7.19", measured: "OL" }],
    ["U7.19 noise", { at: "U7.19", measured: "noise" }],
    ["C14 esr 2.1", { at: "C14", kind: "esr", measured: "2.1" }],
    ["C14 cap 92n", { at: "C14", kind: "capacitance", measured: "92n" }],
    ["U9 temp 71 C", { at: "U9", kind: "temperature", measured: "71 C" }],
    ["U7.8 wave ringing at the edges", { at: "U7.8", kind: "waveform", measured: "ringing at the edges" }],
    ["U7.8 ripple 80 mV", { at: "U7.8", kind: "ripple", measured: "80 mV" }],
    ["U7.8 sig 826P", { at: "U7.8", kind: "node-signature", measured: "826P" }],
    ["U7.8 node signature 826P", { at: "U7.8", kind: "node-signature", measured: "826P" }],
    ["U2 contents CBF43926", { at: "U2", kind: "contents", measured: "CBF43926" }],
    ["C14 visual leaking at the base", { at: "C14", kind: "visual", measured: "leaking at the base" }],
    ["C14 visual black marks to the left", { at: "C14", kind: "visual", measured: "black marks to the left" }],
    ["U7 swap no change", { at: "U7", kind: "trial", trial: "swap", measured: "no change" }],
    ["U7 piggyback cured", { at: "U7", kind: "trial", trial: "piggy-back", measured: "cured" }],
    ["U7 lift pin changed", { at: "U7", kind: "trial", trial: "lift-pin", measured: "changed" }],
    ["+5V 4.91", { at: "+5V", measured: "4.91" }],
    ["+5 V 4.91", { at: "+5V", measured: "4.91" }],
    ["5V 4.91", { at: "+5V", measured: "4.91" }],
    ["-12V -11.8", { at: "-12V", measured: "-11.8" }],
    ["/RESET high", { at: "/RESET", measured: "high" }],
    ["4F.12 3.4", { at: "4F.12", measured: "3.4" }],
    ["CN3.A12 0.02", { at: "CN3.A12", measured: "0.02" }],
    ["U7.3 diode red 0.61", { at: "U7.3", kind: "diode", lead: "red", measured: "0.61" }],
    ["U7.3 red lead 0.61", { at: "U7.3", kind: "diode", lead: "red", measured: "0.61" }],
    ["U7.3 diode lead black 0.61", { at: "U7.3", kind: "diode", lead: "black", measured: "0.61" }],
    ["U7.3 to GND 4.87", { at: "U7.3", to: "GND", measured: "4.87" }],
    ["U7.3 to ground diode black 0.61", { at: "U7.3", to: "GND", kind: "diode", lead: "black", measured: "0.61" }],
    ["U7.3 diode red to GND 0.61", { at: "U7.3", to: "GND", kind: "diode", lead: "red", measured: "0.61" }],
    ["U7.3 to U9 pin 4 cont 0.2", { at: "U7.3", to: "U9.4", kind: "continuity", measured: "0.2" }],
    ["U7.3 cont to +5 V OL", { at: "U7.3", to: "+5V", kind: "continuity", measured: "OL" }],
  ])("%s", (line, entry) => {
    expect(entries(line)).toEqual([entry]);
  });
});

describe("a run of places", () => {
  test("eight pins with eight diode readings are eight checks", () => {
    expect(entries("U7.11-18 diode 612 610 611 3 612 OL 608 610")).toEqual(
      ["612", "610", "611", "3", "612", "OL", "608", "610"].map((measured, at) => ({
        at: `U7.${11 + at}`,
        kind: "diode",
        measured,
      })),
    );
  });

  test.each([
    ["U7.1-3 1.2 V 1.3 V 1.4 V", ["1.2 V", "1.3 V", "1.4 V"]],
    ["U7.1-3 612, 610, 611", ["612", "610", "611"]],
    ["U7.1-3 4,1 4,2 4,3", ["4,1", "4,2", "4,3"]],
    ["U7 pins 1-3 level high low high", ["high", "low", "high"]],
    ["U7.1-3 act active noise stuck low", ["active", "noise", "stuck low"]],
    ["U7.1-3 visual fine; lifted pad; green at the edge", ["fine", "lifted pad", "green at the edge"]],
    ["U7.1-4 diode 612 - 611 3", ["612", "611", "3"]],
    ["TP1-TP2 4.9 12.1", ["4.9", "12.1"]],
    ["D0-D3 diode red 1 2 3 4", ["1", "2", "3", "4"]],
  ])("%s", (line, readings) => {
    const run = readCheckRun(line);
    expect(run.ok && run.value.map(({ measured }) => measured)).toEqual(readings);
  });
});

describe("what cannot be read says why", () => {
  test.each([
    ["", "Nothing was typed. Write for example: U7.14 4.87 V"],
    ["U7.14", "U7.14 has no reading. Write for example: U7.14 4.87 V"],
    ["U7.14 dc", "U7.14 has no reading. Write for example: U7.14 4.87 V"],
    ["U7 swap", "What happened after “swap” at U7? Write changed, no change or cured behind it."],
    ["4.87", "“4.87” is a reading, not a place. Begin with the place, for example U7.14 or +5V."],
    [
      "U7.11-14 diode 612 610",
      "U7.11-14 is 4 places, but 2 readings follow: 612, 610. Give one reading for each; write - for a place that was not measured.",
    ],
    [
      "U7.1-2 stuck low",
      "U7.1-2 is 2 places, but 1 reading follows: stuck low. Give one reading for each; write - for a place that was not measured.",
    ],
    ["U7.1-2 - -", "U7.1-2 has only skipped places. Write for example: U7.14 4.87 V"],
    [
      "U7.3 to 612 0.2",
      "After “to” stands no place. “612” is a reading, not a place. Begin with the place, for example U7.14 or +5V.",
    ],
  ])("%s", (line, problem) => {
    expect(entries(line)).toBe(problem);
  });
});

describe("laws", () => {
  const line = fc.oneof(
    fc.string({ unit: "grapheme", maxLength: 200 }),
    fc
      .array(
        fc.constantFrom(
          "U7.14",
          "U7.11-18",
          "+5",
          "V",
          "to",
          "GND",
          "diode",
          "red",
          "pin",
          "=",
          "-",
          "612",
          "4,87",
          ";",
          "dc",
          "no",
          "activity",
          "lead",
          "swap",
        ),
        { maxLength: 14 },
      )
      .map((words) => words.join(" ")),
  );

  test("never throws; every entry has a place and a reading; every problem is a sentence", () => {
    fc.assert(
      fc.property(line, (text) => {
        const run = readCheckRun(text);
        expect(run.ok ? run.value.length > 0 : /[.?V]$/.test(run.problem)).toBe(true);
        for (const { at, measured } of run.ok ? run.value : [])
          expect([at === "", measured === ""]).toEqual([false, false]);
      }),
      { numRuns: 2000 },
    );
  });

  test("as many pins as readings always make as many checks, in that order", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.array(fc.integer({ min: 0, max: 2000 }), { minLength: 2, maxLength: 60 }),
        (first, readings) => {
          const run = readCheckRun(`U7.${first}-${first + readings.length - 1} diode ${readings.join(" ")}`);
          expect(run.ok && run.value.map(({ at, measured }) => `${at} ${measured}`)).toEqual(
            readings.map((reading, at) => `U7.${first + at} ${reading}`),
          );
        },
      ),
    );
  });

  test("a very long line is refused at once", () => {
    expect(entries("U7.1 " + "1 ".repeat(50_000))).toBe(
      "This line is too long. Enter it in parts, one run of pins each.",
    );
  });
});
