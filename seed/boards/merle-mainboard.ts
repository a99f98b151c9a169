import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  ACIA_6551,
  CPU_6502,
  DRAM,
  LS157,
  LS244,
  LS245,
  RAM_6116,
  ROM_28,
  VIA_6522,
  across,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const processor = { sheet: "1" };
const memory = { sheet: "2" };
const ports = { sheet: "3" };
const sound = { sheet: "4" };

const ram = ["U15", "U16", "U17", "U18", "U19", "U20", "U21", "U22"];

const placements = [
  ...row(14, 10, [
    part("J1", "connector", "power", { package: "DIN-5", ...processor }),
    part("J6", "connector", "video and sound", { package: "DIN-6", ...sound }),
    part("J4", "connector", "serial", { package: "DE9", ...ports }),
    part("J2", "connector", "keyboard", { package: "header-20", ...ports }),
    part("BT1", "battery", "3.6 V NiCd, 60 mAh", { ...memory, notes: "Leaks towards U32 and U24." }),
    part("CR1", "diode", "1N5817", memory),
    part("R4", "resistor", "1k", { ...memory, notes: "Charges BT1." }),
    part("C20", "capacitor", "470u 16V", { package: "radial-8", ...processor }),
    part("C21", "capacitor", "10u 25V tantalum", { ...processor, notes: "On +12 V." }),
  ]),
  ...row(29, 34, [
    chip("U1", "6502", "DIP-40", { socketed: true, ...processor }),
    chip("U2", "6522", "DIP-40", { ...ports, notes: "Keyboard." }),
    chip("U3", "6522", "DIP-40", { ...ports, notes: "User port." }),
    chip("U4", "6551", "DIP-28", ports),
    chip("U29", "ne555", "DIP-8", processor),
  ]),
  ...row(12, 58, [
    chip("U7", "or-27-041", "PLCC-44", { socketed: true, code: "OR 27-041B", ...memory }),
    chip("U5", "kl-0231", "DIP-28", { socketed: true, code: "KL/0231/2", ...memory }),
    chip("U6", "27c256", "DIP-28", { socketed: true, ...memory, notes: "Language image, checksum C0E9." }),
    chip("U32", "6116", "DIP-24", { ...memory, notes: "Settings, kept by BT1." }),
    chip("U8", "or-27-066", "SOIC-28", { code: "OR 27-066A", ...sound }),
    part("U35", "chip", "unknown custom", { package: "DIP-16", code: "VQ4-0907-01", ...sound }),
    chip("U28", "lm324", "DIP-14", sound),
    part("Y1", "crystal", "16.000 MHz", processor),
  ]),
  ...row(14, 82, [
    chip("U9", "74ls138", "DIP-16", processor),
    chip("U10", "74ls245", "DIP-20", ports),
    chip("U11", "74ls244", "DIP-20", ports),
    chip("U12", "74ls244", "DIP-20", ports),
    chip("U13", "74ls157", "DIP-16", memory),
    chip("U14", "74ls157", "DIP-16", memory),
    chip("U33", "74ls157", "DIP-16", memory),
    chip("U34", "74ls157", "DIP-16", memory),
    part("Q1", "transistor", "NPN small signal", { package: "TO-92", ...sound }),
    part("R3", "resistor", "75R", sound),
  ]),
  ...row(
    13,
    97,
    ram.map((designator, bit) => chip(designator, "4164", "DIP-16", { ...memory, notes: `Data bit ${bit}.` })),
  ),
  ...row(14, 112, [
    chip("U23", "74ls04", "DIP-14", processor),
    chip("U24", "74ls74", "DIP-14", processor),
    chip("U25", "74ls00", "DIP-14", processor),
    chip("U26", "mc1488", "DIP-14", ports),
    chip("U27", "mc1489", "DIP-14", ports),
    part("RN1", "resistor-pack", "8×3k3", { package: "SIP-9", ...processor }),
    part("Y2", "crystal", "1.8432 MHz", ports),
    part("R1", "resistor", "220k", processor),
  ]),
  ...row(10, 127, [
    part("C1", "capacitor", "2u2 tantalum", processor),
    part("C2", "capacitor", "100n", processor),
    part("C3", "capacitor", "100n", memory),
    part("C4", "capacitor", "100n", memory),
    part("C5", "capacitor", "100n", memory),
    part("C6", "capacitor", "100n", ports),
    part("C11", "capacitor", "1n5", sound),
    part("C12", "capacitor", "1n5", sound),
    part("JP1", "jumper", "U6 upper half", { ...memory, notes: "1-2 lower half, as delivered." }),
  ]),
  ...row(53, 145, [
    part("J3", "connector", "expansion edge", { package: "edge-50", ...ports }),
    part("J5", "connector", "user port", { package: "header-20", ...ports }),
  ]),
];

