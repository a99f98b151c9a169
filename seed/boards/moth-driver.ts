import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import type { Part } from "#seed/notation/placing.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import { bus, connector, decoupling, net, netlist, supplyNets } from "#seed/notation/wiring.ts";

const supply = { sheet: "1" };
const coils = { sheet: "2" };
const lamps = { sheet: "3" };

const EIGHT = [0, 1, 2, 3, 4, 5, 6, 7];
/** Coil drivers and what hangs on them; the number is the coil's. */
const COILS = ["left flipper", "right flipper", "left sling", "right sling", "outhole", "kicker", "bell", "knocker"];

const driver = (index: number): Part =>
  chip(`Q${index + 1}`, "tip122", "TO-220", { kind: "transistor", ...coils, notes: `Coil ${index}: ${COILS[index]}.` });

const placements = [
  ...row(30, 14, [
    part("J1", "connector", "transformer", { package: "screw-8", ...supply }),
    part("F1", "fuse", "8 A slow", { ...supply, notes: "Coils." }),
    part("F2", "fuse", "4 A slow", { ...supply, notes: "Lamps and +12V." }),
    part("F3", "fuse", "5 A slow", { ...supply, notes: "+5V." }),
    part("LED1", "diode", "green LED, +43V", supply),
    part("LED2", "diode", "green LED, +18V", supply),
    part("LED3", "diode", "green LED, +5V", supply),
    part("R1", "resistor", "10k 1W", { ...supply, notes: "Bleeds C1 and feeds LED1." }),
    part("RN3", "resistor-pack", "2k2 and 330R", { package: "SIP-4", ...supply }),
    part("R8", "resistor", "22k", { ...lamps, notes: "Zero crossing." }),
  ]),
  ...row(24, 44, [
    part("BR1", "diode", "bridge 35 A", { package: "bridge-square", ...supply }),
    part("BR2", "diode", "bridge 35 A", { package: "bridge-square", ...supply }),
    part("BR3", "diode", "bridge 35 A", { package: "bridge-square", ...supply }),
    part("C1", "capacitor", "4700u 63V", { package: "radial-30", ...supply, notes: "+43V." }),
    part("C2", "capacitor", "10000u 35V", { package: "radial-30", ...supply, notes: "+18V." }),
    part("C3", "capacitor", "15000u 25V", { package: "radial-30", ...supply, notes: "+11V, input of VR1." }),
    chip("VR1", "7805", "TO-220", { ...supply, notes: "With Q13 beside it, on the heat sink." }),
    chip("VR2", "7812", "TO-220", { ...supply, notes: "Switch matrix and RAM of the controller." }),
    part("Q13", "transistor", "PNP power, pass", { package: "TO-220", ...supply }),
    part("R4", "resistor", "3R3 2W", supply),
    part("C4", "capacitor", "10u 16V tantalum", supply),
  ]),
  ...row(20, 76, EIGHT.map(driver), 16),
  ...row(
    20,
    92,
    EIGHT.map((index) =>
      part(`D${index + 1}`, "diode", "1N4004", { ...coils, notes: `Across coil ${index}, to +43V.` }),
    ),
    17,
  ),
  ...row(26, 112, [
    chip("U1", "74ls374", "DIP-20", { ...coils, notes: "Coil latch." }),
    chip("U5", "or-27-541", "DIP-24", { code: "OR 27-541A", socketed: true, ...coils }),
    chip("U2", "74ls244", "DIP-20", { ...coils, notes: "From the controller." }),
    part("RN1", "resistor-pack", "8×1k", { package: "DIP-16", ...coils, notes: "Bases of Q1 to Q8." }),
    part("R5", "resistor", "150k", { ...coils, notes: "Longest time on." }),
    part("C6", "capacitor", "1u", { ...coils, notes: "Longest time on." }),
    part("R6", "resistor", "47k", { ...coils, notes: "SENSE from +43V." }),
    part("R7", "resistor", "3k9", coils),
    part("R10", "resistor", "10k", { ...coils, notes: "Holds /BLANK low while J2 is unplugged." }),
  ]),
  ...row(24, 134, [
    chip("U3", "74ls374", "DIP-20", { ...lamps, notes: "Lamp rows." }),
    chip("U4", "uln2003", "DIP-16", { ...lamps, notes: "Lamp rows, sinks." }),
    chip("U6", "74ls08", "DIP-14", { ...lamps, notes: "Lamp columns, let through while not blanked." }),
    chip("U7", "uln2003", "DIP-16", { ...lamps, notes: "Bases of Q10 to Q14." }),
    part("Q10", "transistor", "PNP Darlington", { package: "TO-220", ...lamps, notes: "Column 0." }),
    part("Q11", "transistor", "PNP Darlington", { package: "TO-220", ...lamps, notes: "Column 1." }),
    part("Q12", "transistor", "PNP Darlington", { package: "TO-220", ...lamps, notes: "Column 2." }),
    part("Q14", "transistor", "PNP Darlington", { package: "TO-220", ...lamps, notes: "Column 3." }),
    part("RN2", "resistor-pack", "4×560R", { package: "SIP-8", ...lamps }),
    part("C8", "capacitor", "100n", coils),
  ]),
  ...row(40, 160, [
    part("J2", "connector", "controller", { package: "header-26", ...coils }),
    20,
    part("J3", "connector", "coils", { package: "header-10", ...coils }),
    20,
    part("J4", "connector", "lamps", { package: "header-16", ...lamps }),
    20,
    part("J5", "connector", "supply out", { package: "header-8", ...supply }),
  ]),
];

