import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printContactLines, printNetLines, readContactLines, readNetLines } from "#lib/core/netlist/index.ts";
import { NET_ROLES } from "#lib/core/shared/index.ts";

describe("a net", () => {
  test.each([
    ["CLK clock: U1.6 U7.37", { name: "CLK", role: "clock", pins: ["U1.6", "U7.37"] }],
    ["CLK: u1.6, u7.37", { name: "CLK", role: "unknown", pins: ["U1.6", "U7.37"] }],
    ["GND: J1.2", { name: "GND", role: "ground", pins: ["J1.2"] }],
    ["+5V: J1.1", { name: "+5V", role: "power", pins: ["J1.1"] }],
    ["+5V supply: J1.1", { name: "+5V", role: "power", pins: ["J1.1"] }],
    ["D data: U7.11-13", { name: "D", role: "data", pins: ["U7.11", "U7.12", "U7.13"] }],
    ["/RESET reset:", { name: "/RESET", role: "reset", pins: [] }],
    ["A:0 address: U1.30", { name: "A:0", role: "address", pins: ["U1.30"] }],
    ["clock: U1.6", { name: "clock", role: "unknown", pins: ["U1.6"] }],
  ])("%s", (line, net) => {
    expect(readNetLines(line)).toEqual({ nets: [{ line: 1, ...net }], problems: [] });
  });

  test("goes on in the line below", () => {
    expect(readNetLines("GND: J1.2\n  U1.20 U2.14").nets).toEqual([
      { line: 1, name: "GND", role: "ground", pins: ["J1.2", "U1.20", "U2.14"] },
    ]);
  });

  test.each([
    ["hello", "No colon was found. Write name, role, colon, pins, for example: CLK clock: U1.6 U7.37"],
    [": U1.1", "The net has no name. Write it first, for example: CLK clock: U1.6 U7.37"],
    ["CLK: U16", "“U16” is no pin. Write part, point, pin, for example U7.14."],
  ])("%s says what to write instead", (line, message) => {
    expect(readNetLines(line)).toEqual({ nets: [], problems: [{ line: 1, message }] });
  });

  test("is read as it is printed, whatever its role", () => {
    const net = fc.record({
      name: fc.stringMatching(/^[/+-]?[A-Z][A-Z0-9_]{0,8}( [A-Z]{1,6})?$/),
      role: fc.constantFrom(...NET_ROLES),
      pins: fc.array(fc.stringMatching(/^[A-Z]{1,2}\d{1,2}\.[A-Z]?\d{1,2}$/), { maxLength: 6 }),
    });
    fc.assert(
      fc.property(fc.array(net, { maxLength: 5 }), (nets) => {
        const read = readNetLines(printNetLines(nets));
        expect(read.problems).toEqual([]);
        expect(read.nets.map(({ line: _line, ...rest }) => rest)).toEqual(nets);
      }),
    );
  });
});

describe("the pins of a connector", () => {
  test.each([
    ["1 GND", [["1", "GND"]]],
    ["a12 /RD", [["A12", "/RD"]]],
    ["5", [["5", ""]]],
    ["1: GND", [["1", "GND"]]],
    ["1 = +5 V, fused", [["1", "+5 V, fused"]]],
    [
      "3-5 D0-2",
      [
        ["3", "D0"],
        ["4", "D1"],
        ["5", "D2"],
      ],
    ],
    [
      "3-5 D2-D0",
      [
        ["3", "D2"],
        ["4", "D1"],
        ["5", "D0"],
      ],
    ],
    [
      "A1-A2 GND",
      [
        ["A1", "GND"],
        ["A2", "GND"],
      ],
    ],
  ])("%s", (line, contacts) => {
    expect(readContactLines(line)).toEqual({
      contacts: contacts.map(([number, name]) => ({ number, name })),
      problems: [],
    });
  });

  test.each([
    ["GROUND 1", "“GROUND” is no pin number. Begin with it, for example: 1 GND"],
    ["5-3 D0-2", "5-3 is no run of 2 to 100 pins. Write the lower number first."],
    ["3-5 D0-7", "3-5 is 3 pins, but “D0-7” counts otherwise."],
  ])("%s says what to write instead", (line, message) => {
    expect(readContactLines(line)).toEqual({ contacts: [], problems: [{ line: 1, message }] });
  });

  test("are read as they are printed", () => {
    const contact = fc.record({
      number: fc.stringMatching(/^[A-Z]{0,2}[1-9]\d{0,2}$/),
      name: fc.constantFrom("", "GND", "/RD", "+5 V, fused", "D0-7"),
    });
    fc.assert(
      fc.property(fc.array(contact, { maxLength: 8 }), (contacts) => {
        expect(readContactLines(printContactLines(contacts))).toEqual({ contacts, problems: [] });
      }),
    );
  });
});