const numbered = (name: string, from: number, count = 8): string =>
  Array.from({ length: count }, (_, i) => `${from + i} ${name}${i}`).join("\n");

const connectors = [
  connector(
    "J1",
    "Power",
    "5-pin DIN",
    `1 +5V
     2 GND
     3 +12V
     4 -12V
     5 +5V`,
  ),
  connector(
    "J2",
    "Keyboard",
    "20-way header",
    `${numbered("KR", 1)}
     ${numbered("KC", 9)}
     17 /NMI
     18 +5V
     19 GND
     20 -`,
  ),
  connector(
    "J3",
    "Expansion",
    "50-way edge connector, 3.96 mm",
    `${numbered("XA", 1, 16)}
     ${numbered("XD", 17)}
     25 RW
     26 PHI2
     27 /RES
     28 /IRQ
     29 /NMI
     30 RDY
     31 SYNC
     32 /XSEL
     33 CLK8
     34 +12V
     35 -12V
     ${Array.from({ length: 4 }, (_, i) => `${36 + i} +5V`).join("\n")}
     ${Array.from({ length: 8 }, (_, i) => `${40 + i} GND`).join("\n")}
     48 EXTSND
     49 -
     50 -`,
  ),
  connector(
    "J4",
    "Serial",
    "DE-9 plug",
    `1 DCD = SDCD
     2 RXD = SRXD
     3 TXD = STXD
     4 DTR = SDTR
     5 GND
     6 DSR = SDSR
     7 RTS = SRTS
     8 CTS = SCTS
     9 -`,
  ),
  connector(
    "J5",
    "User port",
    "20-way header",
    `${numbered("UA", 1)}
     ${numbered("UB", 9)}
     17 UCB1
     18 UCB2
     19 +5V
     20 GND`,
  ),
  connector(
    "J6",
    "Video and sound",
    "6-pin DIN",
    `1 VIDEO = VIDOUT
     2 GND
     3 LEFT = AUDL
     4 RIGHT = AUDR
     5 /CSYNC
     6 +12V`,
  ),
];

const eachRam = (pin: number): string => ram.map((one) => `${one}.${pin}`).join(" ");

