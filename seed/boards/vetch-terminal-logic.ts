import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import {
  LS166,
  LS244,
  LS245,
  LS373,
  RAM_2114,
  RAM_6116,
  ROM_24,
  ROM_28,
  USART_8251,
  Z80,
  bus,
  connector,
  decoupling,
  net,
  netlist,
  supplyNets,
} from "#seed/notation/wiring.ts";

const processor = { sheet: "1" };
const display = { sheet: "2" };
const ports = { sheet: "3" };

const placements = [
  ...row(29, 9, [
    part("J2", "connector", "host", { package: "DB25", ...ports }),
    part("J3", "connector", "keyboard", { package: "DIN-6", ...ports }),
    part("J1", "connector", "power from deflection board", { package: "header-10", ...processor }),
    part("J4", "connector", "video to deflection board", { package: "header-6", ...display }),
    part("SW1", "switch", "8 × DIP", { package: "DIP-16", ...ports, notes: "1 to 4 rate, 5 parity, 6 local, 7 test." }),
  ]),
  ...row(29, 31, [
    chip("U1", "z80cpu", "DIP-40", { socketed: true, ...processor }),
    chip("U12", "sm0805", "DIP-40", { socketed: true, code: "SM0805P", ...ports }),
    chip("U2", "27c256", "DIP-28", { socketed: true, ...processor, notes: "Firmware 2.1, checksum 6B3D." }),
    chip("U3", "6116", "DIP-24", processor),
    chip("U11", "8251", "DIP-28", { socketed: true, ...ports }),
  ]),
  ...row(16, 55, [
    chip("U8", "hdl-c03", "PLCC-68", { socketed: true, code: "HDL-C03-12", ...display }),
    chip("U4", "2114", "DIP-18", display),
    chip("U5", "2114", "DIP-18", display),
    chip("U6", "2114", "DIP-18", display),
    chip("U7", "2114", "DIP-18", display),
    chip("U9", "kl-0512", "DIP-24", { socketed: true, code: "KL/0512/3", ...display }),
    chip("U10", "74ls166", "DIP-16", display),
    part("Y1", "crystal", "15.360 MHz", display),
    part("Y2", "crystal", "4.9152 MHz", processor),
  ]),
  ...row(14, 88, [
    chip("U13", "74ls138", "DIP-16", processor),
    chip("U14", "74ls138", "DIP-16", processor),
    chip("U15", "74ls244", "DIP-20", ports),
    chip("U16", "74ls245", "DIP-20", display),
    chip("U17", "74ls374", "DIP-20", display),
    chip("U18", "74ls273", "DIP-20", ports),
    chip("U21", "74ls163", "DIP-16", display),
    part("Y3", "crystal", "6.000 MHz", ports),
    chip("VR1", "7912", "TO-220", { ...ports, notes: "No heat sink, and none needed until an mc1488 shorts." }),
  ]),
  ...row(13, 103, [
    chip("U19", "74ls04", "DIP-14", display),
    chip("U20", "74ls74", "DIP-14", processor),
    chip("U22", "74ls86", "DIP-14", display),
    chip("U23", "74ls08", "DIP-14", display),
    chip("U26", "74ls14", "DIP-14", processor),
    chip("U28", "74ls32", "DIP-14", processor),
    chip("U30", "74ls393", "DIP-14", ports),
    chip("U24", "mc1488", "DIP-14", ports),
    chip("U25", "mc1489", "DIP-14", ports),
  ]),
  ...row(14, 118, [
    chip("U29", "uln2003", "DIP-16", ports),
    chip("U27", "ne555", "DIP-8", ports),
    part("RN1", "resistor-pack", "8×3k3", { package: "SIP-9", ...processor }),
    part("RN2", "resistor-pack", "8×330R", { package: "SIP-9", ...ports }),
    part("RN3", "resistor-pack", "8×10k", { package: "SIP-9", ...ports }),
    part("LED1", "diode", "LED red 1", ports),
    part("LED2", "diode", "LED red 2", ports),
    part("LED3", "diode", "LED red 3", ports),
    part("LED4", "diode", "LED red 4", ports),
    part("R1", "resistor", "22k", processor),
    part("R2", "resistor", "47k", ports),
  ]),
  ...row(14, 131, [
    part("C1", "capacitor", "10u 16V tantalum", processor),
    part("C2", "capacitor", "22u 16V tantalum", { ...ports, notes: "On -12 V; positive end on ground." }),
    part("C3", "capacitor", "100n", processor),
    part("C4", "capacitor", "100n", display),
    part("C5", "capacitor", "100n", display),
    part("C6", "capacitor", "100n", display),
    part("C7", "capacitor", "100n", ports),
    part("C8", "capacitor", "10n", ports),
    part("C9", "capacitor", "220u 16V", { package: "radial-8", ...processor }),
    part("TP1", "test-point", "GND", processor),
  ]),
];

