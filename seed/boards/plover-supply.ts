import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import { connector, net, netlist, supplyNets } from "#seed/notation/wiring.ts";

const mains = { sheet: "1" };
const logic = { sheet: "1" };
const analog = { sheet: "2" };

const placements = [
  ...row(13, 10, [
    part("J1", "connector", "mains in", { package: "screw-3", ...mains }),
    part("F1", "fuse", "630 mA slow", mains),
    part("S1", "switch", "mains switch", mains),
    10,
    part("F2", "fuse", "4 A", { ...logic, notes: "In front of the +5 V regulator; blows when the crowbar fires." }),
    part("J2", "connector", "power to counter board", { package: "header-10", ...logic }),
    part("J3", "connector", "fan", { package: "header-4", ...analog }),
  ]),
  ...row(35, 46, [
    part("T1", "transformer", "mains transformer 8.5 V, 2×15 V", { package: "mains-transformer", ...mains }),
    part("C1", "capacitor", "10000u 16V", { package: "radial-30", ...logic }),
    part("C2", "capacitor", "2200u 35V", { package: "radial-18", ...analog }),
    part("C3", "capacitor", "2200u 35V", { package: "radial-18", ...analog }),
    part("Q1", "transistor", "PNP 60 V 10 A pass", { package: "TO-220", ...logic, notes: "On the rear wall." }),
  ]),
  ...row(13, 102, [
    part("BR1", "diode", "6 A bridge", { package: "bridge", ...logic }),
    part("BR2", "diode", "1 A bridge", { package: "bridge", ...analog }),
    chip("VR1", "7805", "TO-220", { ...logic, notes: "Steers Q1." }),
    chip("VR2", "7812", "TO-220", analog),
    chip("VR3", "7912", "TO-220", analog),
    chip("VR4", "7905", "TO-220", { ...analog, notes: "Ground leg lifted by RV1: -5.2 V." }),
    chip("VR5", "7812", "TO-220", { ...analog, notes: "+12SB, before the front switch." }),
    part("Q2", "transistor", "SCR 8 A", { package: "TO-220", ...logic, notes: "Crowbar on +5 V." }),
    part("RV1", "resistor", "100R trimmer, -5.2 V", { package: "trimmer", ...analog }),
  ]),
  ...row(13, 119, [
    chip("U1", "lm339", "DIP-14", logic),
    part("U2", "chip", "unknown hybrid", { package: "SIP-8", code: "BW 00630 A", ...logic }),
    part("D1", "diode", "5.6 V zener", { ...logic, notes: "Reference of the crowbar." }),
    part("D2", "diode", "2.5 V zener", logic),
    part("R1", "resistor", "6R8 2W", { ...logic, notes: "Base of Q1." }),
    part("R2", "resistor", "1k", { ...logic, notes: "Bleeds C1." }),
    part("R3", "resistor", "4k7", { ...analog, notes: "Bleeds C2." }),
    part("R4", "resistor", "4k7", { ...analog, notes: "Bleeds C3." }),
    part("R5", "resistor", "470R", { ...logic, notes: "Gate of Q2." }),
  ]),
  ...row(13, 132, [
    part("C4", "capacitor", "10u 16V tantalum", logic),
    part("C5", "capacitor", "10u 25V tantalum", analog),
    part("C6", "capacitor", "10u 25V tantalum", analog),
    part("C7", "capacitor", "22u 16V tantalum", { ...analog, notes: "Positive end on ground." }),
    part("C8", "capacitor", "10u 25V tantalum", analog),
    part("C9", "capacitor", "100n", logic),
    part("R6", "resistor", "10k", logic),
    part("R7", "resistor", "4k7", logic),
    part("R8", "resistor", "2k2", logic),
    part("TH1", "resistor", "10k NTC", { ...logic, notes: "Glued to Q1's angle." }),
    part("TP1", "test-point", "+5V", logic),
    part("TP2", "test-point", "-5.2V", analog),
    part("TP3", "test-point", "GND", logic),
  ]),
];

