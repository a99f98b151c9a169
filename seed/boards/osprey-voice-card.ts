import type { SeedBoard } from "#seed/shapes.ts";
import { chips } from "#seed/customs/b.ts";
import { chip, part, row } from "#seed/notation/placing.ts";
import { bus, connector, net, netlist, supplyNets } from "#seed/notation/wiring.ts";

const control = { sheet: "1" };
const oscillator = { sheet: "2" };
const filter = { sheet: "3" };
const envelope = { sheet: "4" };
const hold = { package: "poly-5", ...control };

const placements = [
  ...row(14, 12, [
    part("RV1", "resistor", "10k trimmer", { package: "trimmer", ...oscillator, notes: "Scale, oscillator A." }),
    part("RV2", "resistor", "10k trimmer", { package: "trimmer", ...oscillator, notes: "Scale, oscillator B." }),
    part("RV3", "resistor", "50k trimmer", { package: "trimmer", ...oscillator, notes: "High end, oscillator A." }),
    part("RV4", "resistor", "50k trimmer", { package: "trimmer", ...oscillator, notes: "High end, oscillator B." }),
    part("TP1", "test-point", "MIX", filter),
    part("TP2", "test-point", "FOUT", filter),
    part("TP3", "test-point", "VOUT", filter),
    6,
    part("D1", "diode", "7V5 zener", { ...control, notes: "Makes -7.5V from -15V through R1." }),
    part("R1", "resistor", "470R", control),
    part("D2", "diode", "7V5 zener", { ...control, notes: "Makes +7.5V from +15V through R2." }),
    part("R2", "resistor", "470R", control),
    6,
    part("Q1", "transistor", "matched PNP pair", { package: "TO-92", ...filter, notes: "Glued to R9, which is warm." }),
    part("R9", "resistor", "1k8 +3300ppm", filter),
  ]),
  ...row(22, 34, [
    chip("U1", "hdl-c45", "DIP-24", { code: "HDL-C45-22", socketed: true, ...oscillator }),
    part("C17", "capacitor", "1n polystyrene", oscillator),
    part("C18", "capacitor", "1n polystyrene", oscillator),
    chip("U9", "4066", "DIP-14", { ...oscillator, notes: "Waveform switches, between +7.5V and -7.5V." }),
    chip("U10", "lm339", "DIP-14", { ...oscillator, notes: "Lifts the latch's levels to ±7.5V." }),
    part("RN1", "resistor-pack", "4×22k", { package: "SIP-8", ...oscillator }),
    part("RN2", "resistor-pack", "divider 3k9/1k6", { package: "SIP-3", ...oscillator, notes: "VTH, 1.45 V." }),
    chip("U11", "74ls273", "DIP-20", control),
    part("R4", "resistor", "22k", filter),
  ]),
  ...row(14, 57, [
    chip("U12", "ca3080", "DIP-8", filter),
    part("C9", "capacitor", "330p polystyrene", filter),
    chip("U13", "ca3080", "DIP-8", filter),
    part("C10", "capacitor", "330p polystyrene", filter),
    chip("U14", "ca3080", "DIP-8", filter),
    part("C11", "capacitor", "330p polystyrene", filter),
    chip("U15", "ca3080", "DIP-8", filter),
    part("C12", "capacitor", "330p polystyrene", filter),
    chip("U16", "tl074", "DIP-14", filter),
    chip("U20", "ca3080", "DIP-8", { ...filter, notes: "Resonance." }),
    part("R10", "resistor", "47k", filter),
    chip("U18", "tl072", "DIP-8", filter),
    chip("U17", "ca3080", "DIP-8", { ...filter, notes: "Loudness." }),
    part("R6", "resistor", "100k", filter),
    part("R7", "resistor", "47k", filter),
  ]),
  ...row(18, 80, [
    chip("U2", "4051", "DIP-16", { ...control, notes: "Pitch, width, filter, loudness." }),
    chip("U3", "tl074", "DIP-14", control),
    chip("U4", "tl074", "DIP-14", control),
    chip("U19", "4051", "DIP-16", { ...envelope, notes: "Times of the envelopes." }),
    part("CP1", "capacitor", "4×10n", { package: "SIP-8", ...envelope }),
    part("CP2", "capacitor", "4×10n", { package: "SIP-8", ...envelope }),
    chip("U8", "kl-0702", "DIP-16", { code: "KL/0702/7", socketed: true, ...envelope }),
    part("C19", "capacitor", "39n", envelope),
    part("C20", "capacitor", "39n", envelope),
    part("R5", "resistor", "100k", filter),
    part("R8", "resistor", "68k", filter),
  ]),
  ...row(14, 98, [
    part("C1", "capacitor", "10n polystyrene", hold),
    part("C2", "capacitor", "10n polystyrene", hold),
    part("C3", "capacitor", "10n polystyrene", hold),
    part("C4", "capacitor", "10n polystyrene", hold),
    part("C5", "capacitor", "10n polystyrene", hold),
    part("C6", "capacitor", "10n polystyrene", hold),
    part("C7", "capacitor", "10n polystyrene", hold),
    part("C8", "capacitor", "10n polystyrene", hold),
    40,
    part("C13", "capacitor", "22u 25V tantalum", { ...control, notes: "On +15V." }),
    part("C14", "capacitor", "22u 25V tantalum", { ...control, notes: "On -15V; positive end on ground." }),
    part("C15", "capacitor", "10u 16V tantalum", { ...control, notes: "On +5V." }),
  ]),
  ...row(118, 116, [part("J1", "connector", "bus", { package: "edge-36", ...control })]),
];