const connectors = [
  connector(
    "J1",
    "Power",
    "10-way header, from the deflection board's J3",
    `1 +5V
     2 +5V
     3 GND
     4 GND
     5 +12V
     6 GND
     7 -18V
     8 GND
     9 -
     10 -`,
  ),
  connector(
    "J2",
    "Host",
    "DB-25 socket",
    `1 GND
     2 TXD = STXD
     3 RXD = SRXD
     4 RTS = SRTS
     5 CTS = SCTS
     6 DSR = SDSR
     7 GND
     ${Array.from({ length: 12 }, (_, i) => `${8 + i} -`).join("\n")}
     20 DTR = SDTR
     21 -
     22 -
     23 -
     24 -
     25 -`,
  ),
  connector(
    "J3",
    "Keyboard",
    "6-pin DIN",
    `1 DATA = KDATA
     2 CLOCK = KCLK
     3 +5V
     4 GND
     5 BEEP
     6 GND`,
  ),
  connector(
    "J4",
    "Video",
    "6-way header",
    `1 VIDEO
     2 GND
     3 HSYNC
     4 GND
     5 VSYNC
     6 HALF`,
  ),
];

const switches = Array.from({ length: 8 }, (_, bit) => net("signal", `DIP${bit}`, `SW1.${bit + 1} RN3.${bit + 2}`));

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  decoupling("+5V", "C3 C4 C5 C6 C7 C9"),
  [
    net(
      "power",
      "+5V",
      "U27.8 RN1.1 RN2.1 RN3.1 R1.1 R2.1 U10.9 U20.1 U20.4 U20.10 U20.13 U21.1 U21.7 U21.9 U21.10 U29.9",
    ),
    net("power", "-12V", "VR1.3 C2.2"),
    net("power", "-18V", "VR1.2"),
    net("power", "+12V", ""),
    net("ground", "GND", "VR1.1 C2.1 C1.2 C8.2 TP1.1 U27.1 U10.1 U10.6 U9.18 U9.20 U13.5 U17.1 U19.13 U20.11 U20.12"),
    net("ground", "GND", Array.from({ length: 8 }, (_, i) => `SW1.${i + 9}`).join(" ")),
    net(
      "ground",
      "GND",
      "U21.3 U21.4 U21.5 U21.6 U23.4 U23.5 U29.5 U29.6 U22.9 U22.10 U22.12 U22.13 U23.9 U23.10 U23.12 U23.13 U28.12 U28.13 U30.2 U30.12 U26.13 U24.12 U24.13",
    ),
  ],
  bus("address", "A", {
    U1: Z80.address,
    U2: ROM_28.address,
    U3: RAM_6116.address,
    U8: [52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62],
  }),
  bus("address", "A", { U8: [10, 11, 12] }),
  bus("address", "A", { U14: [1, 2, 3, 5] }, 4),
  bus("address", "A", { U13: [1, 2, 3, 6] }, 12),
  [net("address", "A0", "U11.12"), net("address", "A15", "U28.1")],
  bus("data", "D", {
    U1: Z80.data,
    U2: ROM_28.data,
    U3: RAM_6116.data,
    U8: [2, 3, 4, 5, 6, 7, 8, 9],
    U11: USART_8251.data,
    U12: [11, 12, 13, 14, 15, 16, 17, 18],
    U15: LS244.outputs,
    U16: LS245.a,
    U18: LS373.d,
  }),
  bus("address", "SA", {
    U8: [20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30],
    U4: RAM_2114.address,
    U5: RAM_2114.address,
    U6: RAM_2114.address,
    U7: RAM_2114.address,
  }),
  bus("data", "SD", { U16: LS245.b, U17: LS373.d }),
  bus("data", "SD", { U4: RAM_2114.data, U6: RAM_2114.data }),
  bus("data", "SD", { U5: RAM_2114.data, U7: RAM_2114.data }, 4),
  bus("data", "CH", { U17: LS373.q }),
  bus("data", "CH", { U9: ROM_24.address.slice(4) }),
  bus("address", "L", { U8: [36, 37, 38, 39], U9: ROM_24.address.slice(0, 4) }),
  bus("data", "CD", { U9: ROM_24.data, U10: LS166.parallel }),
  switches,
  bus("signal", "DIP", { U15: LS244.inputs }),
  bus("signal", "LAMP", { U18: [2, 5, 6, 9], U29: [1, 2, 3, 4] }),
  ["LED1", "LED2", "LED3", "LED4"].flatMap((led, i) => [
    net("signal", `LEDK${i}`, `U29.${16 - i} ${led}.K`),
    net("signal", `LEDA${i}`, `RN2.${i + 2} ${led}.A`),
  ]),
  [
    net("select", "/ROMCS", "U28.3 U2.20"),
    net("select", "/WRAM", "U13.15 U3.18"),
    net("select", "/SREQ", "U13.14 U8.66"),
    net("select", "/USART", "U14.15 U11.11"),
    net("select", "/CRTC", "U14.14 U8.13"),
    net("select", "/KBD", "U14.13 U12.38"),
    net("select", "/LEDS", "U14.12 U28.4"),
    net("select", "/SWRD", "U14.11 U28.9"),
    net("select", "/SWOE", "U28.8 U15.1 U15.19"),
    net("clock", "LEDCK", "U28.6 U18.11"),
    net("control", "/MREQ", "U1.19 U13.4 U28.2 RN1.2"),
    net("control", "/IORQ", "U1.20 U14.4 RN1.3"),
    net("control", "/RD", "U1.21 U2.22 U3.20 U8.14 U11.13 U12.7 U16.1 U28.10"),
    net("control", "/WR", "U1.22 U3.21 U8.15 U11.10 U12.8 U28.5"),
    net("control", "/M1", "U1.27 U14.6"),
    net("control", "/WAIT", "U1.24 U8.19 RN1.4"),
    net("control", "/INT", "U1.16 U26.6 RN1.5"),
    net("control", "/NMI", "U1.17 RN1.6"),
    net("control", "/BUSRQ", "U1.25 RN1.7"),
    net("signal", "RXRDY", "U11.14 U26.5"),
    net("clock", "XCPU1", "Y2.1 U19.1"),
    net("clock", "XCPU2", "Y2.2 U19.2 U19.3"),
    net("clock", "CLK49", "U19.4 U20.3"),
    net("signal", "CLKN", "U20.2 U20.6"),
    net("clock", "CLK", "U20.5 U1.6 U11.20 U30.1"),
    net("clock", "BAUD16", "U30.6 U11.9 U11.25 U30.13"),
    net("clock", "XDOT1", "Y1.1 U19.5"),
    net("clock", "XDOT2", "Y1.2 U19.6 U19.9"),
    net("clock", "DOTCLK", "U19.8 U10.7 U21.2"),
    net("clock", "CCLK", "U21.12 U8.40 U17.11"),
    net("clock", "XKBD1", "Y3.1 U12.1"),
    net("clock", "XKBD2", "Y3.2 U12.2"),
    net("reset", "POR", "R1.2 C1.1 U26.9"),
    net("reset", "RESETH", "U26.8 U26.11 U11.21"),
    net("reset", "/RESET", "U26.10 U1.26 U8.16 U12.3 U18.1"),
    net("address", "SA10", "U19.11 U4.8 U5.8"),
    net("address", "SA10N", "U19.10 U6.8 U7.8"),
    net("control", "/SWE", "U8.32 U4.10 U5.10 U6.10 U7.10"),
    net("control", "/SGATE", "U8.33 U16.19"),
    net("control", "/LOAD", "U8.41 U10.15"),
    net("signal", "HS", "U8.42 U26.1"),
    net("signal", "HSYNC", "U26.2"),
    net("signal", "VS", "U8.43 U26.3"),
    net("signal", "VSYNC", "U26.4"),
    net("signal", "DE", "U8.44 U23.2"),
    net("signal", "CUR", "U8.45 U22.4"),
    net("signal", "REV", "U8.46 U22.5"),
    net("signal", "INVERT", "U22.6 U22.2"),
    net("signal", "DOTS", "U10.13 U22.1"),
    net("signal", "PIX", "U22.3 U23.1"),
    net("signal", "VIDEO", "U23.3"),
    net("signal", "HALF", "U8.49"),
    net("signal", "TXD", "U11.19 U24.2"),
    net("signal", "RTS", "U11.23 U24.4 U24.5"),
    net("signal", "DTR", "U11.24 U24.9 U24.10"),
    net("signal", "RXD", "U11.3 U25.3"),
    net("signal", "CTS", "U11.17 U25.6"),
    net("signal", "DSR", "U11.22 U25.8"),
    net("signal", "STXD", "U24.3"),
    net("signal", "SRTS", "U24.6"),
    net("signal", "SDTR", "U24.8"),
    net("signal", "SRXD", "U25.1"),
    net("signal", "SCTS", "U25.4"),
    net("signal", "SDSR", "U25.10"),
    net("signal", "KDATA", "U12.4"),
    net("signal", "KCLK", "U12.5"),
    net("control", "BEEPEN", "U18.19 U27.4"),
    net("signal", "BEEPRC", "R2.2 C8.1 U27.2 U27.6"),
    net("signal", "TONE", "U27.3 U29.7"),
    net("signal", "BEEP", "U29.10"),
  ],
);

