import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/a.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import { connector, net, netlist, supplyNets } from "#seed/notation/wiring.ts";

const supply = { sheet: "1" };
const line = { sheet: "2" };
const field = { sheet: "3" };
const video = { sheet: "4" };

const placements = [
  ...row(13, 10, [
    part("J1", "connector", "mains in", { package: "screw-3", ...supply }),
    part("F1", "fuse", "1 A slow", { ...supply, notes: "Live side of the mains." }),
    part("J7", "connector", "to switch and transformer", { package: "screw-3", ...supply }),
    10,
    part("J2", "connector", "transformer secondary", { package: "header-6", ...supply }),
    part("F2", "fuse", "3.15 A", supply),
    part("TP1", "test-point", "B+", line),
    part("TP2", "test-point", "GND", line),
    part("J3", "connector", "power to logic board", { package: "header-10", ...supply }),
  ]),
  ...row(13, 34, [
    part("BR1", "diode", "4 A bridge", { package: "bridge", ...supply }),
    part("C1", "capacitor", "4700u 35V", { package: "radial-18", ...supply }),
    part("C2", "capacitor", "1000u 35V", { package: "radial-8", ...supply, notes: "For -18 V." }),
    part("D1", "diode", "1N4002", supply),
    chip("VR1", "7812", "TO-220", { ...supply, notes: "On the chassis angle with VR2. Runs at 60 °C." }),
    chip("VR2", "7805", "TO-220", supply),
    part("C3", "capacitor", "10u 25V tantalum", supply),
    part("C4", "capacitor", "10u 16V tantalum", supply),
    part("R1", "resistor", "2k2", { ...supply, notes: "Bleeds C1." }),
    part("R2", "resistor", "1R 5W", { ...supply, notes: "Between raw and VR1; smells before it opens." }),
    part("C5", "capacitor", "100n", supply),
  ]),
  ...row(13, 58, [
    chip("U1", "vq4-0344", "DIP-16", { socketed: true, code: "VQ4-0344-02", ...line }),
    part("RV1", "resistor", "10k trimmer, height", { package: "trimmer", ...field }),
    part("RV2", "resistor", "47k trimmer, field hold", { package: "trimmer", ...field }),
    part("RV3", "resistor", "4k7 trimmer, line hold", { package: "trimmer", ...line }),
    part("RV4", "resistor", "100k trimmer, brightness", { package: "trimmer", ...video }),
    part("C6", "capacitor", "10n polystyrene", { ...line, notes: "Line oscillator." }),
    part("C7", "capacitor", "220n", { ...field, notes: "Field oscillator." }),
    part("R3", "resistor", "12k", line),
    part("R4", "resistor", "10k", { ...line, notes: "X-ray sense." }),
    part("D5", "diode", "11 V zener", { ...line, notes: "X-ray sense." }),
  ]),
  ...row(13, 76, [
    chipless("Q5", "NPN 60 V 4 A", "TO-220"),
    chipless("Q6", "PNP 60 V 4 A", "TO-220"),
    part("C13", "capacitor", "1000u 25V", { package: "radial-8", ...field, notes: "Couples the field coil." }),
    part("R5", "resistor", "1R", { ...field, notes: "Field current sense." }),
    part("R6", "resistor", "220R", field),
    part("Q2", "transistor", "NPN driver 80 V", { package: "TO-92", ...line }),
    part("R7", "resistor", "100R", line),
    part("R8", "resistor", "22R 2W", { ...line, notes: "Feeds T2." }),
    part("D2", "diode", "damper, fast 1500 V", line),
    part("D3", "diode", "fast 400 V", { ...video, notes: "Makes +60V." }),
    part("D4", "diode", "fast 1500 V", { ...video, notes: "Makes +420V." }),
    part("R9", "resistor", "1M", video),
  ]),
  ...row(28, 106, [
    part("T3", "transformer", "line output transformer", { package: "line-output", ...line }),
    part("T2", "transformer", "line driver transformer", { package: "core-driver", ...line }),
    part("Q3", "transistor", "NPN 1500 V 5 A", {
      package: "TO-3",
      ...line,
      notes: "The collector is the case: 900 V pulses.",
    }),
    part("L1", "inductor", "width", line),
    part("L2", "inductor", "line linearity", line),
    part("C10", "capacitor", "12n 1600V", { ...line, notes: "Tuning. Only the same value and type." }),
    part("C8", "capacitor", "2u2 250V film", { ...line, notes: "S-correction." }),
    part("C11", "capacitor", "10u 100V", { package: "radial-8", ...video }),
    part("C12", "capacitor", "100n 630V", video),
  ]),
  ...row(13, 166, [
    part("J4", "connector", "deflection coils", { package: "header-4", ...line }),
    part("J5", "connector", "tube base", { package: "header-8", ...video }),
    part("J6", "connector", "video in", { package: "header-6", ...video }),
    part("Q4", "transistor", "NPN 120 V video", { package: "TO-220", ...video }),
    part("R10", "resistor", "1k2 3W", { ...video, notes: "Video load, always hot." }),
    part("R11", "resistor", "47R", video),
    part("RV5", "resistor", "2M2 trimmer, focus", { package: "trimmer", ...video }),
    part("C9", "capacitor", "100n 250V", video),
  ]),
];

