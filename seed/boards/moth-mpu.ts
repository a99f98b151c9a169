import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  CPU_6809,
  LS244,
  RAM_6116,
  ROM_28,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const processor = { sheet: "1" };
const memory = { sheet: "1" };
const matrix = { sheet: "2" };
const panel = { sheet: "3" };

const placements = [
  ...row(24, 14, [
    part("J1", "connector", "driver board", { package: "header-26", ...matrix }),
    14,
    part("J2", "connector", "switches", { package: "header-20", ...matrix }),
    14,
    part("J3", "connector", "displays and sound", { package: "header-20", ...panel }),
    14,
    part("SW1", "switch", "8-way DIP switch", { package: "DIP-16", ...panel }),
    part("RN3", "resistor-pack", "8×4k7", { package: "SIP-9", ...panel }),
  ]),
  ...row(32, 40, [
    chip("U1", "6809", "DIP-40", { socketed: true, ...processor }),
    chip("U2", "27c256", "DIP-28", { socketed: true, ...memory, notes: "Program." }),
    chip("U3", "hdl-c52", "QFP-80", { code: "HDL-C52-08", ...matrix }),
    part("U14", "chip", "unknown custom", { package: "PLCC-44", code: "VQ4-0899-01", socketed: true, ...processor }),
    chip("U15", "74ls244", "DIP-20", panel),
    chip("U11", "74ls374", "DIP-20", panel),
  ]),
  ...row(24, 70, [
    part("Y1", "crystal", "4.000 MHz", processor),
    part("C1", "capacitor", "22p", processor),
    part("C2", "capacitor", "22p", processor),
    chip("U12", "74ls04", "DIP-14", processor),
    chip("U5", "74ls138", "DIP-16", processor),
    chip("U13", "ne555", "DIP-8", { ...processor, notes: "Reset pulse at power-on." }),
    part("RN1", "resistor-pack", "8×10k", { package: "SIP-9", ...matrix }),
    chip("U8", "lm339", "DIP-14", { ...matrix, notes: "Switch rows 0 to 3." }),
    chip("U9", "lm339", "DIP-14", { ...matrix, notes: "Switch rows 4 to 7." }),
    part("RN2", "resistor-pack", "8×1k", { package: "SIP-9", ...matrix }),
  ]),
  ...row(34, 96, [
    part("BT1", "battery", "3.6 V NiCd", { package: "battery-3", ...memory, notes: "It leaks. Not if: when." }),
    chip("U4", "6116", "DIP-24", { ...memory, notes: "High scores, audits, settings." }),
    chip("U7", "4011", "DIP-14", { ...memory, notes: "Keeps U4 shut while the power fails." }),
    chip("U10", "uln2003", "DIP-16", { ...matrix, notes: "Switch columns 0 to 6." }),
    part("Q1", "transistor", "NPN", { package: "TO-92", ...matrix, notes: "Switch column 7." }),
    part("R6", "resistor", "2k2", matrix),
    part("R2", "resistor", "10k", { ...matrix, notes: "VTH." }),
    part("R3", "resistor", "3k3", { ...matrix, notes: "VTH." }),
    part("LED1", "diode", "red LED", panel),
    part("R7", "resistor", "330R", panel),
  ]),
  ...row(14, 116, [
    part("R1", "resistor", "220R", { ...memory, notes: "Charges BT1." }),
    part("CR1", "diode", "1N5817", { ...memory, notes: "+5V to VRAM." }),
    part("CR2", "diode", "1N4148", { ...memory, notes: "BT1 to VRAM." }),
    part("CR3", "diode", "1N4148", { ...memory, notes: "Charge." }),
    part("C3", "capacitor", "100n", { ...memory, notes: "VRAM." }),
    part("R4", "resistor", "100k", { ...processor, notes: "Length of reset." }),
    part("C4", "capacitor", "4u7 16V tantalum", { ...processor, notes: "Length of reset." }),
    part("R5", "resistor", "10k", processor),
    part("C5", "capacitor", "100n", processor),
    part("R8", "resistor", "4k7", { ...processor, notes: "/HALT and friends." }),
    part("R9", "resistor", "4k7", { ...processor, notes: "/IRQ." }),
    part("R10", "resistor", "10k", { ...memory, notes: "RAMSEL, up to VRAM." }),
    part("C6", "capacitor", "100n", processor),
    part("C7", "capacitor", "100n", matrix),
    part("C8", "capacitor", "22u 16V tantalum", { ...processor, notes: "On +5V." }),
    part("C9", "capacitor", "10n", { ...processor, notes: "U13, control." }),
    part("TP1", "test-point", "E", processor),
    part("TP2", "test-point", "VRAM", memory),
  ]),
];

const list = (from: number, count: number, name: string) =>
  Array.from({ length: count }, (_, index) => `${from + index} ${name}${index}`).join("\n");

