import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  LS244,
  LS373,
  PPI_8255,
  RAM_6116,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const input = { sheet: "1" };
const reference = { sheet: "2" };
const count = { sheet: "3" };
const panel = { sheet: "4" };

const placements = [
  ...row(12, 10, [
    part("J3", "connector", "input A", { package: "BNC", ...input }),
    part("J4", "connector", "input B", { package: "BNC", ...input }),
    part("J5", "connector", "external reference", { package: "BNC", ...reference }),
    part("J1", "connector", "power", { package: "header-10", ...count }),
    part("J6", "connector", "digital output", { package: "header-26", ...panel }),
    part("J2", "connector", "front panel", { package: "header-26", ...panel }),
  ]),
  ...row(14, 36, [
    part("K1", "relay", "5 V reed, attenuator A", input),
    part("K2", "relay", "5 V reed, attenuator B", input),
    part("Q1", "transistor", "N JFET", { package: "TO-92", ...input }),
    part("Q2", "transistor", "N JFET", { package: "TO-92", ...input }),
    part("D1", "diode", "low-leakage pair", input),
    part("D2", "diode", "low-leakage pair", input),
    part("U18", "chip", "ECL triple line receiver", { package: "DIP-16", ...input }),
    part("Q3", "transistor", "PNP 2 GHz", { package: "TO-92", ...input }),
    part("Q4", "transistor", "PNP 2 GHz", { package: "TO-92", ...input }),
    part("R1", "resistor", "1M", input),
    part("R2", "resistor", "1M", input),
    part("R3", "resistor", "270R", input),
    part("R4", "resistor", "270R", input),
  ]),
  ...row(20, 64, [
    part("Y1", "crystal", "10.000 MHz oven", {
      package: "oven",
      ...reference,
      notes: "Trim screw under the plug on top.",
    }),
    chip("U2", "bw-00452", "QFP-80", { code: "BW 00452 A", ...count }),
    chip("U1", "sm0805", "DIP-40", { socketed: true, code: "SM0806P", ...count }),
    chip("U4", "6116", "DIP-24", { ...count, notes: "Calibration constants, kept by BT1." }),
    part("BT1", "battery", "3.0 V lithium, 1 Ah", count),
    chip("U3", "or-27-088", "QFP-44", { code: "OR 27-088A", ...panel }),
    part("Y2", "crystal", "6.000 MHz", count),
  ]),
  ...row(28, 105, [
    chip("U8", "8255", "DIP-40", panel),
    chip("U5", "74ls373", "DIP-20", count),
    chip("U6", "74ls138", "DIP-16", count),
    chip("U7", "74ls244", "DIP-20", panel),
    chip("U17", "74ls151", "DIP-16", reference),
    chip("U16", "uln2003", "DIP-16", panel),
  ]),
  ...row(12, 126, [
    chip("U9", "74ls14", "DIP-14", reference),
    chip("U10", "74ls74", "DIP-14", count),
    chip("U11", "74ls00", "DIP-14", count),
    chip("U12", "74ls393", "DIP-14", reference),
    chip("U13", "74ls393", "DIP-14", reference),
    chip("U14", "lm339", "DIP-14", input),
    chip("U15", "lm324", "DIP-14", input),
    part("RN1", "resistor-pack", "8×10k", { package: "SIP-9", ...panel }),
    part("R5", "resistor", "22k", count),
    part("D5", "diode", "1N4148", { ...count, notes: "BT1 to VCAL." }),
    part("D6", "diode", "1N5817", { ...count, notes: "+5 V to VCAL." }),
  ]),
  ...row(12, 142, [
    part("C1", "capacitor", "10u 16V tantalum", count),
    part("C2", "capacitor", "22u 16V tantalum", { ...input, notes: "On -5.2 V; positive end on ground." }),
    part("C3", "capacitor", "100n", count),
    part("C4", "capacitor", "100n", count),
    part("C5", "capacitor", "100n", count),
    part("C6", "capacitor", "100n", panel),
    part("C7", "capacitor", "470p", { ...panel, notes: "Scan of the display." }),
    part("C8", "capacitor", "10u 25V tantalum", input),
    part("C9", "capacitor", "10u 25V tantalum", input),
    part("TP1", "test-point", "REF 10 MHz", reference),
    part("TP2", "test-point", "GATE", count),
  ]),
];

