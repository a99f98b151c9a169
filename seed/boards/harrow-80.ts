import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  DRAM,
  LS166,
  LS157,
  LS244,
  LS245,
  LS373,
  PPI_8255,
  ROM_28,
  Z80,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const power = { sheet: "1" };
const processor = { sheet: "2" };
const memory = { sheet: "3" };
const video = { sheet: "4" };

const placements = [
  ...row(12, 9, [
    part("J1", "connector", "6-pin power", { package: "header-6", ...power }),
    part("F1", "fuse", "2 A slow", { ...power, notes: "In clips; the clips tire before the fuse does." }),
    part("S1", "switch", "reset push button", processor),
    part("J5", "connector", "tape", { package: "DIN-5", sheet: "5" }),
    part("J4", "connector", "video and sound", { package: "DIN-6", ...video }),
    part("J3", "connector", "keyboard tail", { package: "header-16", sheet: "5" }),
  ]),
  ...row(12, 30, [
    part("C20", "capacitor", "4700u 16V", { package: "radial-18", ...power }),
    chip("VR1", "7805", "TO-220", { ...power, notes: "On the aluminium plate; the pad under it dries out." }),
    part("CR1", "diode", "1N4002", power),
    part("CR2", "diode", "1N4002", power),
    part("C21", "capacitor", "470u 35V", { package: "radial-8", ...power }),
    chip("VR2", "7812", "TO-220", power),
    part("C22", "capacitor", "470u 35V", { package: "radial-8", ...power }),
    chip("VR3", "7905", "TO-220", power),
    part("C1", "capacitor", "10u 16V tantalum", processor),
    part("C2", "capacitor", "10u 25V tantalum", { ...power, notes: "On +12 V, close to the RAM." }),
    part("C3", "capacitor", "10u 16V tantalum", { ...power, notes: "On -5 V: its positive end is on ground." }),
    part("Q1", "transistor", "NPN small signal", { package: "TO-92", ...video }),
  ]),
  ...row(29, 54, [
    chip("U1", "z80cpu", "DIP-40", { socketed: true, ...processor }),
    chip("U2", "vq4-0061", "DIP-40", { socketed: true, code: "VQ4-0061-03", ...memory }),
    chip("U3", "vq4-0118", "DIP-28", { socketed: true, code: "VQ4-0118-01", sheet: "5" }),
    chip("U6", "8255", "DIP-40", { sheet: "5" }),
    part("Y1", "crystal", "14.000 MHz", processor),
    chip("U23", "74ls04", "DIP-14", processor),
  ]),
  ...row(21, 76, [
    chip("U4", "2764", "DIP-28", { socketed: true, ...memory, notes: "Image HF80 LOW, checksum 4D17." }),
    chip("U5", "2764", "DIP-28", { socketed: true, ...memory, notes: "Image HF80 HIGH, checksum A902." }),
    chip("U7", "74ls138", "DIP-16", memory),
    chip("U8", "74ls138", "DIP-16", { sheet: "5" }),
    chip("U25", "74ls08", "DIP-14", memory),
    chip("U29", "74ls32", "DIP-14", memory),
    chip("U24", "74ls74", "DIP-14", processor),
    chip("U27", "74ls14", "DIP-14", processor),
  ]),
  ...row(15, 97, [
    chip("U10", "74ls244", "DIP-20", processor),
    chip("U11", "74ls244", "DIP-20", processor),
    chip("U9", "74ls245", "DIP-20", processor),
    chip("U22", "74ls373", "DIP-20", memory),
    chip("U26", "74ls166", "DIP-16", video),
    chip("U12", "74ls257", "DIP-16", memory),
    chip("U13", "74ls257", "DIP-16", memory),
    chip("U28", "lm339", "DIP-14", { sheet: "5" }),
  ]),
  ...row(
    13,
    112,
    ["U14", "U15", "U16", "U17", "U18", "U19", "U20", "U21"].map((designator, bit) =>
      chip(designator, "4116", "DIP-16", { ...memory, notes: `Data bit ${bit}.` }),
    ),
  ),
  ...row(14, 126, [
    part("RN1", "resistor-pack", "8×10k", { package: "SIP-9", ...processor }),
    part("R1", "resistor", "10k", processor),
    part("R2", "resistor", "470R", video),
    part("R3", "resistor", "330R", { ...processor, notes: "Pulls the processor clock to full swing." }),
    part("C4", "capacitor", "100n", processor),
    part("C5", "capacitor", "100n", memory),
    part("C6", "capacitor", "100n", memory),
    part("C7", "capacitor", "100n", memory),
    part("TP1", "test-point", "CLK", processor),
    part("TP2", "test-point", "-5V", power),
  ]),
  ...row(47, 145, [
    part("J2", "connector", "expansion edge", { package: "edge-44", ...processor }),
    part("J6", "connector", "printer", { package: "header-26", sheet: "5" }),
  ]),
];