function chipless(designator: string, value: string, packageName: string) {
  return part(designator, "transistor", value, { package: packageName, ...field });
}

const connectors = [
  connector(
    "J1",
    "Mains in",
    "3-way screw terminal",
    `1 L = MAINS
     2 N = NEUTRAL
     3 PE = EARTH`,
  ),
  connector(
    "J2",
    "Transformer secondary",
    "6-way header",
    `1 AC17A
     2 AC17B
     3 AC17A
     4 AC17B
     5 AC14
     6 GND`,
  ),
  connector(
    "J3",
    "Power to logic board",
    "10-way header",
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
    "J4",
    "Deflection coils",
    "4-way header",
    `1 LINE+ = YOKEH
     2 LINE- = SCORR
     3 FIELD+ = YOKEV
     4 FIELD- = VSENSE`,
  ),
  connector(
    "J5",
    "Tube base",
    "8-way header",
    `1 HEATER = +12V
     2 HEATER = GND
     3 CATHODE
     4 G1
     5 G2 = +420V
     6 FOCUS
     7 GND
     8 -`,
  ),
  connector(
    "J6",
    "Video in",
    "6-way header, from the logic board's J4",
    `1 VIDEO
     2 GND
     3 HSYNC
     4 GND
     5 VSYNC
     6 HALF`,
  ),
  connector(
    "J7",
    "To switch and transformer",
    "3-way screw terminal",
    `1 L = LFUSED
     2 N = NEUTRAL
     3 PE = EARTH`,
  ),
];

const nets = netlist(connectors, supplyNets(placements, chips), [
  net("power", "MAINS", "F1.1"),
  net("power", "LFUSED", "F1.2"),
  net("power", "NEUTRAL", ""),
  net("ground", "EARTH", ""),
  net("power", "AC17A", "BR1.1"),
  net("power", "AC17B", "BR1.2"),
  net("power", "AC14", "D1.K"),
  net("power", "VRAW", "BR1.3 F2.1 C1.1 R1.1"),
  net("power", "VFUSED", "F2.2 R2.1"),
  net("power", "VREGIN", "R2.2 VR1.1"),
  net("power", "-18V", "D1.A C2.2"),
  net("power", "+12V", "VR1.3 VR2.1 C3.1 TP1.1 R8.1 Q5.C T3.1"),
  net("power", "+5V", "VR2.3 C4.1 C5.1"),
  net("ground", "GND", "BR1.4 C1.2 R1.2 C2.1 VR1.2 VR2.2 C3.2 C4.2 C5.2 TP2.1 C6.2 C7.2 Q2.E Q3.E D2.A C10.2 C8.2"),
  net("ground", "GND", "R5.2 Q6.C C11.2 C12.2 R11.2 C9.2 RV1.3 RV2.3 RV3.3 RV4.3 T3.5 T2.4 R9.2 R4.2"),
  net("signal", "HSYNC", "U1.2"),
  net("clock", "HOSC", "U1.3 C6.1 R3.1"),
  net("signal", "HREF", "U1.4 RV3.2 R3.2"),
  net("signal", "FLYBACK", "U1.5 T3.6"),
  net("signal", "HDRIVE", "U1.6 R7.1"),
  net("signal", "Q2BASE", "R7.2 Q2.B"),
  net("signal", "T2PRI", "Q2.C T2.1"),
  net("power", "T2FEED", "R8.2 T2.2"),
  net("signal", "Q3BASE", "T2.3 Q3.B"),
  net("signal", "HCOLL", "Q3.C D2.K C10.1 T3.2 L1.1 D4.A"),
  net("signal", "HWIDTH", "L1.2 L2.1"),
  net("signal", "YOKEH", "L2.2"),
  net("signal", "SCORR", "C8.1"),
  net("signal", "VSENSE", "R5.1 U1.7"),
  net("clock", "VOSC", "U1.8 C7.1 RV2.2"),
  net("signal", "VHEIGHT", "U1.9 RV1.2"),
  net("signal", "VDRIVE", "U1.10 R6.1"),
  net("signal", "VBASE", "R6.2 Q5.B Q6.B"),
  net("signal", "VFEED", "U1.11 Q5.E Q6.E C13.1"),
  net("signal", "YOKEV", "C13.2"),
  net("signal", "BLANK", "U1.12"),
  net("control", "XRAY", "U1.13 R4.1 D5.A"),
  net("signal", "XRAYIN", "D5.K T3.7"),
  net("signal", "VREF", "U1.14 RV1.1 RV2.1 RV3.1"),
  net("signal", "VSYNC", ""),
  net("signal", "T3AUX", "T3.3 D3.A"),
  net("power", "+60V", "D3.K C11.1 R10.1 RV4.1"),
  net("power", "+420V", "D4.K C12.1 RV5.1 R9.1"),
  net("signal", "FOCUS", "RV5.2"),
  net("signal", "CATHODE", "R10.2 Q4.C"),
  net("signal", "VIDEO", "Q4.B"),
  net("signal", "VIDEMIT", "Q4.E R11.1"),
  net("signal", "HALF", ""),
  net("signal", "G1", "RV4.2 C9.1"),
  net("power", "EHT", "T3.8"),
]);