const connectors = [
  connector("J1", "Mains in", "3-way screw terminal", "1 L = MAINS\n2 N = NEUTRAL\n3 PE = EARTH"),
  connector(
    "J2",
    "Power to counter board",
    "10-way header",
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
  connector("J3", "Fan", "4-way header", "1 +12V\n2 FANRET\n3 GND\n4 -"),
];

const nets = netlist(connectors, supplyNets(placements, chips), [
  net("power", "MAINS", "F1.1"),
  net("power", "LFUSED", "F1.2 S1.1"),
  net("power", "LSW", "S1.2 T1.1"),
  net("power", "NEUTRAL", "T1.2"),
  net("ground", "EARTH", "T1.8"),
  net("power", "AC8A", "T1.3 BR1.1"),
  net("power", "AC8B", "T1.4 BR1.2"),
  net("power", "AC15A", "T1.5 BR2.1"),
  net("power", "AC15B", "T1.7 BR2.2"),
  net("power", "V8RAW", "BR1.3 C1.1 R2.1 F2.1 U2.8 R6.1"),
  net("power", "V8FUSED", "F2.2 R1.1 Q1.E"),
  net("power", "Q1BASE", "R1.2 Q1.B VR1.1"),
  net("power", "V+RAW", "BR2.3 C2.1 R3.1 VR2.1 VR5.1"),
  net("power", "V-RAW", "BR2.4 C3.2 R4.2 VR3.2 VR4.2"),
  net("power", "+5V", "VR1.3 Q1.C C4.1 C9.1 Q2.A D1.K U1.3 TP1.1 R8.1"),
  net("power", "+12V", "VR2.3 C5.1"),
  net("power", "-12V", "VR3.3 C6.2"),
  net("power", "-5.2V", "VR4.3 C7.2 TP2.1 RV1.1"),
  net("power", "+12SB", "VR5.3 C8.1"),
  net("ground", "GND", "T1.6 BR1.4 C1.2 R2.2 C2.2 R3.2 C3.1 R4.1 VR1.2 VR2.2 VR3.1 VR5.2 C4.2 C5.2 C6.1 C7.1 C8.2"),
  net("ground", "GND", "C9.2 Q2.K RV1.3 U1.12 U2.4 D2.A R7.2 TH1.2 TP3.1"),
  net("signal", "VR4ADJ", "VR4.1 RV1.2"),
  net("signal", "ZENER", "D1.A R5.1"),
  net("signal", "SCRGATE", "R5.2 Q2.G U2.5"),
  net("signal", "REF25", "D2.K R8.2 U1.4 U1.6 U2.1"),
  net("signal", "RAWSENSE", "R6.2 R7.1 U1.5"),
  net("control", "/PFAIL", "U1.2"),
  net("signal", "TEMP", "TH1.1 U2.3 U1.7"),
  net("signal", "HOT", "U1.1 U2.2"),
  net("signal", "FANRET", "U2.6"),
]);

export const board: SeedBoard = {
  slug: "plover-supply",
  name: "Plover 80 supply board",
  kind: "bench-instrument",
  maker: "Plover Instruments",
  machine: "Plover 80 frequency counter",
  year: 1987,
  summary:
    "Mains transformer, three raw rails and five regulated ones for the counter, with a crowbar on +5 V and a standby rail for the oven.",
  notes: `All linear, nothing live behind T1. What is dangerous is the left third: J1, F1, S1 and T1's primary, with bare
lugs on the solder side.

- **Crowbar.** Over 6.1 V on +5 V fires Q2 and blows F2. A second blown F2 is a message, not bad luck: feed +5 V from a
  bench supply with a 0.5 A limit and F2 out, and see who draws.
- **-5.2 V** is a :chip[7905] with its ground leg on RV1. It drifts when RV1 is dirty; two turns there and back first.
- **Ripple** tells the capacitor: 100 Hz on V8RAW should be near 1.2 V with the counter as load. 3 V and more is C1.
- U2 (:code[BW 00630 A]) is unknown. It takes TEMP and the raw rail, drives the fan's return, and can fire the crowbar.
  Nobody has a second source.`,
  width: 200,
  height: 146,
  hazards: ["mains", "stored-charge", "hot-parts"],
  highestVoltage: 325,
  revisions: [
    { name: "Issue 1", notes: "C1 is 6800u." },
    { name: "Issue 2", notes: "C1 10000u, TH1 moved to Q1's angle." },
  ],
  rails: [
    { name: "MAINS", nominal: 230, ac: true, tolerancePercent: 10, regulated: false },
    {
      name: "V8RAW",
      nominal: 10.5,
      tolerancePercent: 12,
      regulated: false,
      source: "BR1",
      notes: "With the counter as load.",
    },
    { name: "V+RAW", nominal: 20, tolerancePercent: 12, regulated: false, source: "BR2" },
    { name: "V-RAW", nominal: -20, tolerancePercent: 12, regulated: false, source: "BR2" },
    { name: "+5V", nominal: 5, tolerancePercent: 3, regulated: true, source: "VR1" },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "VR2" },
    { name: "-12V", nominal: -12, tolerancePercent: 5, regulated: true, source: "VR3" },
    { name: "-5.2V", nominal: -5.2, tolerancePercent: 4, regulated: true, source: "VR4" },
    { name: "+12SB", nominal: 12, tolerancePercent: 5, regulated: true, source: "VR5" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    { form: "message", signal: "Err 7", meaning: "/PFAIL low: raw rail under 7.6 V", suspects: ["C1", "BR1", "U1"] },
    {
      form: "flashes",
      signal: "standby lamp on, all else dark",
      meaning: "+12SB there, +5 V not",
      suspects: ["F2", "Q1", "VR1", "Q2"],
    },
  ],
  cautions: [
    { at: "T1", text: "Bare mains lugs under T1. Screw the insulating plate back before the board is turned." },
    { at: "C1", text: "C1 holds 10 V and can weld: let R2 do its work for a minute, then measure." },
    {
      at: "Q1",
      text: "Q1's tab is its collector, +5 V; its angle is on EARTH through a mica washer. Do not forget the washer.",
    },
    { at: "F2", text: "A blown F2 means that the crowbar fired. Ask why before the third fuse." },
  ],
  copies: [
    { owner: "femi", tag: "PS-FEMI-1", serial: "S80-0440", revision: "Issue 1", works: true },
    { owner: "femi", tag: "PS-FEMI-2", serial: "S80-0869", revision: "Issue 2", works: true },
    {
      owner: "yusuf",
      tag: "PS-YUS",
      serial: "S80-1231",
      revision: "Issue 2",
      works: true,
      modifications: "F2 holder renewed",
    },
    { owner: "mirela", tag: "PS-MIR", serial: "S80-0701", revision: "Issue 2", works: null },
  ],
};
