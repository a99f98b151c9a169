import type { SeedBoard, SeedPlacement } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import type { Part } from "#seed/notation/placing.ts";
import { chip, part } from "#seed/notation/placing.ts";
import {
  CPU_6809,
  LS157,
  LS244,
  LS245,
  RAM_2114,
  RAM_6116,
  ROM_28,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

/** Millimetres: the board's printed grid has columns 1 to 9 and rows A to H; a part stands on the place it is named by. */
const GRID = { left: 24, top: 22, column: 39, row: 26 } as const;

function onGrid(item: Part, nudge: { right?: number; down?: number } = {}): SeedPlacement {
  const column = Number(item.designator.charAt(0)) - 1;
  const row = item.designator.charCodeAt(1) - "A".charCodeAt(0);
  const x = GRID.left + column * GRID.column + (nudge.right ?? 0);
  const y = GRID.top + row * GRID.row + (nudge.down ?? 0);
  return { ...item, x, y };
}

const processor = { sheet: "1" };
const video = { sheet: "2" };
const inputs = { sheet: "3" };

const placements: SeedPlacement[] = [
  onGrid(chip("2A", "27c256", "DIP-28", { socketed: true, ...video, notes: "Sprites, low byte." })),
  onGrid(chip("3A", "27c256", "DIP-28", { socketed: true, ...video, notes: "Sprites, high byte." })),
  onGrid(chip("5A", "2764", "DIP-28", { socketed: true, ...video, notes: "Characters." })),
  onGrid(chip("7A", "2114", "DIP-18", { ...video, notes: "Colours, low half." })),
  onGrid(chip("8A", "2114", "DIP-18", { ...video, notes: "Colours, high half." })),
  onGrid(chip("9A", "74ls273", "DIP-20", { ...video, notes: "Colour latch." })),
  onGrid(part("9B", "resistor-pack", "colour ladder", { package: "SIP-14", ...video })),
  onGrid(chip("2C", "vq4-0461", "PLCC-68", { code: "VQ4-0461-01", socketed: true, ...video })),
  onGrid(chip("3C", "74ls244", "DIP-20", { ...video, notes: "Address to the colour RAM." })),
  onGrid(chip("5C", "vq4-0475", "QFP-64", { code: "VQ4-0475-01", ...video })),
  onGrid(chip("6C", "74ls157", "DIP-16", { ...video, notes: "Address of the colour RAM, low." })),
  onGrid(chip("7C", "6116", "DIP-24", { ...video, notes: "Characters on the screen." })),
  onGrid(chip("8C", "74ls245", "DIP-20", { ...video, notes: "Opens video RAM to the processor." })),
  onGrid(chip("9C", "74ls245", "DIP-20", { ...video, notes: "Opens colour RAM to the processor." })),
  onGrid(chip("2D", "74ls163", "DIP-16", { ...processor, notes: "6 MHz for the processor." })),
  onGrid(chip("4D", "or-27-514", "DIP-40", { code: "OR 27-514B", socketed: true, ...processor }), { right: 4 }),
  onGrid(chip("6D", "74ls157", "DIP-16", { ...video, notes: "Address of the colour RAM, high." }), { right: 6 }),
  onGrid(chip("8D", "74ls32", "DIP-14", video)),
  onGrid(chip("9D", "74ls244", "DIP-20", { ...inputs, notes: "Player 2 and coins." })),
  onGrid(chip("1E", "74ls04", "DIP-14", { ...processor, notes: "12 MHz oscillator." })),
  onGrid(chip("2E", "74ls00", "DIP-14", processor)),
  onGrid(
    part("9E", "chip", "unknown custom", {
      package: "DIP-16",
      code: "BW 80590 B",
      ...inputs,
      notes: "In the coin lines.",
    }),
  ),
  onGrid(chip("8E", "74ls244", "DIP-20", { ...inputs, notes: "Player 1." })),
  onGrid(part("1F", "crystal", "12.000 MHz", processor)),
  onGrid(chip("2F", "74ls244", "DIP-20", { ...processor, notes: "A0 to A7." })),
  onGrid(chip("3F", "74ls244", "DIP-20", { ...processor, notes: "A8 to A15." }), { right: -6 }),
  onGrid(chip("4F", "6809", "DIP-40", { socketed: true, ...processor }), { right: 2 }),
  onGrid(chip("6F", "or-27-561", "DIP-28", { code: "OR 27-561B", socketed: true, ...processor, notes: "Program." })),
  onGrid(chip("7F", "27c256", "DIP-28", { socketed: true, ...processor, notes: "Banked data." })),
  onGrid(chip("8F", "uln2003", "DIP-16", { ...inputs, notes: "Coin counters and lamps." })),
  onGrid(chip("9F", "74ls244", "DIP-20", { ...inputs, notes: "Option switches." })),
  onGrid(chip("4G", "74ls245", "DIP-20", { ...processor, notes: "Data buffer." })),
  onGrid(chip("6G", "6116", "DIP-24", { ...processor, notes: "Work RAM." })),
  onGrid(chip("7G", "74ls374", "DIP-20", { ...inputs, notes: "Sound latch." })),
  onGrid(chip("8G", "74ls273", "DIP-20", { ...inputs, notes: "Coin latch." })),
  onGrid(part("9G", "switch", "8-way DIP switch", { package: "DIP-16", ...inputs })),
  { ...part("RN1", "resistor-pack", "8×4k7", { package: "SIP-9", ...inputs }), x: 336, y: 142 },
  { ...part("RN2", "resistor-pack", "8×4k7", { package: "SIP-9", ...inputs }), x: 297, y: 142 },
  { ...part("RN3", "resistor-pack", "8×4k7", { package: "SIP-9", ...inputs }), x: 336, y: 90 },
  { ...part("R1", "resistor", "680R", processor), x: 12, y: 118 },
  { ...part("R2", "resistor", "680R", processor), x: 24, y: 118 },
  { ...part("R3", "resistor", "4k7", { ...processor, notes: "Reset." }), x: 14, y: 178 },
  { ...part("R4", "resistor", "4k7", { ...processor, notes: "/IRQ, MRDY, /FIRQ and friends." }), x: 26, y: 178 },
  { ...part("CR1", "diode", "1N4148", processor), x: 38, y: 178 },
  { ...part("C1", "capacitor", "10u 16V tantalum", { ...processor, notes: "Reset." }), x: 48, y: 178 },
  { ...part("C2", "capacitor", "100u 16V", { package: "radial-8", ...processor }), x: 62, y: 196 },
  { ...part("C3", "capacitor", "10u 16V tantalum", video), x: 84, y: 87 },
  { ...part("C4", "capacitor", "100n", video), x: 92, y: 87 },
  { ...part("C5", "capacitor", "100n", processor), x: 164, y: 164 },
  { ...part("C6", "capacitor", "100n", processor), x: 200, y: 164 },
  { ...part("C7", "capacitor", "100n", inputs), x: 262, y: 164 },
  { ...part("TP1", "test-point", "E", processor), x: 114, y: 178 },
  { ...part("J1", "connector", "cabinet", { package: "edge-44", ...inputs }), x: 180, y: 224 },
  { ...part("J2", "connector", "sound board", { package: "header-16", ...inputs }), x: 276, y: 222 },
];

const run = (from: number, names: string[]) => names.map((name, index) => `${from + index} ${name}`).join("\n");
const numbered = (name: string, count: number) => Array.from({ length: count }, (_, index) => `${name}${index}`);

const connectors = [
  connector(
    "J1",
    "Cabinet",
    "44-way edge connector, 22 each side",
    `1 GND
     2 GND
     3 +5V
     4 +5V
     5 +12V
     6 -
     7 RED
     8 GREEN
     9 BLUE
     10 /CSYNC
     11 GND
     ${run(12, numbered("PA", 8))}
     ${run(20, numbered("PB", 5))}
     25 COIN1 = COINA
     26 COIN2 = COINB
     27 SERVICE = COINC
     28 COUNT1
     29 COUNT2
     30 LAMP1
     31 LAMP2
     32 LOCK
     ${Array.from({ length: 6 }, (_, index) => `${33 + index} -`).join("\n")}
     39 +5V
     40 +5V
     41 GND
     42 GND
     43 GND
     44 GND`,
  ),
  connector(
    "J2",
    "Sound board",
    "16-way header",
    `${run(1, numbered("SND", 8))}
     9 /SND
     10 /RESET
     11 GND
     12 GND
     13 -
     14 -
     15 GND
     16 -`,
  ),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips, ["9E"]),
  decoupling("+5V", "C2 C3 C4 C5 C6 C7"),
  [
    net("power", "+5V", "9E.16 RN1.1 RN2.1 RN3.1 R3.1 R4.1 CR1.K 2D.1 2D.7 2D.9 2D.10 2E.1 2E.2"),
    net("power", "+12V", "8F.9"),
    net("ground", "GND", "9E.8 C1.2 9G.9 9G.10 9G.11 9G.12 9G.13 9G.14 9G.15 9G.16 2F.1 2F.19 3F.1 3F.19"),
    net("ground", "GND", "6C.15 6D.15 7G.1 9B.14 2D.3 2D.4 2D.5 2D.6 7A.8 8A.8 7A.15 7A.16 8A.15 8A.16"),
    net(
      "ground",
      "GND",
      "3C.1 3C.19 4F.39 5A.2 5A.23 5A.20 5A.22 7C.18 7C.19 7C.20 1E.9 1E.11 1E.13 8D.4 8D.5 8D.9 8D.10 8D.12 8D.13 2E.12 2E.13 8F.6 8F.7",
    ),
  ],
  // The processor's own lines, behind the buffers, are called P…; the board's are plain.
  bus("address", "P", { "4F": [8, 9, 10, 11, 12, 13, 14, 15], "2F": LS244.inputs }),
  bus("address", "P", { "4F": [16, 17, 18, 19, 20, 21, 22, 23], "3F": LS244.inputs }, 8),
  bus("data", "PD", { "4F": CPU_6809.data, "4G": LS245.a }),
  bus("address", "A", {
    "2F": LS244.outputs,
    "6F": [10, 9, 8, 7, 6, 5, 4, 3],
    "7F": [10, 9, 8, 7, 6, 5, 4, 3],
    "6G": [8, 7, 6, 5, 4, 3, 2, 1],
    "2C": [10, 11, 12, 13, 14, 15, 16, 17],
    "6C": LS157.a,
    "6D": [0, 0, 0, 0, ...LS157.a],
  }),
  bus(
    "address",
    "A",
    {
      "3F": LS244.outputs,
      "6F": [25, 24, 21, 23, 2, 26, 27],
      "7F": [25, 24, 21, 23, 2],
      "6G": [23, 22, 19],
      "2C": [18, 19],
      "4D": [9, 10, 11, 12, 13, 14, 15, 16],
    },
    8,
  ),
  bus("data", "D", {
    "4G": LS245.b,
    "6F": ROM_28.data,
    "7F": ROM_28.data,
    "6G": RAM_6116.data,
    "2C": [2, 3, 4, 5, 6, 7, 8, 9],
    "4D": [1, 2, 3, 4, 5, 6, 7, 8],
    "7G": [3, 4, 7, 8, 13, 14, 17, 18],
    "8G": [3, 4, 7, 8, 13, 14, 17, 18],
    "8E": LS244.outputs,
    "9D": LS244.outputs,
    "9F": LS244.outputs,
    "8C": LS245.a,
    "9C": LS245.a,
  }),
  bus("address", "BK", { "4D": [25, 26], "7F": [26, 27] }),
  bus("address", "RA", {
    "2C": [25, 26, 27, 28, 29, 30, 31, 32, 34, 35, 36, 37, 38, 39, 40],
    "2A": ROM_28.address,
    "3A": ROM_28.address,
  }),
  bus("data", "RD", { "2C": [43, 44, 45, 46, 47, 48, 49, 50], "2A": ROM_28.data }),
  bus("data", "RD", { "2C": [51, 52, 53, 54, 55, 56, 57, 58], "3A": ROM_28.data }, 8),
  bus("signal", "PX", { "2C": [64, 65, 66, 67], "5C": [2, 3, 4, 5] }),
  bus("address", "VA", { "5C": [17, 18, 19, 20, 21, 22, 23, 24, 25, 26], "7C": [8, 7, 6, 5, 4, 3, 2, 1, 23, 22] }),
  bus("data", "VD", { "7C": RAM_6116.data, "8C": LS245.b, "5A": [7, 6, 5, 4, 3, 25, 24, 21] }),
  bus("address", "CL", { "5C": [34, 35, 36], "5A": [10, 9, 8] }),
  bus("data", "CD", { "5A": ROM_28.data, "5C": [8, 9, 10, 11, 12, 13, 14, 15] }),
  bus("address", "PL", { "5C": [37, 38, 39, 40, 41, 42, 43, 44], "3C": LS244.inputs }),
  bus("address", "PM", { "3C": LS244.outputs, "6C": LS157.b, "6D": [0, 0, 0, 0, ...LS157.b] }),
  bus("address", "PQ", {
    "6C": LS157.y,
    "6D": [0, 0, 0, 0, ...LS157.y],
    "7A": RAM_2114.address.slice(0, 8),
    "8A": RAM_2114.address.slice(0, 8),
  }),
  bus("data", "PC", { "7A": [14, 13, 12, 11], "9A": [3, 4, 7, 8], "9C": [18, 17, 16, 15] }),
  bus("data", "PC", { "8A": [14, 13, 12, 11], "9A": [13, 14, 17, 18], "9C": [14, 13, 12, 11] }, 4),
  bus("signal", "DAC", { "9A": [2, 5, 6, 9, 12, 15, 16, 19], "9B": [1, 2, 3, 4, 5, 6, 7, 8] }),
  bus("signal", "PA", { "8E": LS244.inputs, RN2: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("signal", "PB", { "9D": [2, 4, 6, 8, 11], RN3: [2, 3, 4, 5, 6] }),
  bus("signal", "OPT", { "9F": LS244.inputs, "9G": [1, 2, 3, 4, 5, 6, 7, 8], RN1: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("data", "SND", { "7G": [2, 5, 6, 9, 12, 15, 16, 19] }),
  [
    net("clock", "XA", "1F.1 1E.1 R1.1"),
    net("clock", "XB", "1F.2 1E.4 1E.5 R2.2"),
    net("clock", "XC", "1E.2 1E.3 R1.2 R2.1"),
    net("clock", "CLK12", "1E.6 2D.2 2C.60 5C.46"),
    net("clock", "CLK6", "5C.47 9A.11"),
    net("clock", "CLK6P", "2D.14 4F.38"),
    net("clock", "E", "4F.34 4D.18 2C.23 5C.32 2E.4 TP1.1"),
    net("control", "RW", "4F.32 4D.17 2C.22 5C.31 2E.9 2E.10"),
    net("control", "WRITE", "2E.8 2E.5 4G.1 8C.1 9C.1"),
    net("control", "/WR", "2E.6 6G.21 8D.2"),
    net("control", "/PALWE", "8D.3 7A.10 8A.10"),
    net("control", "/HALT", "4F.40 4F.33 4F.2 4F.4 R4.2"),
    net("control", "/BUSY", "2C.63 4F.36 RN3.7"),
    net("control", "/VIRQ", "5C.53 4F.3 RN3.8"),
    net("reset", "POR", "R3.2 C1.1 CR1.A 4D.19"),
    net("reset", "/RESET", "4D.21 4F.37 5C.62 8G.1"),
    net("select", "/ROM0", "4D.23 6F.20 6F.22"),
    net("select", "/ROM1", "4D.24 7F.20 7F.22"),
    net("select", "/RAM", "4D.28 6G.18 6G.20"),
    net("select", "/VRAM", "4D.29 5C.30"),
    net("select", "/SPR", "4D.30 2C.21"),
    net("select", "/PAL", "4D.31 9C.19 6C.1 6D.1 8D.1"),
    net("select", "/IN0", "4D.32 8E.1 8E.19"),
    net("select", "/IN1", "4D.33 9D.1 9D.19"),
    net("select", "/DIP", "4D.34 9F.1 9F.19"),
    net("select", "/SND", "4D.35 7G.11"),
    net("select", "/COIN", "4D.36 8G.11"),
    net("control", "FLIP", "4D.37 5C.61"),
    net("control", "/BUFEN", "4D.38 4G.19"),
    net("control", "/VGATE", "5C.27 8C.19"),
    net("control", "/VWE", "5C.28 7C.21"),
    net("control", "/ROMOE", "2C.41 2A.20 2A.22 3A.20 3A.22"),
    net("control", "LBSTB", "2C.20 5C.6"),
    net("signal", "/HSYNC", "5C.48 2C.61"),
    net("signal", "/VSYNC", "5C.50 2C.62 4D.22"),
    net("signal", "/CSYNC", "5C.51"),
    net("control", "/BLANK", "5C.52 9A.1"),
    net("signal", "RED", "9B.9"),
    net("signal", "GREEN", "9B.10"),
    net("signal", "BLUE", "9B.11"),
    net("signal", "COINA", "9E.1"),
    net("signal", "COINB", "9E.2"),
    net("signal", "COINC", "9E.3"),
    net("signal", "COINAF", "9E.15 9D.13"),
    net("signal", "COINBF", "9E.14 9D.15"),
    net("signal", "COINCF", "9E.13 9D.17"),
    net("control", "CNT1", "8G.2 8F.1"),
    net("control", "CNT2", "8G.5 8F.2"),
    net("control", "LMP1", "8G.6 8F.3"),
    net("control", "LMP2", "8G.9 8F.4"),
    net("control", "LCK", "8G.12 8F.5"),
    net("signal", "COUNT1", "8F.16"),
    net("signal", "COUNT2", "8F.15"),
    net("signal", "LAMP1", "8F.14"),
    net("signal", "LAMP2", "8F.13"),
    net("signal", "LOCK", "8F.12"),
  ],
);

export const board: SeedBoard = {
  slug: "tern-arcade-main",
  name: "Tern Alley main board",
  kind: "arcade",
  maker: "Galloway Coin Amusements",
  machine: "Tern Alley arcade cabinet",
  year: 1985,
  summary:
    "A 6809 at 1.5 MHz, a sprite engine and a video custom that makes all the timing. Parts are named by the printed grid: 4F stands in column 4, row F.",
  notes: `**Read the grid before the circuit.** Columns 1 to 9 run left to right, rows A to F and G top to bottom; there is no U1.

The picture is the first instrument:

| picture | look at |
|---|---|
| none, no sync | CLK12 at 5C.46, then /RESET at 5C.62 |
| sync, a screen of one letter | program does not run: E at TP1, /RESET at 4F.37 |
| letters right, sprites striped | RD lines at 2C, the sockets of 2A and 3A |
| letters wrong, places right | 5A, CD lines |
| letters right, places wrong | VA lines, 7C |
| colours wrong, shapes right | 7A, 8A, the ladder 9B |

The watchdog in 4D bites after eight frames. /RESET that pulses seven times a second is *not* a reset fault: the program
is lost. Hold 4F.37 for a moment and it starts again; use the time.

Video RAM and colour RAM belong to 5C, not to the processor; 8C and 9C open for a moment only. A meter sees nothing
there.

Sockets are single-wipe and tired. Reseat 2A, 3A, 5A, 6F and 7F before thinking. Where the gold edge of J1 is worn
through, the +5 V pins go first: four of them carry 3 A.`,
  width: 362,
  height: 232,
  hazards: [],
  highestVoltage: 12,
  revisions: [
    { name: "Issue 1", notes: "VQ4-0461-01, OR 27-514B, first program." },
    { name: "Issue 2", notes: "VQ4-0461-02, OR 27-514D, second program; C2 enlarged." },
  ],
  rails: [
    {
      name: "+5V",
      nominal: 5,
      tolerancePercent: 4,
      regulated: true,
      source: "J1",
      notes: "3.1 A with all sockets full.",
    },
    { name: "+12V", nominal: 12, tolerancePercent: 10, regulated: true, source: "J1", notes: "Coin counters only." },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "message", signal: "RAM 1 BAD", meaning: "work RAM", suspects: ["6G", "4G"] },
    { form: "message", signal: "RAM 2 BAD", meaning: "video RAM", suspects: ["7C", "8C", "5C"] },
    { form: "message", signal: "RAM 3 BAD", meaning: "colour RAM", suspects: ["7A", "8A", "9C", "6C", "6D"] },
    { form: "message", signal: "ROM 0 BAD", meaning: "checksum of the program", suspects: ["6F"] },
    { form: "message", signal: "ROM 1 BAD", meaning: "checksum of a bank", suspects: ["7F", "4D"] },
    {
      form: "message",
      signal: "OBJ BAD",
      meaning: "sprite engine's table cannot be read back",
      suspects: ["2C", "4D"],
    },
    {
      form: "flashes",
      signal: "both start lamps blink",
      meaning: "program runs, picture test failed",
      suspects: ["5C", "7C"],
    },
  ],
  cautions: [
    {
      at: "J1",
      text: "The edge connector can be put on the wrong way round; +12 V then meets /CSYNC. Look for the slot.",
    },
    { at: "2C", text: "PLCC-68: use an extractor at the two slotted corners, never a screwdriver." },
    { at: "6F", text: "Mask ROM. Read it on the programmer as a 27C256 with VPP off, and never try to write." },
    {
      text: "The picture tube belongs to the cabinet, not to this board: work on the board on the bench, not in the cabinet.",
    },
  ],
  copies: [
    { owner: "tomasz", tag: "TA-TOM-1", serial: "GA 10233", revision: "Issue 1", jumpers: "9G: 00100110", works: true },
    { owner: "tomasz", tag: "TA-TOM-2", serial: "GA 14410", revision: "Issue 2", works: true },
    { owner: "mirela", tag: "TA-MIR", serial: "GA 10871", revision: "Issue 1", works: true },
    {
      owner: "bram",
      tag: "TA-BRA",
      serial: "GA 10990",
      revision: "Issue 1",
      modifications: "table cabinet",
      works: null,
    },
  ],
};