const connectors = [
  connector(
    "J1",
    "Power",
    "6-pin header",
    `1 VIN = VRAW
     2 GND
     3 AC1
     4 GND
     5 - 
     6 GND`,
  ),
  connector(
    "J2",
    "Expansion",
    "44-way edge connector, 3.96 mm",
    `${Array.from({ length: 16 }, (_, i) => `${i + 1} XA${i}`).join("\n")}
     ${Array.from({ length: 8 }, (_, i) => `${i + 17} XD${i}`).join("\n")}
     25 /RD
     26 /WR
     27 /MREQ
     28 /IORQ
     29 /M1
     30 /RESET
     31 CLK
     32 CLK2
     33 /WAIT
     34 /INT
     35 /NMI
     36 /RFSH
     37 +5V
     38 +5V
     39 +12V
     40 -5V
     41 GND
     42 GND
     43 GND
     44 GND`,
  ),
  connector(
    "J3",
    "Keyboard",
    "16-way membrane tail",
    `1 KC0
     2 KC1
     3 KC2
     4 KC3
     5 KC4
     6 KR0
     7 KR1
     8 KR2
     9 KR3
     10 XA8
     11 XA9
     12 XA10
     13 XA11
     14 GND
     15 +5V
     16 GND`,
  ),
  connector(
    "J4",
    "Video and sound",
    "6-pin DIN",
    `1 VIDEO = VIDOUT
     2 GND
     3 SOUND
     4 +12V
     5 /HSYNC
     6 /VSYNC`,
  ),
  connector(
    "J5",
    "Tape",
    "5-pin DIN",
    `1 OUT = TAPEOUT
     2 GND
     3 IN = EARIN
     4 -
     5 -`,
  ),
  connector(
    "J6",
    "Printer",
    "26-way header",
    `1 /STROBE = PSTB
     ${Array.from({ length: 8 }, (_, i) => `${i + 2} PD${i}`).join("\n")}
     10 /ACK = PACK
     11 BUSY = PBUSY
     12 +5V
     ${Array.from({ length: 13 }, (_, i) => `${i + 13} GND`).join("\n")}
     26 -`,
  ),
];

