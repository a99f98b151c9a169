import fc from "fast-check";
import { expect, test } from "vitest";
import { printPinLines, readPinLines } from "#lib/core/pinout/index.ts";
import { PIN_ROLES, PIN_TYPES } from "#lib/core/shared/index.ts";

const pin = (number: string, name: string, more: object = {}) => ({
  number,
  name,
  type: "input",
  role: "input",
  activeLow: false,
  supply: null,
  unit: 1,
  ...more,
});

// The notation is the project's own; the cases are the notation's definition.
test.each([
  ["1 A0 input address", [pin("1", "A0", { role: "address" })]],
  ["1 A0 address input", [pin("1", "A0", { role: "address" })]],
  ["19 /OE in enable", [pin("19", "OE", { role: "enable", activeLow: true })]],
  ["20 VCC power-in supply 5", [pin("20", "VCC", { type: "power-in", role: "supply", supply: 5 })]],
  ["8 VBB pwr supply -5V", [pin("8", "VBB", { type: "power-in", role: "supply", supply: -5 })]],
  ["3 IN input input", [pin("3", "IN")]],
  ["7 - nc unused", [pin("7", "", { type: "no-connect", role: "unused" })]],
  ["7 GND", [pin("7", "GND", { type: "unspecified", role: "ground" })]],
  ["# a comment\n\n  4\tX\tin\tinput ", [pin("4", "X")]],
  [
    "11-13 D0-2 bi data",
    [0, 1, 2].map((at) => pin(String(11 + at), `D${at}`, { type: "bidirectional", role: "data" })),
  ],
  ["9-8 A7-8 in address", [pin("9", "A7", { role: "address" }), pin("8", "A8", { role: "address" })]],
  ["5-6 GND pwr ground", ["5", "6"].map((number) => pin(number, "GND", { type: "power-in", role: "ground" }))],
])("%j", (text, pins) => {
  expect(readPinLines(text)).toEqual({ pins, problems: [] });
});

test.each([
  ["A0", [{ line: 1, reason: "pin A0 has no name; write - for none" }]],
  ["1 A\n1 B", [{ line: 2, reason: "pin 1 stands here twice" }]],
  ["?? A", [{ line: 1, reason: "“??” is no pin number" }]],
  ["1 A0 sideways", [{ line: 1, reason: "“sideways” is no type, role or voltage of a pin" }]],
  ["1-4 D0-2 bi", [{ line: 1, reason: "4 pins and not as many names in “D0-2”" }]],
])("%j is refused by its line", (text, problems) => {
  expect(readPinLines(text).problems).toEqual(problems);
});

test("a table that is printed is read back as it was", () => {
  const name = fc.stringMatching(/^[A-Z][A-Z0-9]{0,5}$/);
  const pins = fc.uniqueArray(
    fc.record({
      number: fc.integer({ min: 1, max: 200 }).map(String),
      name,
      type: fc.constantFrom(...PIN_TYPES),
      role: fc.constantFrom(...PIN_ROLES),
      activeLow: fc.boolean(),
      supply: fc.option(fc.constantFrom(5, -5, 12, 3.3), { nil: null }),
    }),
    { selector: (one) => one.number, maxLength: 40 },
  );
  fc.assert(
    fc.property(pins, (table) => {
      const told = table.map((one) => ({ ...one, supply: one.role === "supply" ? (one.supply ?? 5) : one.supply }));
      expect(readPinLines(printPinLines(told))).toEqual({
        pins: told.map((one) => ({ ...one, unit: 1 })),
        problems: [],
      });
    }),
  );
});

test("any text is answered, never thrown at", () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const { pins, problems } = readPinLines(text);
      expect(pins.length + problems.length).toBeLessThanOrEqual(64 * text.split(/\r\n|\r|\n/).length);
    }),
  );
});