const connectors = [
  connector(
    "J1",
    "Power",
    "10-way header, from the supply board's J2",
    `1 +5V
     2 +5V
     3 GND
     4 GND
     5 +12V
     6 -12V
     7 -5.2V
     8 GND
     9 +12SB
     10 /PFAIL`,
  ),
  connector(
    "J2",
    "Front panel",
    "26-way header",
    `${Array.from({ length: 8 }, (_, i) => `${1 + i} SEG${i}`).join("\n")}
     ${Array.from({ length: 9 }, (_, i) => `${9 + i} DIG${i}`).join("\n")}
     ${Array.from({ length: 5 }, (_, i) => `${18 + i} KEY${i}`).join("\n")}
     23 +5V
     24 GND
     25 BRIGHT
     26 GATELAMP`,
  ),
  connector("J3", "Input A", "BNC socket", "1 A = INPA\n2 GND"),
  connector("J4", "Input B", "BNC socket", "1 B = INPB\n2 GND"),
  connector("J5", "External reference", "BNC socket", "1 REF = EXTREF\n2 GND"),
  connector(
    "J6",
    "Digital output",
    "26-way header",
    `${Array.from({ length: 8 }, (_, i) => `${1 + i} PA${i}`).join("\n")}
     ${Array.from({ length: 8 }, (_, i) => `${9 + i} PB${i}`).join("\n")}
     17 /DAV
     18 /ACK
     ${Array.from({ length: 7 }, (_, i) => `${19 + i} GND`).join("\n")}
     26 +5V`,
  ),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips, ["U4"]),
  decoupling("+5V", "C3 C4 C5 C6"),
  [
    net("power", "+5V", "RN1.1 R5.1 K1.1 K2.1 U16.9 D6.A U10.1 U10.4 U10.10 U10.13 U6.6 U14.3 Q3.E Q4.E"),
    net("power", "+12V", "U15.4 C8.1 Q1.D Q2.D"),
    net("power", "-12V", "U15.11 C9.2 R3.2 R4.2"),
    net("power", "-5.2V", "U18.8 C2.2"),
    net("power", "+12SB", "Y1.1"),
    net("power", "VCAL", "D5.K D6.K U4.24"),
    net("power", "VBAT", "BT1.1 D5.A"),
    net("ground", "GND", "Y1.2 U18.1 U18.16 U4.12 BT1.2 C1.2 C2.1 C8.2 C9.1 C7.2 R1.2 R2.2 D1.2 D2.2 U6.4 U6.5 U14.12"),
    net(
      "ground",
      "GND",
      "U17.1 U17.2 U17.12 U17.13 U17.14 U17.15 U16.4 U16.5 U16.6 U16.7 U11.4 U11.5 U11.9 U11.10 U5.1 U17.7 U17.9 U17.10 U12.2 U12.12 U13.2 U13.12 U11.12 U11.13 U10.11 U10.12 U9.13 U2.64",
    ),
  ],
  bus("data", "AD", {
    U1: [11, 12, 13, 14, 15, 16, 17, 18],
    U2: [2, 3, 4, 5, 6, 7, 8, 9],
    U4: RAM_6116.data,
    U5: LS373.d,
    U7: LS244.outputs,
    U8: PPI_8255.data,
  }),
  bus("address", "A", { U5: LS373.q, U4: RAM_6116.address, U2: [11, 12, 13, 14], U8: [9, 8] }),
  bus("address", "A", { U1: [21, 22, 23] }, 8),
  bus("address", "DEC", { U1: [24, 25, 26], U6: [1, 2, 3] }),
  bus("signal", "SEG", { U3: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("signal", "DIG", { U3: [12, 13, 14, 15, 16, 17, 18, 19, 20] }),
  bus("signal", "KEY", { U3: [34, 35, 36, 37, 38] }),
  bus("data", "PA", { U8: PPI_8255.portA }),
  bus("data", "PB", { U8: PPI_8255.portB }),
  bus("signal", "OPT", { U7: LS244.inputs, RN1: [2, 3, 4, 5, 6, 7, 8, 9] }),
  [
    net("control", "ALE", "U1.10 U5.11"),
    net("control", "/RD", "U1.7 U2.16 U4.20 U8.5"),
    net("control", "/WR", "U1.8 U2.17 U4.21 U8.36"),
    net("select", "/CALRAM", "U6.15 U4.18"),
    net("select", "/CNT", "U6.14 U2.15"),
    net("select", "/PORT", "U6.13 U8.6"),
    net("select", "/OPTRD", "U6.12 U7.1 U7.19"),
    net("clock", "XCPU1", "Y2.1 U1.1"),
    net("clock", "XCPU2", "Y2.2 U1.2"),
    net("clock", "OVEN", "Y1.3 U9.1"),
    net("clock", "REFINT", "U9.2 U17.4"),
    net("clock", "EXTREF", "U9.3"),
    net("clock", "REFEXT", "U9.4 U17.3"),
    net("control", "EXTSEL", "U1.33 U17.11"),
    net("clock", "REF10M", "U17.5 U2.24 U12.1 U10.3 TP1.1"),
    net("clock", "REFD16", "U12.6 U12.13"),
    net("clock", "REFD256", "U12.8 U13.1"),
    net("clock", "REFD4K", "U13.6 U13.13"),
    net("clock", "SLOW", "U13.8 U1.5"),
    net("control", "ARM", "U1.34 U10.2 U2.27"),
    net("control", "GATE", "U10.5 U2.25 U16.3 TP2.1"),
    net("signal", "GATELAMP", "U16.14"),
    net("signal", "DONE", "U2.28 U11.1 U11.2"),
    net("signal", "/DONE", "U11.3 U1.4"),
    net("control", "/CNTIRQ", "U2.19 U1.6"),
    net("reset", "POR", "R5.2 C1.1 U9.5"),
    net("reset", "RESETH", "U9.6 U9.9 U8.35"),
    net("reset", "/RESET", "U9.8 U1.3 U2.18 U3.40"),
    net("control", "/PFAIL", "U9.11"),
    net("control", "PFAIL", "U9.10 U1.28"),
    net("signal", "DDATA", "U1.29 U3.24"),
    net("signal", "DCLK", "U1.30 U3.25"),
    net("signal", "/DLOAD", "U1.31 U3.26"),
    net("signal", "/DCS", "U1.32 U3.27"),
    net("signal", "SCAN", "U3.28 C7.1"),
    net("signal", "BRIGHT", "U3.29"),
    net("control", "ATTA", "U1.35 U16.1"),
    net("control", "ATTB", "U1.36 U16.2"),
    net("control", "RLYA", "U16.16 K1.2"),
    net("control", "RLYB", "U16.15 K2.2"),
    net("signal", "INPA", "K1.3"),
    net("signal", "INPB", "K2.3"),
    net("signal", "ATTOUTA", "K1.4 R1.1 D1.1 Q1.G"),
    net("signal", "ATTOUTB", "K2.4 R2.1 D2.1 Q2.G"),
    net("signal", "BUFA", "Q1.S R3.1 U18.4 U14.5"),
    net("signal", "BUFB", "Q2.S R4.1 U18.9 U14.7"),
    net("signal", "TLA", "U15.1 U15.2 U18.5 U14.4"),
    net("signal", "TLB", "U15.6 U15.7 U18.10 U14.6"),
    net("signal", "TLSETA", "U8.11 U15.3"),
    net("signal", "TLSETB", "U8.10 U15.5"),
    net("signal", "ECLA", "U18.2 Q3.B"),
    net("signal", "ECLB", "U18.6 Q4.B"),
    net("clock", "INA", "Q3.C U2.22"),
    net("clock", "INB", "Q4.C U2.23"),
    net("control", "/DAV", "U8.14"),
    net("control", "/ACK", "U8.12"),
  ],
);

export const board: SeedBoard = {
  slug: "plover-counter",
  name: "Plover 80 counter board",
  kind: "bench-instrument",
  maker: "Plover Instruments",
  machine: "Plover 80 frequency counter",
  year: 1987,
  summary:
    "Counts to 80 MHz on two inputs against a 10 MHz oven. A single-chip processor runs it; a QFP-80 array counts; the display driver also reads the keys.",
  notes: `**Calibration lives in U4**, kept by BT1 through D5. Lose it and the interpolator reads nonsense in the last two
digits. Feed 3 V into VCAL (with a diode in series) before BT1 comes out, or read the constants over the digital output:
hold KEY0 and KEY4 at power-on.

The oven has a rail of its own, +12SB, that stays on in standby. A counter that is wrong when cold and right after
twenty minutes has a good oven and an impatient owner.

Order that pays:

1. TP1: 10 MHz, TTL swing. All else needs it.
2. ALE at U1.10: 400 kHz means that the processor runs its program.
3. GATE at TP2: a pulse of the set gate time.
4. INA and INB at U2.22 and U2.23 with a signal applied.

-5.2 V at U18 is easy to forget: without it nothing triggers and the rest is well.`,
  width: 275,
  height: 155,
  hazards: ["lithium-cell"],
  highestVoltage: 12,
  revisions: [
    { name: "Issue 1", notes: "GATEIN straight from U10.5." },
    { name: "Issue 2", notes: "C7 moved next to U3." },
    { name: "Issue 3", notes: "BW 00452 B and VQ4-0732-01 fitted; firmware unchanged." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 3, regulated: true, source: "J1" },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "J1" },
    { name: "-12V", nominal: -12, tolerancePercent: 5, regulated: true, source: "J1" },
    { name: "-5.2V", nominal: -5.2, tolerancePercent: 4, regulated: true, source: "J1", notes: "ECL." },
    {
      name: "+12SB",
      nominal: 12,
      tolerancePercent: 5,
      regulated: true,
      source: "J1",
      notes: "Oven; on in standby too.",
    },
    {
      name: "VCAL",
      nominal: 4.7,
      tolerancePercent: 8,
      regulated: false,
      source: "D6",
      notes: "2.6 V and more on BT1.",
    },
    { name: "VBAT", nominal: 3, tolerancePercent: 10, regulated: false, source: "BT1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    {
      form: "message",
      signal: "Err 1",
      meaning: "checksum of the calibration constants",
      suspects: ["U4", "BT1", "D5"],
    },
    { form: "message", signal: "Err 2", meaning: "counter array does not answer", suspects: ["U2", "U6"] },
    { form: "message", signal: "Err 3", meaning: "no reference", suspects: ["Y1", "U9", "U17"] },
    { form: "message", signal: "Err 7", meaning: "power fail line low", suspects: ["J1", "U9"] },
    {
      form: "flashes",
      signal: "gate lamp flashes twice",
      meaning: "external reference chosen and absent",
      suspects: ["J5", "U9", "U17"],
    },
  ],
  cautions: [
    { at: "BT1", text: "BT1 keeps the calibration. Hold VCAL at 3 V through a diode before it comes out." },
    { at: "BT1", text: "A lithium cell: no soldering iron on it, no charging, no short." },
    { at: "U2", text: "QFP-80 with 0.8 mm pitch. Check with the supply off for bridges after any hot air." },
    { at: "J3", text: "50 V d.c. at most with the attenuator out; D1 dies first and then Q1." },
  ],
  copies: [
    {
      owner: "femi",
      tag: "PL-FEMI-1",
      serial: "P80-0442",
      revision: "Issue 1",
      works: true,
      contents: "constants printed and glued under the lid",
    },
    { owner: "femi", tag: "PL-FEMI-2", serial: "P80-0871", revision: "Issue 2", works: true },
    { owner: "yusuf", tag: "PL-YUS", serial: "P80-1230", revision: "Issue 3", works: true },
    { owner: "mirela", tag: "PL-MIR", serial: "P80-0705", revision: "Issue 2", works: null },
  ],
};
