import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  CPU_6502,
  RAM_6116,
  ROM_24,
  ROM_28,
  VIA_6522,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const processor = { sheet: "1" };
const voices = { sheet: "2" };
const output = { sheet: "3" };

const placements = [
  ...row(26, 12, [
    part("J2", "connector", "main board", { package: "header-16", ...processor }),
    16,
    part("J1", "connector", "power", { package: "header-8", ...output }),
    16,
    part("C2", "capacitor", "100u 16V", { package: "radial-8", ...output, notes: "On +5V." }),
    part("C3", "capacitor", "22u 16V tantalum", { ...output, notes: "On -5V; positive end on ground." }),
    part("C4", "capacitor", "10u 25V tantalum", { ...output, notes: "On +12V." }),
    chip("VR1", "7905", "TO-220", { ...output, notes: "-12V in, -5V out." }),
    part("C5", "capacitor", "1u 35V tantalum", { ...output, notes: "Input of VR1; positive end on ground." }),
  ]),
  ...row(34, 36, [
    chip("U1", "6502", "DIP-40", { socketed: true, ...processor }),
    chip("U2", "2764", "DIP-28", { socketed: true, ...processor, notes: "Program." }),
    chip("U3", "6116", "DIP-24", processor),
    chip("U5", "74ls138", "DIP-16", processor),
    part("RN1", "resistor-pack", "8×4k7", { package: "SIP-9", ...processor }),
  ]),
  ...row(34, 62, [
    chip("U4", "6522", "DIP-40", { ...processor, notes: "Sound latch in, volume out." }),
    chip("U7", "kl-0718", "DIP-28", { code: "KL/0718/1", socketed: true, ...voices }),
    chip("U6", "bw-80513", "PLCC-44", { code: "BW 80513 A", socketed: true, ...voices }),
    chip("U8", "2716", "DIP-24", { socketed: true, ...voices, notes: "Noise and drum samples." }),
    chip("U9", "dac0800", "DIP-16", voices),
    part("TP1", "test-point", "PHI2", processor),
    part("TP2", "test-point", "SPEECH", voices),
  ]),
  ...row(18, 88, [
    chip("U10", "74ls393", "DIP-14", processor),
    chip("U11", "74ls04", "DIP-14", processor),
    part("Y1", "crystal", "3.579 MHz", processor),
    part("R1", "resistor", "1k", processor),
    part("R2", "resistor", "1k", processor),
    chip("U12", "74ls00", "DIP-14", processor),
    chip("U13", "lm324", "DIP-14", { ...voices, notes: "Filters, between +12V and -5V." }),
    chip("U14", "tl072", "DIP-8", voices),
    chip("U15", "4066", "DIP-14", { ...voices, notes: "Volume steps." }),
  ]),
  ...row(14, 112, [
    part("C6", "capacitor", "100n", processor),
    part("C7", "capacitor", "100n", processor),
    part("C8", "capacitor", "100n", voices),
    part("C9", "capacitor", "2u2 16V tantalum", { ...processor, notes: "Reset delay." }),
    part("R3", "resistor", "47k", { ...processor, notes: "Reset delay." }),
    part("CR1", "diode", "1N4148", processor),
    part("R4", "resistor", "5k1", { ...voices, notes: "Reference of U9." }),
    part("R5", "resistor", "10k", voices),
    part("R7", "resistor", "22k", voices),
    part("C10", "capacitor", "10n", { ...voices, notes: "Speech filter." }),
    part("C11", "capacitor", "10n", voices),
    part("RV1", "resistor", "10k trimmer", { package: "trimmer", ...output, notes: "Loudness." }),
    part("C12", "capacitor", "1000u 25V", { package: "radial-18", ...output, notes: "To the loudspeaker." }),
    part("U16", "chip", "8 W audio amplifier", { package: "TO-220-5", ...output, notes: "On the heat sink." }),
    part("R6", "resistor", "1R", output),
    part("J3", "connector", "loudspeaker", { package: "header-4", ...output }),
  ]),
];