export const board: SeedBoard = {
  slug: "vetch-terminal-deflection",
  name: "Vetch 220 deflection and supply board",
  kind: "terminal",
  maker: "Vetch Data",
  machine: "Vetch 220 video terminal",
  year: 1985,
  summary:
    "Makes the rails of the whole terminal, and the line and field scan, 12 kV and 420 V for its 12-inch tube. Mains passes over the left corner.",
  notes: `Two halves that must be kept apart in the head: the supply (J1, J2, BR1, VR1, VR2) and the scan (U1, Q2, Q3, T3).

*Dead set.* Measure at TP1 with F2 out, then with F2 in. A line stage that draws more than it should pulls +12 V down and
looks like a bad :chip[7812]. Lift T3's pin 1 and hang a 22 Ω 10 W load on +12 V: if the rail stands, the fault is in
the scan.

*One tick, then dark.* XRAY has latched. EHT too high comes from C10 gone low or +12 V gone high. Never tie pin 13 down
to see what happens.

*Bright horizontal line.* Brightness down at once, then C13, Q5, Q6, in this order.

The 12 kV lead keeps its charge for days. Discharge it to the tube's own braid, through 1 MΩ, twice.`,
  width: 250,
  height: 182,
  hazards: ["mains", "picture-tube", "high-voltage", "stored-charge", "hot-parts"],
  highestVoltage: 12000,
  revisions: [
    { name: "Rev A", notes: "R2 is 1R 2W and scorches the board." },
    { name: "Rev B", notes: "R2 5 W on stand-offs. OR 27-034D at U1 on some." },
  ],
  rails: [
    { name: "MAINS", nominal: 230, ac: true, tolerancePercent: 10, regulated: false },
    { name: "AC17A", nominal: 17, ac: true, tolerancePercent: 10, regulated: false, notes: "Against AC17B." },
    { name: "VRAW", nominal: 22, tolerancePercent: 12, regulated: false, source: "BR1" },
    { name: "+12V", nominal: 12, tolerancePercent: 5, regulated: true, source: "VR1" },
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "VR2" },
    { name: "-18V", nominal: -20, tolerancePercent: 20, regulated: false, source: "D1" },
    {
      name: "+60V",
      nominal: 60,
      tolerancePercent: 10,
      regulated: false,
      source: "D3",
      notes: "Only while the line scan runs.",
    },
    {
      name: "+420V",
      nominal: 420,
      tolerancePercent: 10,
      regulated: false,
      source: "D4",
      notes: "Only while the line scan runs.",
    },
    {
      name: "EHT",
      nominal: 12000,
      tolerancePercent: 8,
      regulated: false,
      source: "T3",
      notes: "High-voltage probe only.",
    },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    {
      form: "flashes",
      signal: "heater glows, no scan",
      meaning: "supply is there, line stage is not",
      suspects: ["U1", "Q2", "Q3"],
    },
    {
      form: "beeps",
      signal: "one tick from T3, then silence",
      meaning: "XRAY latched",
      suspects: ["C10", "D5", "VR1"],
    },
  ],
  cautions: [
    {
      at: "J1",
      text: "Mains on J1, F1 and J7, solder side too. Isolating transformer on the set; the plug out before any ohms.",
    },
    { at: "T3", text: "Discharge the anode through 1 MΩ to the tube's braid, twice. Not to the logic board's ground." },
    {
      at: "Q3",
      text: "The case of Q3 is the collector: 900 V pulses. It also charges an oscilloscope input that is not a 100:1 probe.",
    },
    { at: "J4", text: "With the coils unplugged and power on the tube burns a spot in a second." },
  ],
  copies: [
    {
      owner: "otto",
      tag: "VD-OTTO",
      serial: "D220-1180",
      revision: "Rev A",
      works: true,
      modifications: "R2 replaced by 5 W on stand-offs",
    },
    { owner: "greta", tag: "VD-GRE-1", serial: "D220-4468", revision: "Rev B", works: true },
    { owner: "greta", tag: "VD-GRE-2", serial: "D220-0911", revision: "Rev A", works: true },
    { owner: "pim", tag: "VD-PIM", serial: "D220-3380", revision: "Rev B", works: null },
  ],
};
