import { expect, test } from "vitest";
import { symbolDifference, type ChipSymbol } from "#lib/core/pinout/index.ts";

const known: ChipSymbol = {
  library: "test",
  name: "74LS373",
  reference: "U",
  description: "octal latch",
  keywords: "",
  pins: [
    { number: "1", name: "OE", type: "input", role: "enable", activeLow: true, unit: 1 },
    { number: "11", name: "LE", type: "input", role: "control", activeLow: false, unit: 1 },
  ],
  packageGuess: { name: "DIP-20", style: "DIP", pinCount: 20, basis: "filter" },
};
const [enable, latch] = known.pins;
if (enable === undefined || latch === undefined) throw new Error("the part has two pins");

test.each<[string, ChipSymbol | null, ChipSymbol, ReturnType<typeof symbolDifference>]>([
  ["nothing known", null, known, { state: "new", changes: [] }],
  ["the same again", known, { ...known }, { state: "same", changes: [] }],
  ["pins in another order", known, { ...known, pins: [latch, enable] }, { state: "same", changes: [] }],
  [
    "a register for a latch",
    known,
    { ...known, description: "octal register", pins: [enable, { ...latch, name: "CP", role: "clock" }] },
    {
      state: "changed",
      changes: [
        "pin 11 was LE (input, control), is CP (input, clock)",
        "description was “octal latch”, is “octal register”",
      ],
    },
  ],
  [
    "one pin less, one more",
    known,
    { ...known, pins: [enable, { ...latch, number: "12" }] },
    { state: "changed", changes: ["pin 12 LE (input, control) is added", "pin 11 LE (input, control) is gone"] },
  ],
])("%s", (_, before, after, expected) => {
  expect(symbolDifference(before, after)).toEqual(expected);
});
