import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readPartsList } from "#lib/core/netlist/index.ts";

/** Rows as `designator value [socketed] [(notes)]`. */
function rows(text: string): string[] {
  return readPartsList(text).rows.map(
    ({ designator, value, socketed, notes }) =>
      `${designator} ${value}${socketed ? " socketed" : ""}${notes === undefined ? "" : ` (${notes})`}`,
  );
}

test.each([
  ["U1 74LS244", ["U1 74LS244"]],
  ["u1 74ls244", ["U1 74ls244"]],
  ["U2 27C256 socketed", ["U2 27C256 socketed"]],
  ["U3: 74LS00 (socket)", ["U3 74LS00 socketed"]],
  ["U3 = 74LS00, in a socket", ["U3 74LS00 socketed"]],
  ["U3 -> 74LS00", ["U3 74LS00"]],
  ["U3 - 7805", ["U3 7805"]],
  ["U3 6502 not socketed", ["U3 6502"]],
  ["U3 6502 soldered in", ["U3 6502"]],
  ["U3 custom VQ4-0061-03", ["U3 VQ4-0061-03 (custom)"]],
  ["U3 VQ4-0061-03 video timing", ["U3 VQ4-0061-03 (video timing)"]],
  ["U3 27C256-15 (boot ROM) socketed", ["U3 27C256-15 socketed (boot ROM)"]],
  ["U3 unknown", ["U3 unknown"]],
  ["U3", ["U3 "]],
  ["C14 100n", ["C14 100n"]],
  ["C4 100 nF 50V ceramic", ["C4 100 nF (50V ceramic)"]],
  ["R1 4,7k", ["R1 4,7k"]],
  ["R1, R2 10k", ["R1 10k", "R2 10k"]],
  ["R1 R2 R3 10k", ["R1 10k", "R2 10k", "R3 10k"]],
  ["R1 and R2: 10k", ["R1 10k", "R2 10k"]],
  ["R1/R2 10k", ["R1 10k", "R2 10k"]],
  ["R1-R3 4k7", ["R1 4k7", "R2 4k7", "R3 4k7"]],
  ["R1-3 4k7", ["R1 4k7", "R2 4k7", "R3 4k7"]],
  ["R1 to R3 4k7", ["R1 4k7", "R2 4k7", "R3 4k7"]],
  ["R1..R3, R7 4k7", ["R1 4k7", "R2 4k7", "R3 4k7", "R7 4k7"]],
  ["Y1 3.58 MHz", ["Y1 3.58 MHz"]],
  ["Q1 BC547", ["Q1 BC547"]],
  ["Q1 D44", ["Q1 D44"]],
  ["D1 D2 1N4148", ["D1 1N4148", "D2 1N4148"]],
  ["J1 power connector", ["J1 power connector"]],
  ["RN1 8x10k", ["RN1 8x10k"]],
  ["TP1", ["TP1 "]],
  ["4F 74LS161", ["4F 74LS161"]],
  ["4F, 4G 74LS04", ["4F 74LS04", "4G 74LS04"]],
  ["U4\t74LS373\tDIP-20", ["U4 74LS373 (DIP-20)"]],
  ["U5;27C256;socketed;boot ROM", ["U5 27C256 socketed (boot ROM)"]],
  ["U5 | 74LS32 | socket", ["U5 74LS32 socketed"]],
  ["U5,74LS00,DIP-14", ["U5 74LS00 (DIP-14)"]],
  ['"C1, C2, C3",100n,3', ["C1 100n", "C2 100n", "C3 100n"]],
  ['R50,"4,7k",1', ["R50 4,7k"]],
  ["74LS138 U6", ["U6 74LS138"]],
  ["100n C1, C2", ["C1 100n", "C2 100n"]],
  ["10k R20", ["R20 10k"]],
  ["- U8 74LS08", ["U8 74LS08"]],
  ["3. U8 74LS08", ["U8 74LS08"]],
  ["Ref,Value,Qty\nU1,74LS00,1", ["U1 74LS00"]],
  ["Designator\tValue\nU1\t74LS00", ["U1 74LS00"]],
  ["# the clock\n\nU1 74LS00\r\nU2 74LS04\rU3 74LS08", ["U1 74LS00", "U2 74LS04", "U3 74LS08"]],
  ["U1\u00A074LS244", ["U1 74LS244"]],
  ["", []],
])("%j", (text, expected) => {
  expect(rows(text)).toEqual(expected);
  expect(readPartsList(text).problems).toEqual([]);
});

test("a row is complete", () => {
  expect(readPartsList("\nU2 27C256 socketed (boot ROM)\nC1-C2 100n")).toEqual({
    rows: [
      { line: 2, designator: "U2", value: "27C256", kind: "chip", socketed: true, notes: "boot ROM" },
      { line: 3, designator: "C1", value: "100n", kind: "capacitor", socketed: false },
      { line: 3, designator: "C2", value: "100n", kind: "capacitor", socketed: false },
    ],
    problems: [],
  });
});

describe("problems are named and take nothing else with them", () => {
  test.each([
    [
      "U1 74LS244\nU1 74LS245\nU2 74LS00",
      [{ line: 2, text: "U1 74LS245", message: "U1 already stands on line 1 as 74LS244. The first one is kept." }],
      ["U1 74LS244", "U2 74LS00"],
    ],
    [
      "R1-R3 4k7\nR2 4k7",
      [{ line: 2, text: "R2 4k7", message: "R2 already stands on line 1 with the same value. The first one is kept." }],
      ["R1 4k7", "R2 4k7", "R3 4k7"],
    ],
    [
      "R30-R20 1k\nR40 1k",
      [{ line: 1, text: "R30-R20 1k", message: "The range begins at R30 and ends before it." }],
      ["R40 1k"],
    ],
    [
      "R1-R999 1k",
      [{ line: 1, text: "R1-R999 1k", message: "R1 to R999 is 999 parts; at most 200 may stand in one line." }],
      [],
    ],
    [
      "hello world\nU1 74LS00",
      [
        {
          line: 1,
          text: "hello world",
          message:
            "No designator was found. Begin the line with what is printed beside the part, for example U1 74LS244.",
        },
      ],
      ["U1 74LS00"],
    ],
  ])("%j", (text, problems, kept) => {
    expect(readPartsList(text).problems).toEqual(problems);
    expect(rows(text)).toEqual(kept);
  });

  test("a line without end is one problem", () => {
    expect(readPartsList("U1 " + "x".repeat(100_000)).problems.map(({ message }) => message)).toEqual([
      "The line is longer than 500 characters.",
    ]);
  });
});

test("never throws, never takes a designator twice, and every line number is one of the text's", () => {
  const text = fc.oneof(
    fc.string({ unit: "grapheme", maxLength: 300 }),
    fc
      .array(
        fc.constantFrom(
          "U1",
          "R1-R8",
          "R1",
          "-",
          ",",
          ";",
          "\t",
          "\n",
          "74LS244",
          "10K",
          "4F",
          '"',
          "(",
          ")",
          "socket",
          " ",
          "to",
          "|",
        ),
        { maxLength: 40 },
      )
      .map((pieces) => pieces.join("")),
  );
  fc.assert(
    fc.property(text, (list) => {
      const { rows: found, problems } = readPartsList(list);
      const lines = list.split(/\r\n|[\n\r]/).length;
      expect(new Set(found.map(({ designator }) => designator)).size).toBe(found.length);
      for (const { line } of [...found, ...problems]) expect(line >= 1 && line <= lines).toBe(true);
    }),
    { numRuns: 2000 },
  );
});