const ram = ["U14", "U15", "U16", "U17", "U18", "U19", "U20", "U21"];
const ramPin = (pin: number): string => ram.map((one) => `${one}.${pin}`).join(" ");
const ramAddress = Object.fromEntries(ram.map((one) => [one, DRAM.address.slice(0, 7)]));

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  decoupling("+5V", "C4 C5 C6 C7"),
  [
    net("power", "+5V", "VR1.3 RN1.1 R1.1 R3.1 U24.1 U24.4 U24.10 U24.13 U28.3 Q1.C"),
    net("power", "+12V", "VR2.3 C2.1"),
    net("power", "-5V", "VR3.3 C3.2 TP2.1"),
    net("ground", "GND", "VR1.2 VR2.2 VR3.1 C20.2 C21.2 C22.1 C2.2 C3.1 C1.2 S1.2 U28.12"),
    net("ground", "GND", "U10.1 U10.19 U11.1 U11.19 U26.1 U26.6 U24.11 U24.12"),
    net(
      "ground",
      "GND",
      "U7.5 U25.4 U25.5 U13.13 U13.14 U28.4 U23.9 U23.11 U23.13 U27.5 U27.11 U27.13 U25.9 U25.10 U25.12 U25.13 U29.9 U29.10 U29.12 U29.13",
    ),
    net("power", "VRAW", "F1.1"),
    net("power", "VFUSED", "F1.2 C20.1 VR1.1"),
    net("power", "AC1", "CR1.A CR2.K"),
    net("power", "V+RAW", "CR1.K C21.1 VR2.1"),
    net("power", "V-RAW", "CR2.A C22.2 VR3.2"),
  ],
  bus("address", "A", {
    U1: Z80.address,
    U4: ROM_28.address.slice(0, 13),
    U5: ROM_28.address.slice(0, 13),
    U10: LS244.inputs,
    U12: [2, 5, 11, 14],
  }),
  bus("address", "A", { U11: LS244.inputs }, 8),
  bus("address", "A", { U13: [2, 5, 11] }, 4),
  bus("address", "A", { U12: LS157.b }, 7),
  bus("address", "A", { U13: [3, 6, 10] }, 11),
  bus("address", "XA", { U10: LS244.outputs }),
  bus("address", "XA", { U11: LS244.outputs }, 8),
  bus("address", "MA", { U12: LS157.y, U2: [15, 16, 17, 18, 19, 21, 22], ...ramAddress }),
  bus("address", "MA", { U13: [4, 7, 9] }, 4),
  bus("data", "D", {
    U1: Z80.data,
    U2: [30, 31, 32, 33, 34, 35, 36, 37],
    U3: [1, 2, 3, 4, 5, 6, 7, 8],
    U4: ROM_28.data,
    U5: ROM_28.data,
    U6: PPI_8255.data,
    U9: LS245.a,
    U22: LS373.q,
  }),
  ram.map((one, bit) => net("data", `D${bit}`, `${one}.2`)),
  bus("data", "XD", { U9: LS245.b }),
  bus("data", "RQ", { U22: LS373.d, U26: LS166.parallel }),
  ram.map((one, bit) => net("data", `RQ${bit}`, `${one}.14`)),
  [
    net("clock", "XTAL1", "Y1.1 U23.1"),
    net("clock", "XTAL2", "Y1.2 U23.2 U23.3"),
    net("clock", "CLK14", "U23.4 U2.1"),
    net("clock", "CPUCLK", "U2.2 U23.5"),
    net("clock", "CLK", "U23.6 R3.2 U1.6 U24.3 TP1.1"),
    net("clock", "CLK2", "U24.5 U3.27"),
    net("signal", "CLK2N", "U24.2 U24.6"),
    net("clock", "DOTCLK", "U2.25 U26.7"),
    net("reset", "POR", "R1.2 C1.1 S1.1 U27.1"),
    net("reset", "RESETH", "U27.2 U27.3 U6.35"),
    net("reset", "/RESET", "U27.4 U1.26 U2.3 U3.13"),
    net("select", "/ROM0", "U7.15 U4.20"),
    net("select", "/ROM1", "U7.14 U5.20"),
    net("select", "/RAM4", "U7.13 U25.2"),
    net("select", "/RAM6", "U7.12 U25.1"),
    net("select", "/RAMCS", "U25.3 U2.8 U29.1"),
    net("select", "/IO-PPI", "U8.15 U6.6"),
    net("select", "/IO-VID", "U8.14 U2.38"),
    net("select", "/IO-KBD", "U8.13 U3.10"),
    net("select", "/RAMRD", "U29.3 U22.1"),
    net("select", "A15N", "U27.8 U29.4"),
    net("select", "/XEN", "U29.6 U9.19"),
    net("address", "A13", "U7.1"),
    net("address", "A14", "U7.2"),
    net("address", "A15", "U7.3 U27.9"),
    net("address", "A4", "U8.1"),
    net("address", "A5", "U8.2"),
    net("address", "A6", "U8.3"),
    net("address", "A7", "U8.5"),
    net("address", "A0", "U2.39 U3.9 U6.9"),
    net("address", "A1", "U6.8"),
    net("control", "/MREQ", "U1.19 U2.4 U7.4 U29.5 RN1.2"),
    net("control", "/IORQ", "U1.20 U8.4 RN1.3"),
    net("control", "/RD", "U1.21 U2.6 U3.11 U4.22 U5.22 U6.5 U9.1 U29.2 RN1.4"),
    net("control", "/WR", "U1.22 U2.7 U3.12 U6.36 RN1.5"),
    net("control", "/M1", "U1.27 U8.6"),
    net("control", "/RFSH", "U1.28 U2.5 U7.6"),
    net("control", "/WAIT", "U1.24 U2.9 RN1.6"),
    net("control", "/INT", "U1.16 U2.29 RN1.7"),
    net("control", "/NMI", "U1.17 RN1.8"),
    net("control", "/BUSRQ", "U1.25 RN1.9"),
    net("control", "/HALT", "U1.18"),
    net("control", "/RAS", `U2.10 ${ramPin(4)}`),
    net("control", "/CAS", `U2.11 ${ramPin(15)}`),
    net("control", "/RAMWE", `U2.13 ${ramPin(3)}`),
    net("control", "MUX", "U2.12 U12.1 U13.1"),
    net("control", "/VGATE", "U2.23 U12.15 U13.15"),
    net("control", "LATCH", "U2.14 U22.11"),
    net("control", "/SHLD", "U2.24 U26.15"),
    net("control", "/BLANK", "U2.28 U26.9"),
    net("signal", "/HSYNC", "U2.26"),
    net("signal", "/VSYNC", "U2.27"),
    net("signal", "VIDEO", "U26.13 R2.1"),
    net("signal", "VIDBASE", "R2.2 Q1.B"),
    net("signal", "VIDOUT", "Q1.E"),
    net("signal", "SOUND", "U3.20"),
    net("signal", "EARIN", "U28.5"),
    net("signal", "TAPEIN", "U28.2 U3.21"),
    net("signal", "TAPEOUT", "U3.22"),
    net("signal", "PSTB", "U6.14"),
    net("signal", "PACK", "U6.12"),
    net("signal", "PBUSY", "U6.13"),
  ],
  bus("signal", "KC", { U3: [15, 16, 17, 18, 19] }),
  bus("signal", "KR", { U3: [23, 24, 25, 26] }),
  bus("data", "PD", { U6: PPI_8255.portA }),
);