const connectors = [
  connector(
    "J1",
    "Voice bus",
    "36-way edge connector, 18 each side",
    `1 +15V
     2 +15V
     3 GND
     4 GND
     5 -15V
     6 -15V
     7 +5V
     8 GND
     9 CV
     10 GND
     11 CA0
     12 CA1
     13 CA2
     14 /CVSEL1
     15 /CVSEL2
     16 WD0
     17 WD1
     18 WD2
     19 WD3
     20 WD4
     21 LATCH
     22 /RESET
     23 GATE1
     24 GATE2
     25 GND
     26 VOUT
     27 GND
     28 -
     29 -
     30 SAWA
     31 -
     32 -
     33 -
     34 -
     35 GND
     36 GND`,
  ),
];

const nets = netlist(
  connectors,
  supplyNets(placements, chips),
  [
    net("power", "+15V", "U3.4 U4.4 U12.7 U13.7 U14.7 U15.7 U16.4 U17.7 U18.8 U20.7 R2.1 C13.1 R9.1"),
    net("power", "-15V", "U3.11 U4.11 U12.4 U13.4 U14.4 U15.4 U16.11 U17.4 U18.4 U20.4 R1.1 C14.2"),
    net("power", "+5V", "U2.16 U19.16 RN2.1 C15.1"),
    net("power", "+7.5V", "D2.K R2.2 U9.14 U10.3 RN1.1"),
    net("power", "-7.5V", "D1.A R1.2 U9.7 U10.12 U2.7 U19.7"),
    net("ground", "GND", "U2.8 U19.8 U11.14 U11.17 U11.18 D1.K D2.A RN2.3 C13.2 C14.1 C15.2 C17.2 C18.2 C19.2 C20.2"),
    net("ground", "GND", "C1.2 C2.2 C3.2 C4.2 C5.2 C6.2 C7.2 C8.2 C9.2 C10.2 C11.2 C12.2 CP1.5 CP2.5"),
    net("ground", "GND", "U13.2 U14.2 U15.2 U16.3 U17.2 U18.5 U20.2"),
    net("signal", "CV", "U2.3 U19.3"),
    net("select", "/CVSEL1", "U2.6"),
    net("select", "/CVSEL2", "U19.6"),
  ],
  bus("address", "CA", { U2: [11, 10, 9], U19: [11, 10, 9] }),
  bus("data", "WD", { U11: [3, 4, 7, 8, 13] }),
  [
    net("control", "LATCH", "U11.11"),
    net("reset", "/RESET", "U11.1"),
    net("control", "WS0", "U11.2 U10.5"),
    net("control", "WS1", "U11.5 U10.7"),
    net("control", "WS2", "U11.6 U10.9"),
    net("control", "WS3", "U11.9 U10.11"),
    net("control", "SYNCON", "U11.12 U1.10"),
    net("signal", "VTH", "RN2.2 U10.4 U10.6 U10.8 U10.10"),
    net("control", "SW0", "U10.2 U9.13 RN1.2"),
    net("control", "SW1", "U10.1 U9.5 RN1.4"),
    net("control", "SW2", "U10.14 U9.6 RN1.6"),
    net("control", "SW3", "U10.13 U9.12 RN1.8"),
    net("signal", "HCV0", "U2.13 C1.1 U3.3"),
    net("signal", "HCV1", "U2.14 C2.1 U3.5"),
    net("signal", "HCV2", "U2.15 C3.1 U3.10"),
    net("signal", "HCV3", "U2.12 C4.1 U3.12"),
    net("signal", "HCV4", "U2.1 C5.1 U4.3"),
    net("signal", "HCV5", "U2.5 C6.1 U4.5"),
    net("signal", "HCV6", "U2.2 C7.1 U4.10"),
    net("signal", "HCV7", "U2.4 C8.1 U4.12"),
    net("signal", "CVPA", "U3.1 U3.2 RV1.1"),
    net("signal", "CVPB", "U3.7 U3.6 RV2.1"),
    net("signal", "CVPW", "U3.8 U3.9 U1.9 U1.14"),
    net("signal", "CVXM", "U3.14 U3.13 U1.23"),
    net("signal", "CVCUT", "U4.1 U4.2 R5.1"),
    net("signal", "CVRES", "U4.7 U4.6 R10.1"),
    net("signal", "CVVOL", "U4.8 U4.9 R6.1"),
    net("signal", "CVHF", "U4.14 U4.13 RV3.1 RV4.1"),
    net("signal", "PITCHA", "RV1.2 U1.2"),
    net("signal", "PITCHB", "RV2.2 U1.21"),
    net("signal", "SCALA", "RV1.3 U1.3"),
    net("signal", "SCALB", "RV2.3 U1.20"),
    net("signal", "HFA", "RV3.2 U1.5"),
    net("signal", "HFB", "RV4.2 U1.18"),
    net("signal", "OSCCA", "U1.4 C17.1"),
    net("signal", "OSCCB", "U1.19 C18.1"),
    net("signal", "SAWA", "U1.6 U9.1"),
    net("signal", "PULSEA", "U1.8 U9.4"),
    net("signal", "SAWB", "U1.17 U9.8"),
    net("signal", "PULSEB", "U1.15 U9.11"),
    net("signal", "WAVES", "U9.2 U9.3 U9.9 U9.10 U16.2"),
    net("signal", "MIX", "U16.1 U12.3 TP1.1"),
    net("signal", "RESFB", "U20.6 U12.2"),
    net("signal", "RESI", "R10.2 U20.5"),
    net("signal", "EXPB", "R5.2 R8.2 Q1.B"),
    net("signal", "EXPE", "R9.2 Q1.E"),
    net("signal", "FILI", "Q1.C U12.5 U13.5 U14.5 U15.5"),
    net("signal", "F1", "U12.6 C9.1 U16.5"),
    net("signal", "F1OUT", "U16.7 U16.6 U13.3"),
    net("signal", "F2", "U13.6 C10.1 U16.10"),
    net("signal", "F2OUT", "U16.8 U16.9 U14.3"),
    net("signal", "F3", "U14.6 C11.1 U16.12"),
    net("signal", "F3OUT", "U16.14 U16.13 U15.3"),
    net("signal", "F4", "U15.6 C12.1 U18.3"),
    net("signal", "FOUT", "U18.1 U18.2 U17.3 U20.3 TP2.1"),
    net("signal", "VCAI", "R6.2 R7.2 U17.5"),
    net("signal", "VCAO", "U17.6 U18.6 R4.1"),
    net("signal", "VOUT", "U18.7 R4.2 TP3.1"),
    net("signal", "EATKA", "U19.13 CP1.1 U8.2"),
    net("signal", "EDECA", "U19.14 CP1.2 U8.3"),
    net("signal", "ESUSA", "U19.15 CP1.3 U8.4"),
    net("signal", "ERELA", "U19.12 CP1.4 U8.5"),
    net("signal", "EATKB", "U19.1 CP2.1 U8.15"),
    net("signal", "EDECB", "U19.5 CP2.2 U8.14"),
    net("signal", "ESUSB", "U19.2 CP2.3 U8.13"),
    net("signal", "ERELB", "U19.4 CP2.4 U8.12"),
    net("signal", "ENVCA", "U8.1 C19.1"),
    net("signal", "ENVCB", "U8.9 C20.1"),
    net("signal", "ENVA", "U8.6 R8.1"),
    net("signal", "ENVB", "U8.11 R7.1"),
    net("control", "GATE1", "U8.7"),
    net("control", "GATE2", "U8.10"),
  ],
);

