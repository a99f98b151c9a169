import { describe, expect, test } from "vitest";
import { boardChanges, listOfTyped, netsOfText } from "#lib/services/boards/index.ts";

const rail = { name: "+5V", nominal: "", tolerancePercent: "", ac: "no", regulated: "yes", source: "", notes: "" };
const read = { nominal: 5, ac: false, tolerancePercent: null, regulated: true, source: "", notes: "" };

describe("a rail as it is typed", () => {
  test.each([
    ["its volts are those of its name", rail, { name: "+5V", ...read }],
    ["with its unit", { ...rail, name: "VRAW", nominal: "9 V" }, { name: "VRAW", ...read, nominal: 9 }],
    ["below ground, with any dash", { ...rail, name: "VEE", nominal: "−12" }, { name: "VEE", ...read, nominal: -12 }],
    [
      "a.c., with a comma",
      { ...rail, name: "AC", nominal: "6,3 V ac", ac: "yes" },
      { name: "AC", ...read, nominal: 6.3, ac: true },
    ],
    ["tolerance with its signs", { ...rail, tolerancePercent: "± 4 %" }, { name: "+5V", ...read, tolerancePercent: 4 }],
    [
      "made by a part",
      { ...rail, regulated: "no", source: "vr1" },
      { name: "+5V", ...read, regulated: false, source: "VR1" },
    ],
  ])("%s", (_, row, expected) => {
    expect(listOfTyped("rails", [row])).toEqual({ rails: [expected] });
  });

  test.each([
    ["no number", { ...rail, nominal: "five" }, "rails.1.nominal"],
    ["no volts to go by", { ...rail, name: "VRAW" }, "rails.1.nominal"],
    ["two rails in one", { ...rail, name: "±15V" }, "rails.1.nominal"],
    ["a tolerance in words", { ...rail, tolerancePercent: "a bit" }, "rails.1.tolerancePercent"],
  ])("%s is named by its row", (_, row, path) => {
    expect(() => listOfTyped("rails", [rail, row])).toThrow(
      expect.objectContaining({ code: "invalid", extra: { problems: [{ path, message: expect.any(String) }] } }),
    );
  });
});

test("connectors are read with their pins, and a pin line that is none is named", () => {
  const row = { designator: "j1", name: "Power", kind: "", pins: "1-2 GND\n3 +5V" };
  expect(listOfTyped("connectors", [row])).toEqual({
    connectors: [
      {
        designator: "J1",
        name: "Power",
        kind: "",
        pins: [
          { number: "1", name: "GND" },
          { number: "2", name: "GND" },
          { number: "3", name: "+5V" },
        ],
      },
    ],
  });
  expect(() => listOfTyped("connectors", [{ ...row, pins: "1 GND\nground" }])).toThrow(
    expect.objectContaining({
      extra: { problems: [{ path: "connectors.0.pins", message: expect.stringMatching(/^Line 2: /) }] },
    }),
  );
});

test("suspects of a self-test code stand apart by anything", () => {
  const row = { form: "beeps", signal: " 3 short ", meaning: "RAM", suspects: "U4, U5;VR3  U7" };
  expect(listOfTyped("selfTests", [row])).toEqual({
    selfTests: [{ form: "beeps", signal: "3 short", meaning: "RAM", suspects: ["U4", "U5", "VR3", "U7"] }],
  });
});

test("a net line that cannot be read is named", () => {
  expect(() => netsOfText("GND: J1.1\noops")).toThrow(
    expect.objectContaining({ extra: { problems: [{ path: "nets", message: expect.stringMatching(/^Line 2: /) }] } }),
  );
});

describe("what an edit changed", () => {
  const placed = (designator: string, value: string) => ({
    designator,
    kind: "chip",
    value,
    package: "",
    socketed: false,
    sheet: "",
    x: null,
    y: null,
    notes: "",
    chip: null,
    code: null,
  });

  test("is told line by line; what stayed or only moved is not", () => {
    const before = {
      name: "Lark",
      year: null,
      placements: [placed("U1", "A1"), placed("U2", "B2"), placed("U3", "C3")],
    };
    const after = {
      name: "Lark 2",
      year: null,
      placements: [placed("U3", "C3"), placed("U1", "A1"), placed("U2", "X9")],
    };
    expect(boardChanges(before, after)).toEqual([
      { field: "name", before: "Lark", after: "Lark 2" },
      { field: "parts", before: "U2 B2", after: "U2 X9" },
    ]);
  });

  test("of a first state is nothing", () => {
    expect(boardChanges(null, { name: "Lark" })).toEqual([]);
  });
});