const connectors = [
  connector(
    "J1",
    "Driver board",
    "26-way header",
    `${list(1, 8, "SD")}
     9 SSTB0
     10 SSTB1
     11 /BLANK
     12 WDSTB
     13 /TRIP
     14 /RESET
     15 LC0
     16 LC1
     17 LC2
     18 LC3
     19 GND
     20 GND
     21 GND
     22 GND
     23 +5V
     24 +5V
     25 +12V
     26 ZC`,
  ),
  connector(
    "J2",
    "Switches",
    "20-way header",
    `${list(1, 8, "COL")}\n${list(9, 8, "ROW")}\n17 GND\n18 +12V\n19 -\n20 -`,
  ),
  connector(
    "J3",
    "Displays and sound",
    "20-way header",
    `${list(1, 7, "LAT")}\n8 LATSTB = /LATCH\n9 /RESET\n10 GND\n11 GND\n12 +5V\n${Array.from({ length: 8 }, (_, i) => `${13 + i} -`).join("\n")}`,
  ),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips, ["U4"]),
  decoupling("+5V", "C6 C7"),
  [
    net("power", "+5V", "U13.8 U13.4 U14.1 U14.23 RN1.1 RN3.1 CR1.A CR3.A R4.1 R5.1 R8.1 R9.1 C8.1"),
    net("power", "+12V", "U8.3 U9.3 U10.9 RN2.1 R2.1"),
    net("power", "VRAM", "CR1.K CR2.K U4.24 U7.14 C3.1 R10.1 TP2.1"),
    net("power", "VBAT", "BT1.1 CR2.A R1.2"),
    net("power", "CHARGE", "CR3.K R1.1"),
    net(
      "ground",
      "GND",
      "BT1.2 U4.12 U7.7 U8.12 U9.12 U13.1 U14.12 U14.34 C1.2 C2.2 C3.2 C4.2 C5.2 C8.2 C9.2 R3.2 Q1.E",
    ),
    net("ground", "GND", "SW1.9 SW1.10 SW1.11 SW1.12 SW1.13 SW1.14 U11.1 U5.4 U5.5 U7.8 U7.9 U7.12 U7.13 LED1.K"),
    net("ground", "GND", "U12.11 U12.13"),
  ],
  bus("address", "A", {
    U1: CPU_6809.address,
    U2: ROM_28.address,
    U4: RAM_6116.address,
    U3: [10, 11, 12, 13],
    U14: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 4, 5, 6],
    U5: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3],
  }),
  bus("data", "D", {
    U1: CPU_6809.data,
    U2: ROM_28.data,
    U4: RAM_6116.data,
    U3: [2, 3, 4, 5, 6, 7, 8, 9],
    U11: [3, 4, 7, 8, 13, 14, 17, 18],
    U15: LS244.outputs,
    U14: [8, 9, 10, 11],
  }),
  bus("signal", "OPT", {
    U15: [2, 4, 6, 8, 11, 13],
    SW1: [1, 2, 3, 4, 5, 6],
    RN3: [2, 3, 4, 5, 6, 7],
  }),
  bus("control", "SC", { U3: [21, 22, 23, 24, 25, 26, 27], U10: [1, 2, 3, 4, 5, 6, 7] }),
  bus("signal", "COL", { U10: [16, 15, 14, 13, 12, 11, 10] }),
  bus("signal", "SR", {
    U3: [29, 30, 31, 32, 33, 34, 35, 36],
    U8: [2, 1, 14, 13],
    U9: [0, 0, 0, 0, 2, 1, 14, 13],
    RN1: [2, 3, 4, 5, 6, 7, 8, 9],
  }),
  bus("signal", "ROW", {
    U8: [5, 7, 9, 11],
    U9: [0, 0, 0, 0, 5, 7, 9, 11],
    RN2: [2, 3, 4, 5, 6, 7, 8, 9],
  }),
  bus("data", "SD", { U3: [62, 63, 64, 65, 66, 67, 68, 69] }),
  bus("control", "LC", { U3: [42, 43, 44, 45] }),
  bus("signal", "LAT", { U11: [2, 5, 6, 9, 12, 15, 16] }),
  [
    net("clock", "XA", "Y1.1 C1.1 U1.38"),
    net("clock", "XB", "Y1.2 C2.1 U1.39"),
    net("clock", "E", "U1.34 U3.16 U5.6 U7.6 U14.7 TP1.1"),
    net("control", "RW", "U1.32 U3.15 U12.1"),
    net("control", "WRITE", "U12.2 U4.20 U7.5"),
    net("select", "/RAM", "U5.15 U12.3"),
    net("select", "RAMSEL", "U12.4 U7.1 R10.2"),
    net("select", "/RAMCE", "U7.3 U4.18"),
    net("control", "/RAMWE", "U7.4 U4.21"),
    net("select", "/MATRIX", "U5.14 U3.14"),
    net("select", "/LATCH", "U5.13 U11.11"),
    net("select", "/OPTRD", "U5.12 U15.1 U15.19"),
    net("select", "/ROM", "U12.6 U2.20 U2.22"),
    net("address", "A15", "U12.5"),
    net("control", "/HALT", "U1.40 U1.33 U1.36 U1.2 U1.4 R8.2"),
    net("control", "/IRQ", "U1.3 U3.18 R9.2"),
    net("signal", "TRIG", "U13.2 R5.2 C5.1"),
    net("signal", "TIMING", "U13.6 U13.7 R4.2 C4.1"),
    net("signal", "CTRL", "U13.5 C9.1"),
    net("reset", "RESETH", "U13.3 U12.9"),
    net("reset", "/RESET", "U12.8 U1.37 U3.17 U7.2"),
    net("signal", "KEYBIT", "U14.40 U15.17 RN3.9"),
    net("control", "SC7", "U3.28 R6.1"),
    net("control", "SC7B", "R6.2 Q1.B"),
    net("signal", "COL7", "Q1.C"),
    net("signal", "VTH", "R2.2 R3.1 U8.4 U8.6 U8.8 U8.10 U9.4 U9.6 U9.8 U9.10"),
    net("control", "SSTB0", "U3.70"),
    net("control", "SSTB1", "U3.71"),
    net("control", "/BLANK", "U3.60"),
    net("signal", "WDSTB", "U3.61"),
    net("signal", "/TRIP", "U15.15 RN3.8"),
    net("signal", "ZC", "U3.59"),
    net("signal", "LEDA", "R7.2 LED1.A"),
    net("signal", "LEDOUT", "U11.19 R7.1"),
  ],
);