const nets = netlist(
  connectors,
  supplyNets(placements, chips, ["U32"]),
  decoupling("+5V", "C2 C3 C4 C5 C6 C20"),
  across("+12V", "GND", ["power", "ground"], "C21"),
  [
    net("power", "+5V", "U29.8 U29.4 U35.16 U2.24 U3.24 U4.2 U9.6 U24.1 U24.4 U24.10 U24.13 RN1.1 R1.1 CR1.A Q1.C"),
    net("power", "+12V", "U28.4"),
    net("power", "-12V", "U28.11"),
    net("ground", "GND", "U29.1 U35.8 U32.12 U11.1 U11.19 U12.1 U12.19 U13.15 U14.15 U33.15 U34.15 BT1.2 C1.2"),
    net("ground", "GND", "U23.5 U24.11 U24.12 U25.12 U25.13 U26.12 U26.13 U28.10 U28.12 JP1.1"),
    net("power", "VRAM", "CR1.K R4.1 U32.24"),
    net("power", "VBAT", "R4.2 BT1.1"),
    net("address", "U6A14", "JP1.2 U6.27"),
  ],
  bus("address", "A", {
    U1: CPU_6502.address,
    U5: ROM_28.address.slice(0, 14),
    U6: ROM_28.address.slice(0, 14),
    U11: LS244.inputs,
    U32: RAM_6116.address,
    U13: LS157.a,
    U8: [9, 10, 11, 12, 13],
    U2: VIA_6522.select,
    U3: VIA_6522.select,
    U4: [13, 14],
  }),
  bus("address", "A", { U14: LS157.a, U9: [1, 2, 3, 5] }, 4),
  bus("address", "A", { U12: LS244.inputs, U13: LS157.b }, 8),
  bus("address", "A", { U14: LS157.b, U7: [7, 8, 9, 10] }, 12),
  bus("address", "XA", { U11: LS244.outputs }),
  bus("address", "XA", { U12: LS244.outputs }, 8),
  bus("address", "CA", { U13: LS157.y, U33: LS157.a }),
  bus("address", "CA", { U14: LS157.y, U34: LS157.a }, 4),
  bus("address", "VA", { U7: [17, 18, 19, 20, 21, 22, 24, 25], U33: LS157.b }),
  bus("address", "VA", { U34: LS157.b }, 4),
  bus("address", "MA", { U33: LS157.y, ...Object.fromEntries(ram.map((one) => [one, DRAM.address])) }),
  bus("address", "MA", { U34: LS157.y }, 4),
  bus("data", "D", {
    U1: CPU_6502.data,
    U2: VIA_6522.data,
    U3: VIA_6522.data,
    U4: ACIA_6551.data,
    U5: ROM_28.data,
    U6: ROM_28.data,
    U7: [28, 29, 30, 31, 32, 33, 35, 36],
    U8: [1, 2, 3, 4, 5, 6, 7, 8],
    U10: LS245.a,
    U32: RAM_6116.data,
  }),
  ram.map((one, bit) => net("data", `D${bit}`, `${one}.2 ${one}.14`)),
  bus("data", "XD", { U10: LS245.b }),
  bus("signal", "KR", { U2: VIA_6522.portA }),
  bus("signal", "KC", { U2: VIA_6522.portB }),
  bus("signal", "UA", { U3: VIA_6522.portA }),
  bus("signal", "UB", { U3: VIA_6522.portB }),
  bus("signal", "L", { U7: [37, 38, 39], U35: [1, 2, 3] }),
  [
    net("clock", "XTALA", "Y1.1 U23.1"),
    net("clock", "XTALB", "Y1.2 U23.2 U23.3"),
    net("clock", "CLK16", "U23.4 U7.2 U24.3"),
    net("clock", "CLK8", "U24.5 U35.4"),
    net("signal", "CLK8N", "U24.2 U24.6"),
    net("clock", "PHI0", "U7.3 U1.37"),
    net("clock", "PHI2", "U1.39 U2.25 U3.25 U4.27 U7.4 U8.17 U25.5 U25.10"),
    net("clock", "BAUDX1", "Y2.1 U4.6"),
    net("clock", "BAUDX2", "Y2.2 U4.7"),
    net("reset", "PORC", "R1.2 C1.1 U29.2 U29.6"),
    net("reset", "RESP", "U29.3 U23.13"),
    net("reset", "/RES", "U23.12 U1.40 U2.34 U3.34 U4.4 U7.6 U8.18"),
    net("control", "RW", "U1.34 U2.22 U3.22 U4.28 U7.5 U8.16 U10.1 U25.4 U23.11"),
    net("control", "NRW", "U23.10 U25.9"),
    net("control", "/RD", "U25.6 U5.22 U6.22 U32.20"),
    net("control", "/WR", "U25.8 U32.21"),
    net("address", "A14", "U23.9"),
    net("address", "NA14", "U23.8 U25.2"),
    net("address", "A15", "U25.1"),
    net("select", "/ROM8", "U25.3 U6.20"),
    net("select", "/ROMEN", "U7.26 U5.20"),
    net("select", "/IOEN", "U7.40 U9.4"),
    net("select", "/VIA1", "U9.15 U2.23"),
    net("select", "/VIA2", "U9.14 U3.23"),
    net("select", "/ACIA", "U9.13 U4.3"),
    net("select", "/REGCS", "U9.12 U7.27"),
    net("select", "/SND", "U9.11 U8.15"),
    net("select", "/CMOS", "U9.10 U32.18"),
    net("select", "/XSEL", "U9.9 U10.19"),
    net("control", "/IRQ", "U1.4 U2.21 U3.21 U4.26 U7.42 RN1.2"),
    net("control", "/NMI", "U1.6 RN1.3"),
    net("control", "RDY", "U1.2 RN1.4"),
    net("control", "SO", "U1.38 RN1.5"),
    net("control", "SYNC", "U1.7"),
    net("control", "/RAS", `U7.11 ${eachRam(4)}`),
    net("control", "/CAS", `U7.13 ${eachRam(15)}`),
    net("control", "/RAMWE", `U7.15 ${eachRam(3)}`),
    net("control", "MUX", "U7.14 U13.1 U14.1"),
    net("control", "/VGATE", "U7.16 U33.1 U34.1"),
    net("signal", "/CSYNC", "U7.41 U35.5"),
    net("signal", "VIDBASE", "U35.12 Q1.B"),
    net("signal", "VIDEM", "Q1.E R3.1"),
    net("signal", "VIDOUT", "R3.2"),
    net("signal", "OUTL", "U8.19 U28.3"),
    net("signal", "OUTR", "U8.20 U28.5"),
    net("signal", "AUDL", "U28.1 U28.2"),
    net("signal", "AUDR", "U28.6 U28.7"),
    net("signal", "EXTSND", "U8.21"),
    net("signal", "FILT1A", "U8.22 C11.1"),
    net("signal", "FILT1B", "U8.23 C11.2"),
    net("signal", "FILT2A", "U8.24 C12.1"),
    net("signal", "FILT2B", "U8.25 C12.2"),
    net("signal", "TXD", "U4.10 U26.2"),
    net("signal", "RTS", "U4.8 U26.4 U26.5"),
    net("signal", "DTR", "U4.11 U26.9 U26.10"),
    net("signal", "RXD", "U4.12 U27.3"),
    net("signal", "CTS", "U4.9 U27.6"),
    net("signal", "DSR", "U4.17 U27.8"),
    net("signal", "DCD", "U4.16 U27.11"),
    net("signal", "STXD", "U26.3"),
    net("signal", "SRTS", "U26.6"),
    net("signal", "SDTR", "U26.8"),
    net("signal", "SRXD", "U27.1"),
    net("signal", "SCTS", "U27.4"),
    net("signal", "SDSR", "U27.10"),
    net("signal", "SDCD", "U27.13"),
    net("signal", "UCB1", "U3.18"),
    net("signal", "UCB2", "U3.19"),
  ],
);