export const board: SeedBoard = {
  slug: "harrow-80",
  name: "Harrow-80 main board",
  kind: "home-computer",
  maker: "Harrow Fen",
  machine: "Harrow-80",
  year: 1983,
  summary:
    "The whole of a small home computer on one board: Z80 at 3.5 MHz, 16 KB of dynamic RAM shared with the picture, BASIC in two EPROMs, keyboard, tape and printer.",
  notes: `One custom, U2, makes every clock on the board, so a dead board has few places to look: the crystal oscillator
around U23, U2 itself, and what can hold the processor.

- **Shared RAM.** U2 takes the RAM for the picture while the processor is in the second half of its cycle. U12 and U13
  must let go (outputs three-state) when /VGATE is high; if one does not, the picture shows the address lines.
- **Rails in order.** U14 to U21 are 4116: they want -5 V first and last. VR3 and its diode CR2 are the first thing to
  look at on a board that ate RAM.
- **A picture without a program** is worth much: stable sync with random squares means U2, Y1 and the RAM's supply are
  well, and the processor is not running.
- Sockets of U1 to U5 are single-wipe. Reseat them all before any thinking.

:chip[74ls257] and :chip[74ls157] have the same pins but for pin 15; a 157 in U12 drives always and fights U2.`,
  width: 300,
  height: 165,
  hazards: [],
  highestVoltage: 24,
  revisions: [
    { name: "Issue 1", notes: "U2 is -02 and the RAM must be 150 ns. R3 missing, bodged on the solder side." },
    { name: "Issue 2", notes: "R3 on the board. Tantalum C3 moved away from VR3's heat." },
    { name: "Issue 3", notes: "Late boards with parts of other houses: SM0612P at U2, KL/0418/2 at U3." },
  ],
  rails: [
    { name: "VRAW", nominal: 9, tolerancePercent: 15, regulated: false, notes: "From the brick, before F1." },
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "VR1" },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "VR2" },
    { name: "-5V", nominal: -5, tolerancePercent: 5, regulated: true, source: "VR3", notes: "RAM bias, a few mA." },
    {
      name: "AC1",
      nominal: 15,
      ac: true,
      tolerancePercent: 10,
      regulated: false,
      notes: "Half-wave: CR1 up, CR2 down.",
    },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "beeps", signal: "1 long", meaning: "ROM checksum wrong", suspects: ["U4", "U5", "U7"] },
    {
      form: "beeps",
      signal: "2 short",
      meaning: "RAM does not hold in the lower half",
      suspects: ["U14", "U21", "U12"],
    },
    { form: "beeps", signal: "3 short", meaning: "no RAM answers at all", suspects: ["U2", "U25", "VR3", "U22"] },
    { form: "message", signal: "KEY?", meaning: "a key column reads down at start", suspects: ["U3", "J3"] },
  ],
  cautions: [
    { at: "VR3", text: "Measure -5 V at TP2 before the RAM goes in: 4116 without it die within seconds." },
    { at: "C3", text: "C3 sits with its positive end on ground. Fitted like its neighbours it burns." },
    { at: "U2", text: "U2 is not made any more. Earth yourself, and never pull it with power on." },
    { at: "J2", text: "Edge connector off by one puts +12 V on +5 V. Count from the notch." },
  ],
  copies: [
    { owner: "bram", tag: "HF-BRAM-1", serial: "HF8-02217", revision: "Issue 2", works: true, jumpers: "none" },
    {
      owner: "otto",
      tag: "HF-OTTO",
      serial: "HF8-00391",
      revision: "Issue 1",
      modifications: "R3 330R bodged from U23.6 to +5 V",
      works: true,
    },
    {
      owner: "mirela",
      tag: "HF-MIR",
      serial: "HF8-01804",
      revision: "Issue 2",
      works: true,
      contents: "U4 and U5 read and kept by mirela",
    },
    { owner: "kaisa", tag: "HF-KAI", serial: "HF8-07733", revision: "Issue 3", works: null },
    {
      owner: "pim",
      tag: "HF-PIM",
      serial: "HF8-03310",
      revision: "Issue 2",
      works: false,
      modifications: "sockets under all RAM, by a previous owner",
    },
  ],
};