export const board: SeedBoard = {
  slug: "osprey-voice-card",
  name: "Osprey Six voice card",
  kind: "synthesizer-voice",
  maker: "Fenhollow Musical Works",
  machine: "Osprey Six synthesizer",
  year: 1983,
  summary:
    "One of six voices: two oscillators in one custom, a four-stage filter of transconductance amplifiers, two envelopes. All its settings arrive as one multiplexed voltage.",
  notes: `Six of these stand in a row, so **you own five good references**. Swap the card to the next slot first: a fault
that moves is on the card, one that stays is in the slot or on the bus.

All sixteen settings come over one wire, CV (J1.9), and are put on hold capacitors by U2 and U19. The capacitors are
refreshed every 6 ms. Typical trouble, by how it sounds:

| sounds like | is often |
|---|---|
| drifts over seconds while held | leaky U2 or U19, or flux around C1 to C8 |
| one setting follows another | a channel of U2 that no longer opens |
| click instead of tone | envelope: U8, its capacitors, GATE |
| filter closed or open for ever | FILI: Q1, or one CA3080 that shorts its control pin |
| everything at +13 V | -15 V missing at this card |

Rails of ±7.5 V are made here by D1 and D2 and feed the switches only. If a zener goes short R1 or R2 turns brown; if it
opens, U9 sees 15 V on either side of ground and dies soon.

Wash the board after work with alcohol, twice. The hold capacitors mind a fingerprint.`,
  width: 234,
  height: 128,
  hazards: [],
  highestVoltage: 15,
  revisions: [
    { name: "Rev A", notes: "No RV3 and RV4; the high end is not trimmed." },
    { name: "Rev B", notes: "As drawn." },
    { name: "Rev C", notes: "HDL-C45-14 and BW 80502 A fitted at the factory. U9 is a 4016 on a few." },
  ],
  rails: [
    { name: "+15V", nominal: 15, tolerancePercent: 3, regulated: true, source: "J1" },
    { name: "-15V", nominal: -15, tolerancePercent: 3, regulated: true, source: "J1" },
    { name: "+5V", nominal: 5, tolerancePercent: 5, regulated: true, source: "J1", notes: "Latch and multiplexers." },
    { name: "+7.5V", nominal: 7.5, tolerancePercent: 6, regulated: true, source: "D2" },
    { name: "-7.5V", nominal: -7.5, tolerancePercent: 6, regulated: true, source: "D1" },
  ],
  connectors,
  placements,
  nets,
  selfTests: [
    {
      form: "message",
      signal: "VOICE n LO",
      meaning: "autotune: oscillator does not reach its lowest count",
      suspects: ["U1", "U3", "U2"],
    },
    {
      form: "message",
      signal: "VOICE n HI",
      meaning: "autotune: flat at the top",
      suspects: ["U1", "RV3", "RV4", "U4"],
    },
    { form: "message", signal: "VOICE n --", meaning: "no oscillation seen on SAWA", suspects: ["U1", "C17", "J1"] },
  ],
  cautions: [
    { at: "J1", text: "Not keyed. A card pushed in one contact off puts -15 V on the +5 V parts." },
    { at: "U1", text: "Never pull U1 with the power on: it dies without -15 V before +15 V has gone." },
    { at: "C14", text: "Tantalum on a negative rail: its positive end goes to ground." },
  ],
  copies: [
    {
      owner: "kaisa",
      tag: "OS-KAI-V2",
      serial: "S6-0187",
      revision: "Rev B",
      modifications: "U8 on a SOIC adapter",
      works: true,
    },
    { owner: "kaisa", tag: "OS-KAI-V4", serial: "S6-0187", revision: "Rev B", works: true },
    { owner: "pim", tag: "OS-PIM-V1", serial: "S6-0052", revision: "Rev B", works: null },
    { owner: "femi", tag: "OS-FEM-V3", serial: "S6-0411", revision: "Rev C", works: true },
    { owner: "otto", tag: "OS-OTT-V6", serial: "S6-0090", revision: "Rev A", works: true },
  ],
};