export const board: SeedBoard = {
  slug: "merle-mainboard",
  name: "Merle 64 main board",
  kind: "home-computer",
  maker: "Merle & Tull",
  machine: "Merle 64",
  year: 1985,
  summary:
    "6502 computer with 64 KB of dynamic RAM, a controller in PLCC-44 that shares the memory with the picture, three-voice sound, serial port and battery-backed settings.",
  notes: `The controller U7 sees only A12 to A15 and tells the rest of the board what is ROM and what is input and output.
The processor clock PHI0 comes from it too.

| what you see | look first at |
|---|---|
| black, no sync | Y1, U23, U7's socket |
| stable picture of one colour | U1, U5, /RES |
| picture well, no keys | U2, J2, BT1's leak under U24 |
| picture well, no sound | +12 V at J1.3, then U8 |
| forgets its settings | BT1, CR1, U32 |

**The battery.** BT1 has leaked on every board we have seen. The green goes along the ground trace under U24 and U32.
Take it out before anything else, after writing the settings down. :chip[6116] itself nearly always survives.

U35 is an unknown: :code[VQ4-0907-01]. If you have one that is dead, please keep it.`,
  width: 270,
  height: 165,
  hazards: ["battery"],
  highestVoltage: 12,
  revisions: [
    { name: "Issue A", notes: "KL/0231/1 in U5. Battery soldered flat to the board." },
    { name: "Issue B", notes: "KL/0231/2. Battery on two short legs, which leaks no less." },
    { name: "Issue C", notes: "Second-source parts: OR 27-041C or BW 00713 C at U7, SM0266F at U8." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "J1", notes: "Made in the brick." },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "J1", notes: "Sound and serial only." },
    { name: "-12V", nominal: -12, tolerancePercent: 10, regulated: true, source: "J1", notes: "Serial and U28 only." },
    {
      name: "VRAM",
      nominal: 4.7,
      tolerancePercent: 8,
      regulated: false,
      source: "CR1",
      notes: "With power on; 3.4 V on the battery.",
    },
    { name: "VBAT", nominal: 3.6, tolerancePercent: 10, regulated: false, source: "BT1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "beeps", signal: "1 low, 1 high", meaning: "system ROM checksum wrong", suspects: ["U5", "U7"] },
    {
      form: "beeps",
      signal: "2 low",
      meaning: "RAM fault, the number of high beeps that follow is the data bit",
      suspects: ram,
    },
    { form: "message", signal: "CLOCK SETTINGS LOST", meaning: "U32 does not hold", suspects: ["BT1", "CR1", "U32"] },
    { form: "message", signal: "VIA 1", meaning: "timer of U2 does not count", suspects: ["U2", "U9"] },
    { form: "message", signal: "VIA 2", meaning: "timer of U3 does not count", suspects: ["U3", "U9"] },
  ],
  cautions: [
    { at: "BT1", text: "U32 keeps the owner's settings and the serial log-on. Write them down before BT1 comes out." },
    {
      at: "U7",
      text: "Use a PLCC puller in both corners by turns. The socket's corner contacts do not survive a screwdriver.",
    },
    { at: "J1", text: "Pins 1 and 5 are both +5 V; 3 is +12 V. A plug forced one turn off puts +12 V on the logic." },
  ],
  copies: [
    {
      owner: "greta",
      tag: "MT-GRE",
      serial: "M64-11820",
      revision: "Issue B",
      works: true,
      contents: "settings listed on the bag",
    },
    {
      owner: "pim",
      tag: "MT-PIM",
      serial: "M64-02911",
      revision: "Issue A",
      works: true,
      modifications: "battery moved off the board on wires",
    },
    { owner: "anouk", tag: "MT-ANO", serial: "M64-20475", revision: "Issue C", works: true },
    {
      owner: "kaisa",
      tag: "MT-KAI",
      serial: "M64-19002",
      revision: "Issue C",
      works: true,
      modifications: "C11 and C12 changed to 2n2",
    },
    {
      owner: "ines",
      tag: "MT-CLUB",
      serial: "M64-07755",
      revision: "Issue B",
      works: null,
      modifications: "donor board, no battery",
    },
  ],
};