export const board: SeedBoard = {
  slug: "vetch-terminal-logic",
  name: "Vetch 220 logic board",
  kind: "terminal",
  maker: "Vetch Data",
  machine: "Vetch 220 video terminal",
  year: 1985,
  summary:
    "The thinking half of a video terminal: Z80, firmware in one EPROM, a text display controller in PLCC-68 with its own screen RAM, RS-232 to the host and a single-chip processor for the keyboard.",
  notes: `Its +5 V, +12 V and -18 V come from the deflection board by J1, so this board can be run on a bench supply with no
tube near: +5 V at 1.4 A, +12 V and -12 V (into VR1's output, with VR1 lifted) at 40 mA.

1. Lamps LED1 to LED4 count through the self-test. The lamp pattern that stays is the step that failed.
2. A screen full of one steady character: the processor never cleared it. Look at U1, U2, /WAIT.
3. Right letters in wrong places: SA lines. Wrong letters in right places: SD lines, U17 or U9.
4. Snow while scrolling only: a ground of U8's socket.

RS-232 troubles are four times out of five :chip[mc1488] after a thunderstorm, and its -12 V supply goes down with it.`,
  width: 270,
  height: 150,
  hazards: [],
  highestVoltage: 25,
  revisions: [
    { name: "Rev A", notes: "HDL-C03-11, firmware 1.x." },
    { name: "Rev B", notes: "HDL-C03-12, firmware 2.x, RN3 added." },
    { name: "Rev C", notes: "Spares boards with BW 00309 A and KL/0512/5." },
  ],
  rails: [
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "J1" },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "J1" },
    { name: "-12V", nominal: -12, tolerancePercent: 5, regulated: true, source: "VR1" },
    { name: "-18V", nominal: -20, tolerancePercent: 20, regulated: false, source: "J1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "flashes", signal: "LED1 stays on", meaning: "firmware checksum", suspects: ["U2", "U28"] },
    { form: "flashes", signal: "LED2 stays on", meaning: "work RAM", suspects: ["U3", "U13"] },
    {
      form: "flashes",
      signal: "LED1 and LED2 stay on",
      meaning: "screen RAM",
      suspects: ["U4", "U5", "U6", "U7", "U16", "U8"],
    },
    {
      form: "flashes",
      signal: "LED3 stays on",
      meaning: "keyboard processor does not answer",
      suspects: ["U12", "Y3", "J3"],
    },
    {
      form: "flashes",
      signal: "LED4 stays on",
      meaning: "serial loop-back in test position",
      suspects: ["U11", "U24", "U25"],
    },
    {
      form: "flashes",
      signal: "all four stay on",
      meaning: "the program never started",
      suspects: ["U1", "U2", "U26", "U8"],
    },
    { form: "beeps", signal: "1 short", meaning: "self-test passed", suspects: [] },
  ],
  cautions: [
    {
      at: "J4",
      text: "Never run the deflection board with J4 unplugged and brightness up: the spot burns the phosphor.",
    },
    { at: "U12", text: "The program of U12 exists only inside it. Do not part with a working one." },
    { at: "C2", text: "C2 sits with its positive end on ground." },
  ],
  copies: [
    {
      owner: "greta",
      tag: "VT-GRE-1",
      serial: "V220-4471",
      revision: "Rev B",
      works: true,
      jumpers: "SW1 all off but 3",
    },
    {
      owner: "greta",
      tag: "VT-GRE-2",
      serial: "V220-0907",
      revision: "Rev A",
      works: true,
      modifications: "firmware 2.1 in a Rev A board",
    },
    { owner: "mirela", tag: "VT-MIR", serial: "V220-5120", revision: "Rev B", works: true },
    { owner: "ines", tag: "VT-SPARE", revision: "Rev C", works: null, contents: "KL/0512/5, line drawing" },
    { owner: "pim", tag: "VT-PIM", serial: "V220-3386", revision: "Rev B", works: false },
  ],
};