const connectors = [
  connector(
    "J1",
    "Power",
    "8-way header",
    `1 +5V
     2 +5V
     3 GND
     4 GND
     5 +12V
     6 -12V
     7 GND
     8 -`,
  ),
  connector(
    "J2",
    "Main board",
    "16-way header",
    `${Array.from({ length: 8 }, (_, index) => `${index + 1} SND${index}`).join("\n")}
     9 /SND
     10 /RESIN
     11 GND
     12 GND
     13 -
     14 -
     15 GND
     16 -`,
  ),
  connector("J3", "Loudspeaker", "4-way header", "1 SPK\n2 SPK\n3 GND\n4 GND"),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  decoupling("+5V", "C2 C6 C7 C8"),
  [
    net("power", "+5V", "U15.14 RN1.1 R3.1 CR1.K U5.6 U1.2 U1.38 U4.24"),
    net("power", "+12V", "U9.13 U13.4 U14.8 U16.5 C4.1 R4.1"),
    net("power", "-5V", "VR1.3 C3.2 U9.3 U13.11 U14.4"),
    net("power", "-12V", "VR1.2 C5.2"),
    net("ground", "GND", "VR1.1 C3.1 C5.1 C4.2 C9.2 U15.7 U16.3 U9.1 R5.2 U5.4 U10.2 U10.12 RV1.3 C10.2 C11.2 R6.2"),
    net("ground", "GND", "U12.12 U12.13 U11.13 U11.9 U14.3 U14.5 U13.10 U13.12 U9.2 U5.5 U4.18"),
  ],
  bus("address", "A", {
    U1: CPU_6502.address,
    U2: ROM_28.address.slice(0, 13),
    U3: RAM_6116.address,
    U8: ROM_24.address.slice(0, 11),
    U4: VIA_6522.select,
    U6: [10, 11],
    U5: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3],
  }),
  bus("data", "D", {
    U1: CPU_6502.data,
    U2: ROM_28.data,
    U3: RAM_6116.data,
    U8: ROM_24.data,
    U4: VIA_6522.data,
    U6: [2, 3, 4, 5, 6, 7, 8, 9],
    U7: [2, 3, 4, 5, 6, 7, 8, 9],
  }),
  bus("data", "SND", { U4: VIA_6522.portA, RN1: [2, 3, 4, 5, 6, 7, 8, 9] }),
  bus("data", "DA", { U6: [23, 24, 25, 26, 27, 28, 29, 30], U9: [12, 11, 10, 9, 8, 7, 6, 5] }),
  bus("control", "VOL", { U4: [10, 11, 12, 13], U15: [13, 5, 6, 12] }),
  [
    net("clock", "XA", "Y1.1 U11.1 R1.1"),
    net("clock", "XC", "U11.2 U11.3 R1.2 R2.1"),
    net("clock", "XB", "Y1.2 U11.4 U11.5 R2.2"),
    net("clock", "CLK358", "U11.6 U10.1 U6.17"),
    net("clock", "PHI0", "U10.4 U1.37"),
    net("clock", "CLK224K", "U10.6 U10.13"),
    net("clock", "SPCLK", "U10.11 U7.13"),
    net("clock", "PHI2", "U1.39 U4.25 U6.14 U12.1 TP1.1"),
    net("control", "RW", "U1.34 U4.22 U6.13 U12.4 U12.5"),
    net("control", "WRITE", "U12.6 U12.2"),
    net("control", "/WR", "U12.3 U3.21 U7.10"),
    net("select", "/RAM", "U5.15 U3.18 U3.20"),
    net("select", "/VIA", "U5.14 U4.23"),
    net("select", "/TONES", "U5.13 U6.12"),
    net("select", "/SPEECH", "U5.12 U7.11"),
    net("select", "/SAMPLES", "U5.11 U8.18 U8.20"),
    net("select", "/ROM", "U5.7 U2.20 U2.22"),
    net("control", "/SND", "U4.40"),
    net("control", "/IRQ", "U1.4 U4.21 U6.18"),
    net("control", "/NMI", "U1.6 U7.12"),
    net("reset", "/RESIN", "R3.2 C9.1 CR1.A U12.9 U12.10"),
    net("reset", "RESETH", "U12.8 U11.11"),
    net("reset", "/RESET", "U11.10 U1.40 U4.34 U6.15 U7.15"),
    net("signal", "CHA", "U6.19 U15.1"),
    net("signal", "CHB", "U6.20 U15.4"),
    net("signal", "CHC", "U6.21 U15.8"),
    net("signal", "SPEECHRAW", "U7.16 U13.3"),
    net("signal", "SPEECH", "U13.1 U13.2 U15.11 TP2.1"),
    net("signal", "SPARE3", "U13.8 U13.9"),
    net("signal", "SPARE4", "U13.13 U13.14"),
    net("signal", "SPF0", "U7.18 C10.1"),
    net("signal", "SPF1", "U7.19 C11.1"),
    net("signal", "VREF9", "R4.2 U9.14"),
    net("signal", "VREFG", "U9.15 R5.1"),
    net("signal", "DACI", "U9.4 U14.2"),
    net("signal", "DACOUT", "U14.1 U13.5"),
    net("signal", "DACF", "U13.6 U13.7 R7.1"),
    net("signal", "MIXIN", "U15.2 U15.3 U15.9 U15.10 U14.6 R7.2"),
    net("signal", "MIXOUT", "U14.7 RV1.1"),
    net("signal", "AMPIN", "RV1.2 U16.1"),
    net("signal", "AMPOUT", "U16.4 C12.1 R6.1"),
    net("signal", "SPK", "C12.2"),
  ],
);

