import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import { bus, connector, decoupling, net, netlist, supplyNets } from "#seed/notation/wiring.ts";

const scan = { sheet: "1" };
const wheels = { sheet: "2" };
const link = { sheet: "1" };

const placements = [
  ...row(20, 12, [
    part("J1", "connector", "main board", { package: "header-10", ...link }),
    12,
    part("J2", "connector", "keybed", { package: "header-26", ...scan }),
    12,
    part("J3", "connector", "wheels and pedals", { package: "header-16", ...wheels }),
  ]),
  ...row(32, 34, [
    chip("U1", "sm6912", "DIP-40", { code: "SM6912P", socketed: true, ...scan }),
    chip("U5", "4051", "DIP-16", { ...scan, notes: "Drives one of eight columns high." }),
    chip("U6", "4051", "DIP-16", { ...scan, notes: "Rows of the first contacts." }),
    chip("U7", "4051", "DIP-16", { ...scan, notes: "Rows of the second contacts." }),
    chip("U4", "4040", "DIP-16", scan),
  ]),
  ...row(18, 54, [
    chip("U8", "4069", "DIP-14", scan),
    part("Y1", "crystal", "500 kHz ceramic", scan),
    chip("U9", "4013", "DIP-14", scan),
    chip("U10", "4001", "DIP-14", scan),
    part("RN1", "resistor-pack", "8×100k", { package: "SIP-9", ...scan }),
    part("RN2", "resistor-pack", "8×100k", { package: "SIP-9", ...scan }),
    chip("U11", "4011", "DIP-14", link),
  ]),
  ...row(18, 74, [
    chip("U2", "4051", "DIP-16", { ...wheels, notes: "Chooses a wheel or pedal." }),
    chip("U3", "lm339", "DIP-14", wheels),
    part("RN3", "resistor-pack", "R-2R 10k/20k, 8 bit", { package: "SIP-10", ...wheels }),
    chip("U13", "4053", "DIP-16", { ...wheels, notes: "Swaps wheels when the keyboard is split." }),
    chip("U14", "lm324", "DIP-14", wheels),
    chip("U12", "4066", "DIP-14", { ...wheels, notes: "Pedal sockets' switching." }),
  ]),
  ...row(12, 90, [
    part("C1", "capacitor", "22u 16V tantalum", link),
    part("C2", "capacitor", "100n", scan),
    part("C3", "capacitor", "100n", scan),
    part("C4", "capacitor", "100n", scan),
    part("C5", "capacitor", "100n", wheels),
    part("C6", "capacitor", "100p", scan),
    part("C7", "capacitor", "100p", scan),
    part("C8", "capacitor", "1u", { ...scan, notes: "Reset delay." }),
    part("R1", "resistor", "10M", scan),
    part("R2", "resistor", "100k", { ...scan, notes: "Reset delay." }),
    part("R3", "resistor", "330R", link),
    part("R4", "resistor", "10k", wheels),
    part("R5", "resistor", "100k", link),
    part("D1", "diode", "1N4148", scan),
    part("LED1", "diode", "red LED", link),
    part("JP1", "jumper", "split", link),
    part("TP1", "test-point", "SYNC", scan),
    part("TP2", "test-point", "RAMP", wheels),
  ]),
];

const list = (from: number, count: number, name: string) =>
  Array.from({ length: count }, (_, index) => `${from + index} ${name}${index}`).join("\n");