export const board: SeedBoard = {
  slug: "moth-mpu",
  name: "Moth controller",
  kind: "pinball-driver",
  maker: "Larkspur Amusements",
  machine: "Night Moth pinball",
  year: 1987,
  summary:
    "The machine's brain: a 6809, program ROM, battery-backed RAM and a custom that scans switches and lamps. The battery is soldered between the RAM and the processor.",
  notes: `**Look under BT1 first, whatever the fault.** The cells leak along the trace of VRAM to U7, then under U4, then to
U12. Green on a leg of U12 means no /ROM, no reset and no evening.

BT1 holds scores, audits and settings. Write the settings down (button inside the door, hold for three seconds) before it
comes out. Afterwards fit a holder elsewhere and cut CR3 if the new cells must not be charged.

LED1 tells how far the program got: one flash ROM, two RAM, three the matrix custom, then a slow beat. If LED1 is dark or
lit without a flash, the program never began: E at TP1, /RESET at U1.37, /ROM at U2.20.

Switch trouble comes in lines. All switches of a *row*: U8 or U9. All of a *column*: U10, or Q1 for column 7. A
rectangle of three that makes a fourth: a diode on the playfield.

The driver board's coils stay off until WDSTB (J1.12) pulses. On the bench without the driver board RN3 holds /TRIP up,
so the program runs; with RN3 open it waits for ever and says GUARD.`,
  width: 228,
  height: 126,
  hazards: ["battery"],
  highestVoltage: 12,
  revisions: [
    { name: "Rev 1", notes: "Battery upright, R1 of 100R: charges too hard, leaks sooner." },
    { name: "Rev 2", notes: "R1 of 220R." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 4, regulated: true, source: "J1", notes: "0.9 A." },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "J1", notes: "Switch rows." },
    {
      name: "VRAM",
      nominal: 4.7,
      tolerancePercent: 5,
      regulated: true,
      source: "CR1",
      notes: "2.5 V and more on BT1.",
    },
    { name: "VBAT", nominal: 3.6, tolerancePercent: 15, regulated: false, source: "BT1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "flashes", signal: "LED1 one flash, then dark", meaning: "ROM checksum", suspects: ["U2"] },
    { form: "flashes", signal: "LED1 two flashes, then dark", meaning: "RAM", suspects: ["U4", "U7", "BT1"] },
    { form: "flashes", signal: "LED1 three flashes, then dark", meaning: "matrix custom", suspects: ["U3", "U5"] },
    { form: "flashes", signal: "LED1 slow beat", meaning: "well", suspects: [] },
    { form: "message", signal: "SETTINGS GONE", meaning: "RAM did not keep", suspects: ["BT1", "CR2", "U7"] },
    {
      form: "message",
      signal: "SWITCH nn",
      meaning: "a switch not seen for 90 games",
      suspects: ["J2", "U8", "U9", "U10"],
    },
  ],
  cautions: [
    { at: "BT1", text: "Leaking cells: gloves and glasses, vinegar before water, and no compressed air." },
    { at: "BT1", text: "Keeps scores, audits and settings. Write the settings down before it comes out." },
    { at: "U3", text: "QFP-80 of 0.8 mm pitch beside a battery: wash, dry and look with a glass before power." },
    { at: "J1", text: "Pull J1 only with the machine off; coils on the other end." },
  ],
  copies: [
    {
      owner: "dolores",
      tag: "MM-DOL-1",
      serial: "LA 4471",
      revision: "Rev 2",
      contents: "settings on a card in the door",
      works: true,
    },
    {
      owner: "dolores",
      tag: "MM-DOL-2",
      serial: "LA 5120",
      revision: "Rev 2",
      modifications: "battery in a holder",
      works: true,
    },
    { owner: "greta", tag: "MM-GRE", serial: "LA 4088", revision: "Rev 1", works: null },
    { owner: "ines", tag: "MM-INE", serial: "LA 4610", revision: "Rev 2", works: true },
  ],
};
