import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printPartLine, readPartLines, type PrintedPart } from "#lib/core/netlist/index.ts";

const plain = { package: "", sheet: "", x: null, y: null, notes: "", socketed: false };

describe("one line of a parts list", () => {
  test.each([
    ["U1 74LS244", { designator: "U1", value: "74LS244", kind: "chip" }],
    [
      "U2 27C256 socketed DIP-28",
      { designator: "U2", value: "27C256", kind: "chip", socketed: true, package: "DIP-28" },
    ],
    ["U2 27C256 sheet 3", { designator: "U2", value: "27C256", kind: "chip", sheet: "3" }],
    ['U2 27C256 sheet "3 of 5"', { designator: "U2", value: "27C256", kind: "chip", sheet: "3 of 5" }],
    ["U2 27C256 at 40,76.5", { designator: "U2", value: "27C256", kind: "chip", x: 40, y: 76.5 }],
    ["U2 27C256 at 40, 76 mm", { designator: "U2", value: "27C256", kind: "chip", x: 40, y: 76 }],
    ["C20 4700u package radial-18", { designator: "C20", value: "4700u", kind: "capacitor", package: "radial-18" }],
    ["C1 | 10u 16V tantalum", { designator: "C1", value: "10u 16V tantalum", kind: "capacitor" }],
    [
      "VR1 7805 TO-220 (on the plate)",
      { designator: "VR1", value: "7805", kind: "resistor", package: "TO-220", notes: "on the plate" },
    ],
    ["J1 DIN-6", { designator: "J1", value: "DIN-6", kind: "connector" }],
    ["U7 74LS138 (see sheet 3)", { designator: "U7", value: "74LS138", kind: "chip", notes: "see sheet 3" }],
  ])("%s", (line, part) => {
    expect(readPartLines(line)).toEqual({ parts: [{ ...plain, line: 1, ...part }], problems: [] });
  });

  test("several parts of one line share their sheet, and have no place", () => {
    expect(readPartLines("R1-R2 4k7 sheet 2 at 10,10").parts).toEqual(
      ["R1", "R2"].map((designator) => ({ ...plain, line: 1, designator, kind: "resistor", value: "4k7", sheet: "2" })),
    );
  });

  test("lines keep their numbers", () => {
    const { parts, problems } = readPartLines("# a heading\n\nU1 74LS244 sheet 2\nwhat is this\nU1 74LS00");
    expect(parts.map(({ line }) => line)).toEqual([3]);
    expect(problems.map(({ line }) => line)).toEqual([4, 5]);
  });
});

const word = fc.stringMatching(/^[A-Z0-9]{2,8}$/);
const part: fc.Arbitrary<PrintedPart> = fc.record({
  designator: fc.constantFrom("U7", "R12", "C3", "J5", "TP2", "4F"),
  // A value of several words, or one that says nothing else when it stands by itself.
  value: fc.oneof(fc.constantFrom("74LS244", "4k7", "100n", "27C256"), fc.constantFrom("10u 16V", "reset push button")),
  package: fc.oneof(fc.constantFrom("", "DIP-20", "PLCC-44", "radial-8", "two words"), word),
  sheet: fc.oneof(fc.constant(""), word, fc.constant("3 of 5")),
  socketed: fc.boolean(),
  x: fc.constant(null),
  y: fc.constant(null),
  notes: fc.constantFrom("", "on -5 V: its positive end is on ground.", "see sheet 3, at 10,10", "image (LOW)"),
});

test("what is printed is read as what it was, wherever a value cannot be taken for something else", () => {
  fc.assert(
    fc.property(
      part,
      fc.option(fc.tuple(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 500 }))),
      (given, at) => {
        const placed = { ...given, x: at?.[0] ?? null, y: at?.[1] ?? null };
        const { parts, problems } = readPartLines(printPartLine(placed));
        expect(problems).toEqual([]);
        expect(parts.map(({ line: _line, kind: _kind, ...rest }) => rest)).toEqual([placed]);
      },
    ),
  );
});

test("any text is read without a fault, and no designator comes twice", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 200 }), (text) => {
      const designators = readPartLines(text).parts.map(({ designator }) => designator);
      expect(new Set(designators).size).toBe(designators.length);
    }),
  );
});
