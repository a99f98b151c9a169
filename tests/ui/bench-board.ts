import type { BoardFacts } from "#lib/core/board/index.ts";

/** An invented board with one of each: rails, a chip, a resistor, a connector, nets, a caution. */
export const board: BoardFacts = {
  slug: "teasel-2",
  name: "Teasel 2",
  kind: "other",
  hazards: ["stored-charge"],
  highestVoltage: 12,
  rails: [
    { name: "+5V", nominal: 5, ac: false, tolerancePercent: 5, regulated: true, source: "U1" },
    { name: "+12V", nominal: 12, ac: false, tolerancePercent: null, regulated: true, source: "" },
  ],
  placements: [
    { designator: "U6", kind: "chip", value: "", socketed: false, chip: "clocked" },
    { designator: "U7", kind: "chip", value: "", socketed: true, chip: "clocked" },
    { designator: "R3", kind: "resistor", value: "4k7", socketed: false, chip: null },
  ],
  chips: {
    clocked: {
      slug: "clocked",
      name: "XK100",
      technology: "TTL",
      package: { name: "DIP-8", style: "DIP" },
      pins: [
        { number: "1", name: "CLK", type: "input", role: "clock", activeLow: false, supply: null },
        { number: "2", name: "D0", type: "three-state", role: "data", activeLow: false, supply: null },
        { number: "3", name: "D1", type: "three-state", role: "data", activeLow: false, supply: null },
        { number: "4", name: "GND", type: "power-in", role: "ground", activeLow: false, supply: 0 },
        { number: "5", name: "RST", type: "input", role: "reset", activeLow: true, supply: null },
        { number: "6", name: "IN", type: "input", role: "input", activeLow: false, supply: null },
        { number: "7", name: "OUT", type: "output", role: "output", activeLow: false, supply: null },
        { number: "8", name: "VCC", type: "power-in", role: "supply", activeLow: false, supply: 5 },
      ],
    },
  },
  connectors: [
    {
      designator: "J1",
      pins: [
        { number: "1", name: "+5V" },
        { number: "2", name: "GND" },
      ],
    },
  ],
  nets: [
    { name: "+5V", role: "power", pins: ["J1.1", "U7.8"] },
    { name: "D0", role: "data", pins: ["U6.2", "U7.2"] },
  ],
  cautions: [{ at: "R3", text: "Gets hot." }],
};