const connectors = [
  connector(
    "J1",
    "Main board",
    "10-way header",
    `1 +5V
     2 +5V
     3 GND
     4 GND
     5 KTX
     6 KRX
     7 /KRTS
     8 /RESET
     9 SUSOUT
     10 GND`,
  ),
  connector(
    "J2",
    "Keybed",
    "26-way header",
    `${list(1, 8, "COL")}
     ${list(9, 8, "ROWA")}
     ${list(17, 8, "ROWB")}
     25 GND
     26 GND`,
  ),
  connector(
    "J3",
    "Wheels and pedals",
    "16-way header",
    `1 +5V
     2 GND
     3 BEND
     4 MOD
     5 TOUCH
     6 PEDAL1
     7 PEDAL2
     8 VOLPED
     9 FOOTSW
     10 HOLDSW
     11 SENSE1
     12 SENSE2
     13 GND
     14 +5V
     15 -
     16 -`,
  ),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  decoupling("+5V", "C2 C3 C4 C5"),
  [
    net("power", "+5V", "U2.16 U4.16 U5.16 U6.16 U7.16 U13.16 U8.14 U9.14 U10.14 U11.14 U12.14 U3.3 U14.4 U5.3"),
    net("power", "+5V", "R2.1 C1.1 D1.K R3.1 R4.1 R5.1 U3.7 U3.9 U3.11"),
    net("ground", "GND", "U2.8 U2.7 U4.8 U5.8 U5.7 U6.8 U6.7 U7.8 U7.7 U13.8 U13.7 U13.6 U8.7 U9.7 U10.7 U11.7 U12.7"),
    net(
      "ground",
      "GND",
      "U3.12 U14.11 U5.6 U6.6 U7.6 RN1.1 RN2.1 RN3.1 C1.2 C6.2 C7.2 C8.2 U9.8 U9.6 U9.10 U9.4 JP1.2",
    ),
    net(
      "ground",
      "GND",
      "U10.2 U10.12 U10.13 U11.1 U11.2 U8.11 U8.13 U12.6 U12.12 U1.32 U1.33 U1.34 U1.35 U14.3 U3.6 U3.8 U3.10",
    ),
  ],
  bus("address", "CNT", { U4: [9, 7, 6, 5, 3, 2], U1: [1, 2, 3, 4, 5, 6], U6: [11, 10, 9], U7: [11, 10, 9] }),
  bus("address", "CNT", { U5: [11, 10, 9] }, 3),
  bus("signal", "COL", { U5: [13, 14, 15, 12, 1, 5, 2, 4] }),
  bus("signal", "ROWA", { U6: [13, 14, 15, 12, 1, 5, 2, 4], RN1: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("signal", "ROWB", { U7: [13, 14, 15, 12, 1, 5, 2, 4], RN2: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("data", "RAMP", { U1: [21, 22, 23, 24, 25, 26, 27, 28], RN3: [3, 4, 5, 6, 7, 8, 9, 10] }),
  bus("address", "MUX", { U1: [15, 16, 17], U2: [11, 10, 9] }),
  [
    net("clock", "XIN", "U8.1 Y1.1 C6.1 R1.1"),
    net("clock", "XOUT", "U8.2 Y1.2 C7.1 R1.2 U8.3"),
    net("clock", "CLK500", "U8.4 U9.3"),
    net("clock", "CLK250", "U9.1 U9.11 U1.9"),
    net("signal", "/Q250", "U9.2 U9.5"),
    net("clock", "CLK125", "U9.13 U10.1"),
    net("signal", "/Q125", "U9.12 U9.9"),
    net("clock", "CNTCK", "U10.3 U4.10"),
    net("control", "CLR", "U1.37 U10.5"),
    net("signal", "POR", "U10.6 U8.6 U8.9"),
    net("signal", "/CLRCNT", "U10.4 U10.8 U10.9"),
    net("reset", "CLRCNT", "U10.10 U4.11"),
    net("reset", "/RESET", "R2.2 C8.1 D1.A U8.5"),
    net("reset", "/KRES", "U8.8 U1.10"),
    net("signal", "KEYA", "U6.3 U1.7"),
    net("signal", "KEYB", "U7.3 U1.8"),
    net("signal", "SYNC", "U1.36 TP1.1"),
    net("select", "MUXINH", "U1.18 U2.6"),
    net("signal", "RAMP", "RN3.2 U3.4 TP2.1"),
    net("signal", "SPARE1", "U14.1 U14.2"),
    net("signal", "WHEEL", "U2.3 U3.5"),
    net("signal", "COMP", "U3.2 U1.19 R4.2"),
    net("signal", "BEND", "U13.12 U13.1"),
    net("signal", "MOD", "U13.13 U13.2"),
    net("signal", "WHEELA", "U13.14 U14.5"),
    net("signal", "WHEELB", "U13.15 U14.10"),
    net("signal", "WHEELABUF", "U14.7 U14.6 U2.13"),
    net("signal", "WHEELBBUF", "U14.8 U14.9 U2.14"),
    net("signal", "TOUCH", "U14.12"),
    net("signal", "TOUCHBUF", "U14.14 U14.13 U2.15"),
    net("signal", "PEDAL1", "U12.1"),
    net("signal", "PEDAL2", "U12.4"),
    net("signal", "PED1IN", "U12.2 U2.12"),
    net("signal", "PED2IN", "U12.3 U2.1"),
    net("signal", "VOLPED", "U2.5"),
    net("control", "SENSE1", "U12.13"),
    net("control", "SENSE2", "U12.5"),
    net("control", "SPLIT", "U1.14 JP1.1 U13.11 U13.10 U13.9 R5.2"),
    net("control", "FOOTSW", "U1.30 U11.12 U11.13"),
    net("control", "SUSOUT", "U11.11"),
    net("control", "HOLDSW", "U1.31"),
    net("signal", "TXD", "U1.11 U11.5 U11.6"),
    net("signal", "/TXD", "U11.4 U11.8 U11.9"),
    net("signal", "KTX", "U11.10"),
    net("signal", "KRX", "U1.12"),
    net("control", "/KRTS", "U1.13"),
    net("signal", "LEDA", "R3.2 LED1.A"),
    net("signal", "LEDK", "LED1.K U1.29"),
  ],
);

export const board: SeedBoard = {
  slug: "osprey-keyer",
  name: "Osprey Six keyer",
  kind: "other",
  maker: "Fenhollow Musical Works",
  machine: "Osprey Six synthesizer",
  year: 1983,
  summary:
    "Scans 61 keys with two contacts each for velocity, reads wheels and pedals with a ramp, and tells the main board over a serial line. CMOS at 5 V throughout.",
  notes: `A pleasant board: slow, cool, one rail, and every line can be seen with a small oscilloscope. U4 counts; U5 lifts one
column; U6 and U7 look at one row each. **SYNC at TP1** pulses every scan. With SYNC there, U1 lives.

- *one octave dead*: a column, so U5, J2 or the ribbon
- *every eighth key dead*: a row, so U6, RN1 or J2
- *always full velocity*: second contacts, so U7, RN2 or the rubber strip
- *keys play by themselves*: coffee. Or RN1, whose ground end lifts

CMOS inputs left open drift and take their chip along. Unused ones here are tied down, unless somebody cut a trace.

RAMP at TP2 is a saw of 0 to 5 V in 256 steps. A step of double height or one missing is a leg of RN3.`,
  width: 250,
  height: 100,
  hazards: [],
  highestVoltage: 5,
  revisions: [
    { name: "Rev A", notes: "C8 is 100n: may start without reset on a slow supply." },
    { name: "Rev B", notes: "C8 is 1u, D1 added." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "J1", notes: "About 22 mA in all." },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "flashes", signal: "LED1 one flash at start", meaning: "well", suspects: [] },
    { form: "flashes", signal: "LED1 blinks for ever", meaning: "count does not come round", suspects: ["U4", "U10"] },
    { form: "flashes", signal: "LED1 dark", meaning: "no clock or no reset", suspects: ["U8", "Y1", "U9", "C8"] },
    { form: "message", signal: "KEYS?", meaning: "main board hears nothing", suspects: ["J1", "U11", "U1"] },
  ],
  cautions: [
    { at: "J2", text: "The ribbon is not keyed. Red edge to pin 1, or columns and rows change places." },
    { at: "U1", text: "CMOS from 1983: wrist strap on, and fingers off the legs." },
  ],
  copies: [
    { owner: "kaisa", tag: "OK-KAI", serial: "S6-0187", revision: "Rev B", works: true },
    { owner: "pim", tag: "OK-PIM", serial: "S6-0052", revision: "Rev A", works: true },
    { owner: "otto", tag: "OK-OTT", serial: "S6-0090", revision: "Rev A", modifications: "C8 1u", works: true },
    { owner: "bram", tag: "OK-BRA", revision: "Rev B", works: true },
  ],
};