const list = (from: number, count: number, name: string) =>
  Array.from({ length: count }, (_, index) => `${from + index} ${name}${index}`).join("\n");

const connectors = [
  connector(
    "J1",
    "Transformer",
    "8-way screw terminal",
    "1 AC30A\n2 AC30B\n3 AC13A\n4 AC13B\n5 AC9A\n6 AC9B\n7 GND\n8 GND",
  ),
  connector(
    "J2",
    "Controller",
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
  connector("J3", "Coils", "10-way header, 6 mm pitch", `${list(1, 8, "COIL")}\n9 +43V\n10 +43V`),
  connector(
    "J4",
    "Lamps",
    "16-way header",
    `${list(1, 7, "LROW")}\n8 -\n${list(9, 4, "LCOL")}\n13 GND\n14 GND\n15 +18V\n16 +18V`,
  ),
  connector("J5", "Supply out", "8-way header", "1 +5V\n2 +5V\n3 GND\n4 GND\n5 +12V\n6 GND\n7 +18V\n8 -"),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  decoupling("+5V", "C8"),
  [
    net("power", "AC30A", "F1.1"),
    net("power", "AC30F", "F1.2 BR1.1"),
    net("power", "AC30B", "BR1.2"),
    net("power", "AC13A", "F2.1"),
    net("power", "AC13F", "F2.2 BR2.1 R8.1"),
    net("power", "AC13B", "BR2.2"),
    net("power", "AC9A", "F3.1"),
    net("power", "AC9F", "F3.2 BR3.1"),
    net("power", "AC9B", "BR3.2"),
    net("power", "+43V", "BR1.3 C1.1 R1.1 R6.1 D1.K D2.K D3.K D4.K D5.K D6.K D7.K D8.K"),
    net("power", "+18V", "BR2.3 C2.1 RN3.1 VR2.1 Q10.E Q11.E Q12.E Q14.E U4.9 U7.9"),
    net("power", "+11V", "BR3.3 C3.1 R4.1 Q13.E"),
    net("power", "VIN5", "R4.2 VR1.1 Q13.B"),
    net("power", "+5V", "VR1.3 Q13.C C4.1 RN3.3 R5.1"),
    net("power", "+12V", "VR2.3"),
    net("ground", "GND", "BR1.4 BR2.4 BR3.4 C1.2 C2.2 C3.2 C4.2 VR1.2 VR2.2 LED1.K LED2.K LED3.K R7.2 C6.2"),
    net("ground", "GND", "Q1.3 Q2.3 Q3.3 Q4.3 Q5.3 Q6.3 Q7.3 Q8.3 U2.1 U2.19 U1.1 U3.1 U7.5 U7.6 U7.7 R10.2"),
    net("signal", "LED43", "R1.2 LED1.A"),
    net("signal", "LED18", "RN3.2 LED2.A"),
    net("signal", "LED5", "RN3.4 LED3.A"),
    net("signal", "ZC", "R8.2"),
  ],
  bus("data", "SD", { U2: [2, 4, 6, 8, 11, 13, 15, 17] }),
  bus("data", "BD", {
    U2: [18, 16, 14, 12, 9, 7, 5, 3],
    U1: [3, 4, 7, 8, 13, 14, 17, 18],
    U3: [3, 4, 7, 8, 13, 14, 17, 18],
  }),
  bus("control", "CMD", { U1: [2, 5, 6, 9, 12, 15, 16, 19], U5: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("control", "GATE", { U5: [20, 19, 18, 17, 16, 15, 14, 13], RN1: [1, 2, 3, 4, 5, 6, 7, 8] }),
  EIGHT.map((index) => net("control", `BASE${index}`, `RN1.${16 - index} Q${index + 1}.1`)),
  EIGHT.map((index) => net("signal", `COIL${index}`, `Q${index + 1}.2 D${index + 1}.A`)),
  bus("control", "LR", { U3: [2, 5, 6, 9, 12, 15, 16], U4: [1, 2, 3, 4, 5, 6, 7] }),
  bus("signal", "LROW", { U4: [16, 15, 14, 13, 12, 11, 10] }),
  bus("control", "LC", { U6: [1, 4, 9, 12] }),
  bus("control", "LCG", { U6: [3, 6, 8, 11], U7: [1, 2, 3, 4] }),
  [
    net("control", "/COL0", "U7.16 RN2.1"),
    net("control", "/COL1", "U7.15 RN2.3"),
    net("control", "/COL2", "U7.14 RN2.5"),
    net("control", "/COL3", "U7.13 RN2.7"),
    net("control", "CB0", "RN2.2 Q10.B"),
    net("control", "CB1", "RN2.4 Q11.B"),
    net("control", "CB2", "RN2.6 Q12.B"),
    net("control", "CB3", "RN2.8 Q14.B"),
    net("signal", "LCOL0", "Q10.C"),
    net("signal", "LCOL1", "Q11.C"),
    net("signal", "LCOL2", "Q12.C"),
    net("signal", "LCOL3", "Q14.C"),
    net("control", "SSTB0", "U1.11"),
    net("control", "SSTB1", "U3.11"),
    net("control", "/BLANK", "U5.10 U6.2 U6.5 U6.10 U6.13 R10.1"),
    net("signal", "WDSTB", "U5.1"),
    net("signal", "/TRIP", "U5.11"),
    net("reset", "/RESET", "U5.22"),
    net("signal", "SENSE", "R6.2 R7.1 U5.23"),
    net("signal", "TIMERC", "R5.2 C6.1 U5.21"),
  ],
);

export const board: SeedBoard = {
  slug: "moth-driver",
  name: "Moth driver board",
  kind: "pinball-driver",
  maker: "Larkspur Amusements",
  machine: "Night Moth pinball",
  year: 1987,
  summary:
    "Eight coil drivers on 43 V unregulated, a lamp matrix on 18 V, and the supplies of the whole machine. A custom guards the coils against a program that has lost its way.",
  notes: `Everything that gets hot in the machine is driven from here. Three rectifiers, three fuses, three lamps beside them:
**LED1 +43 V, LED2 +18 V, LED3 +5 V**. Look at those before the meter.

The order that saves transistors:

1. coils unplugged (J3), fuses F1 to F3 in, J2 unplugged: rails
2. J2 in: BASE lines at RN1, all under 0.3 V
3. only then F1 out, J3 in, F1 in

A coil that pulls at power-on has a shorted driver in nine of ten cases. Measure the **coil and its diode first**: a
new TIP122 on a coil of 1 Ω lives for one pulse. Good coils here read 4 to 12 Ω, flippers 4 Ω with the end-of-stroke
switch closed.

/TRIP low means that U5 has opened everything, and it stays so until reset. It asks three questions: is WDSTB pulsing,
was a coil on for too long, is SENSE above 2.4 V (43 V through R6 and R7 gives 3.3 V)?

Unloaded, +43V stands at 46 V or more. That is no fault.`,
  width: 288,
  height: 176,
  hazards: ["stored-charge", "hot-parts"],
  highestVoltage: 48,
  revisions: [
    { name: "Rev 1", notes: "VR1 alone, without Q13; browns its joints." },
    { name: "Rev 2", notes: "Q13 and R4 added." },
    { name: "Rev 3", notes: "SM6955P at U5, larger pads at J1." },
  ],
  rails: [
    {
      name: "+43V",
      nominal: 43,
      tolerancePercent: 12,
      regulated: false,
      source: "BR1",
      notes: "Coils. 46 V unloaded.",
    },
    { name: "+18V", nominal: 18, tolerancePercent: 15, regulated: false, source: "BR2", notes: "Lamps." },
    { name: "+11V", nominal: 11, tolerancePercent: 15, regulated: false, source: "BR3", notes: "Input of VR1." },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "VR2" },
    { name: "+5V", nominal: 5, tolerancePercent: 4, regulated: true, source: "VR1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "flashes", signal: "LED1 dark", meaning: "no +43 V", suspects: ["F1", "BR1", "J1"] },
    { form: "flashes", signal: "LED2 dark", meaning: "no +18 V, so no +12 V either", suspects: ["F2", "BR2", "J1"] },
    { form: "flashes", signal: "LED3 dark", meaning: "no +5 V", suspects: ["F3", "BR3", "VR1", "Q13"] },
    { form: "message", signal: "COIL n OPEN", meaning: "coil test sees no current", suspects: ["J3", "RN1", "U5"] },
    { form: "message", signal: "GUARD", meaning: "/TRIP is low", suspects: ["U5", "R5", "C6", "R6"] },
  ],
  cautions: [
    { at: "C1", text: "C1 holds 46 V; R1 takes two minutes. Measure across C1 before you touch or measure ohms." },
    { at: "J3", text: "Never plug J3 with the power on: the first pulse goes through your fingers or through Q1." },
    { at: "VR1", text: "The heat sink is at 65 °C after half an hour." },
    {
      text: "The primary of the transformer is mains. It is not on this board, and not for the bench without training.",
    },
  ],
  copies: [
    { owner: "dolores", tag: "MD-DOL-1", serial: "LA 4471", revision: "Rev 2", works: true },
    { owner: "dolores", tag: "MD-DOL-2", serial: "LA 5120", revision: "Rev 3", works: true },
    { owner: "ines", tag: "MD-INE", serial: "LA 4610", revision: "Rev 2", works: true },
    {
      owner: "greta",
      tag: "MD-GRE",
      serial: "LA 4088",
      revision: "Rev 1",
      modifications: "Q13 and R4 added",
      works: true,
    },
  ],
};