export const board: SeedBoard = {
  slug: "tern-arcade-sound",
  name: "Tern Alley sound board",
  kind: "arcade",
  maker: "Galloway Coin Amusements",
  machine: "Tern Alley arcade cabinet",
  year: 1985,
  summary:
    "A 6502 of its own takes commands from the main board, plays tones on one custom and speaks with another. Makes -5 V from -12 V for the speech chip.",
  notes: `**-5 V first, always.** U7 has three supplies and dies in minutes when +12 V is on and -5 V is not. VR1 sits at the
edge, its joints crack from the heat sink's weight, and so the speech chips of this board are rare. Measure at U7.1, not
at VR1, and before the first power-on take U7 out of its socket.

How the sound tells:

- hum of 100 Hz and nothing else: U16 lives, everything before it is quiet
- tones well, no speech: -5 V, then /SPEECH at U7.11, then SPCLK
- speech well, no tones: CLK358 at U6.17
- plays one command for ever: /SND at U4.40, or U4
- silent, PHI2 there, no /VIA: the program does not run

/RESIN comes from the main board. Alone on the bench the board starts by itself through R3 and C9, and says one word at
power-on. That word is the self-test.`,
  width: 250,
  height: 128,
  hazards: ["hot-parts"],
  highestVoltage: 12,
  revisions: [
    { name: "Issue 1", notes: "VR1 stands up without a screw." },
    { name: "Issue 2", notes: "VR1 screwed to the heat sink; phrases /4." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "J1", notes: "0.7 A." },
    { name: "+12V", nominal: 12, tolerancePercent: 10, regulated: true, source: "J1" },
    { name: "-12V", nominal: -12, tolerancePercent: 10, regulated: true, source: "J1", notes: "Feeds VR1 only." },
    {
      name: "-5V",
      nominal: -5,
      tolerancePercent: 5,
      regulated: true,
      source: "VR1",
      notes: "Speech chip and op-amps.",
    },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "message", signal: "says READY at power-on", meaning: "well", suspects: [] },
    { form: "beeps", signal: "1 low beep", meaning: "work RAM", suspects: ["U3"] },
    { form: "beeps", signal: "2 low beeps", meaning: "checksum of the program", suspects: ["U2"] },
    { form: "beeps", signal: "3 low beeps", meaning: "speech chip does not answer", suspects: ["U7", "VR1"] },
  ],
  cautions: [
    { at: "U7", text: "Out of its socket until -5 V has been measured at U7.1. It cannot be bought." },
    { at: "U16", text: "Heat sink at 70 °C and on ground. Fingers." },
    { at: "C12", text: "Holds its charge for a minute; discharge through 100 Ω before you measure." },
  ],
  copies: [
    { owner: "tomasz", tag: "TS-TOM-1", serial: "GA 10233", revision: "Issue 1", works: true },
    { owner: "tomasz", tag: "TS-TOM-2", serial: "GA 14410", revision: "Issue 2", works: true },
    { owner: "otto", tag: "TS-OTT", revision: "Issue 1", works: true },
    { owner: "yusuf", tag: "TS-YUS", serial: "GA 10502", revision: "Issue 1", works: true },
  ],
};
