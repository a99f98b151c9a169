import type { SeedCode } from "#seed/shapes.ts";
import { seenAt } from "./sighting.ts";

export { claims } from "./claims.ts";

// House codes that members have met beside those of the boards' own customs. Houses and numbers are invented.

function code(
  text: string,
  house: string,
  chip: string | undefined,
  notes: string,
  sightings: string[] = [],
): SeedCode {
  return { code: text, house, ...(chip === undefined ? {} : { chip }), notes, sightings: sightings.map(seenAt) };
}

const veltrax: SeedCode[] = [
  code(
    "VQ4-2001-01",
    "veltrax",
    "74ls244",
    "Octal buffer by pin table and by two fittings. Sinks what an LS part sinks.",
    [
      "harrow-80 U10 8342 bram",
      "harrow-80 U11 8342 bram",
      "merle-mainboard U11 8512 greta | Next to an ordinary one at U12.",
    ],
  ),
  code("VQ4-2001-02", "veltrax", "74ls244", "Second version. Nobody has found a difference.", [
    "merle-mainboard U12 8530 pim",
  ]),
  code("VQ4-2014-01", "veltrax", "74ls245", "Transceiver. Runs warmer than the ordinary one.", [
    "harrow-80 U9 8345 ines",
    "tern-arcade-main 8C 8621 tomasz",
  ]),
  code("VQ4-2030-01", "veltrax", "74ls138", "Decoder.", ["merle-mainboard U9 8507 mirela"]),
  code("VQ4-2041-03", "veltrax", "74ls373", "Latch, not register: it follows while pin 11 is high.", [
    "harrow-80 U22 8350 anouk | Read at first as a 374; the scope said otherwise.",
  ]),
  code("VQ4-2033-01", "veltrax", "6116", "Static RAM, about 40 µA at rest: not for batteries.", [
    "plover-counter U4 8719 femi",
  ]),
  code(
    "VQ4-2209-01",
    "veltrax",
    undefined,
    "DIP-24, supply on 24 and ground on 12. Six pins move by themselves with nothing but power.",
    ["vetch-terminal-logic U9 8540 greta | Terminal of a school, fitted by the maker's own service it seems."],
  ),
];

const orrin: SeedCode[] = [
  code(
    "OR 27-2114B",
    "orrin",
    "74hct244",
    "CMOS with TTL input levels: diode readings at 0.71 V where the LS part has 0.62.",
    ["tern-arcade-main 3C 8640 tomasz", "tern-arcade-main 2F 8640 tomasz"],
  ),
  code("OR 27-2114D", "orrin", "74hc244", "CMOS levels at the inputs. One letter, another part: read it twice.", [
    "tern-arcade-main 9F 8702 dolores | Failed behind an LS output, see the claims.",
  ]),
  code("OR 14-2006A", "orrin", "2114", "Slow, 450 ns by the look of it.", [
    "vetch-terminal-logic U4 8411 greta",
    "vetch-terminal-logic U5 8411 greta",
  ]),
  code("OR 14-2016C", "orrin", "4116", "Three supplies. Date codes have the week first.", [
    "harrow-80 U14 2883 otto",
    "harrow-80 U15 2883 otto",
  ]),
  code("OR 27-2032A", "orrin", "62256", "32 K static RAM, low power."),
  code("OR 14-2080B", "orrin", "z80cpu", "Runs at 4 MHz. Undocumented instructions as usual, tried by Mirela.", [
    "harrow-80 U1 3184 mirela",
    "vetch-terminal-logic U1 0585 greta",
  ]),
  code("OR 14-2065A", "orrin", "6502", "1 MHz part. In a Merle it only just runs at 2.", [
    "merle-mainboard U1 1185 pim",
  ]),
  code(
    "OR 27-2203A",
    "orrin",
    undefined,
    "PLCC-44, ground on 1 and 23. Came from a bag of pulls; five of them, all alike.",
    ["moth-mpu U14 0788 dolores | Sat in the place of the other unknown, and the game ran."],
  ),
  code(
    "OR 14-2099B",
    "orrin",
    undefined,
    "DIP-28, NMOS by its diode readings. Pin 14 ground, pin 28 supply, the rest is open.",
  ),
];

const sunmarsh: SeedCode[] = [
  code("SM2244P", "sunmarsh", "74ls244", "P is the plastic package.", [
    "vetch-terminal-logic U15 8501 greta",
    "plover-counter U7 8722 yusuf",
  ]),
  code("SM2138P", "sunmarsh", "74ls138", "Decoder.", ["plover-counter U6 8722 yusuf"]),
  code("SM2016-3", "sunmarsh", "6116", "-3 is 150 ns. Ordinary power.", ["vetch-terminal-logic U3 8450 otto"]),
  code("SM2016-2L", "sunmarsh", "6116", "L is low power: 2 µA at rest, measured on three.", [
    "merle-mainboard U32 8544 greta",
  ]),
  code("SM2114-2", "sunmarsh", "2114", "200 ns.", [
    "tern-arcade-main 7A 8530 tomasz",
    "tern-arcade-main 8A 8530 tomasz",
  ]),
  code("SM2809P", "sunmarsh", "6809", "Clock inside. The E version has an E before the P.", [
    "moth-mpu U1 8640 dolores",
  ]),
  code("SM2809EP", "sunmarsh", "6809e", "Clock from outside.", [
    "tern-arcade-main 4F 8634 tomasz | Bought for the plain one; the board does not run with it.",
  ]),
  code("SM2339P", "sunmarsh", "lm339", "Comparator.", ["moth-mpu U8 8641 dolores", "moth-mpu U9 8641 dolores"]),
  code("SM2003P", "sunmarsh", "uln2003", "Coil driver, seven ways.", [
    "moth-driver U4 8638 dolores",
    "moth-mpu U10 8638 dolores",
  ]),
  code("SM2771F", "sunmarsh", undefined, "Flat package with 44 legs. Only ever seen loose, in a tube of twelve."),
  code(
    "SM2784P",
    "sunmarsh",
    undefined,
    "DIP-16. Pin 16 to pin 8 reads like a CMOS supply. Two oscillate when fed 5 V, one does not.",
    ["merle-mainboard U35 8606 bram | In the place of the unknown, picture well."],
  ),
];

const ketteringLo: SeedCode[] = [
  code("KL/2055/1", "kettering-lo", "ne555", "Timer.", ["merle-mainboard U29 - greta", "moth-mpu U13 - dolores"]),
  code("KL/2164/3", "kettering-lo", "4164", "150 ns. A RAM has no contents, so here the mask number means the speed.", [
    "merle-mainboard U15 - pim",
    "merle-mainboard U17 - pim",
  ]),
  code("KL/2256/2", "kettering-lo", "41256", "Seen in place of 4164 with pin 1 tied low."),
  code("KL/2488/1", "kettering-lo", "mc1488", "Line driver.", [
    "merle-mainboard U26 - greta",
    "vetch-terminal-logic U24 - greta",
  ]),
  code("KL/2489/1", "kettering-lo", "mc1489", "Line receiver.", ["merle-mainboard U27 - greta"]),
  code("KL/2800/1", "kettering-lo", "dac0800", "Converter.", ["tern-arcade-sound U9 - tomasz"]),
  code("KL/2051/4", "kettering-lo", "4051", "Analog selector, 15 V part.", [
    "osprey-keyer U5 - kaisa",
    "osprey-voice-card U2 - kaisa",
  ]),
  code("KL/2066/2", "kettering-lo", "4066", "Analog switch.", [
    "osprey-keyer U12 - kaisa",
    "osprey-voice-card U9 - kaisa",
  ]),
  code(
    "KL/2310/6",
    "kettering-lo",
    undefined,
    "Mask ROM by its pins (28, address and data where a 27C256 has them). Whose contents, nobody knows.",
  ),
  code(
    "KL/2310/7",
    "kettering-lo",
    undefined,
    "The same with another mask. Dump differs from /6 in all but the first 64 bytes.",
  ),
];

const hadal: SeedCode[] = [
  code("HDL-L2074-11", "hadal", "tl074", "Quad amplifier, FET inputs.", [
    "osprey-voice-card U3 - kaisa",
    "osprey-voice-card U4 - kaisa",
  ]),
  code("HDL-L2072-11", "hadal", "tl072", "Dual amplifier.", ["osprey-voice-card U18 - kaisa"]),
  code(
    "HDL-L2080-14",
    "hadal",
    "ca3080",
    "Transconductance amplifier. 14 is the grade with matched current, says the seller.",
    ["osprey-voice-card U12 - kaisa", "osprey-voice-card U13 - kaisa"],
  ),
  code("HDL-C2022-22", "hadal", "6522", "Two ports and timers. One of five had a dead timer from new.", [
    "merle-mainboard U2 - bram | Bought as a spare.",
  ]),
  code("HDL-M2164-15", "hadal", "4164", "Contested: sold as 150 ns, reads as slower. See the claims.", [
    "merle-mainboard U16 - bram",
    "merle-mainboard U19 - bram",
  ]),
  code("HDL-C2055-10", "hadal", "8255", "Three ports.", ["plover-counter U8 - femi"]),
  code(
    "HDL-C2077-22",
    "hadal",
    undefined,
    "DIP-40. Pins 1 and 21 on ground, like one processor and like a dozen other things.",
  ),
  code(
    "HDL-L2012-09",
    "hadal",
    undefined,
    "SIP-8 in black resin. Pin 4 is ground; 8 wants more than 8 V before pin 1 shows a reference of 2.5 V.",
    ["plover-supply U2 - yusuf | Fitted by an earlier owner. The counter runs, the fan does not."],
  ),
];

const brightwater: SeedCode[] = [
  code("BW 82000 A", "brightwater", "74ls00", "Quad NAND.", [
    "merle-mainboard U25 8516 pim",
    "plover-counter U11 8716 femi",
  ]),
  code("BW 82004 A", "brightwater", "74ls04", "Hex inverter. Starts every crystal we have tried.", [
    "merle-mainboard U23 8516 pim",
  ]),
  code("BW 82014 B", "brightwater", "74ls14", "Schmitt inverter.", ["plover-counter U9 8716 femi"]),
  code("BW 82074 A", "brightwater", "74ls74", "Dual flip-flop.", [
    "plover-counter U10 8718 femi",
    "merle-mainboard U24 8518 greta",
  ]),
  code("BW 82157 A", "brightwater", "74ls157", "Selector. Outputs go low when disabled.", [
    "tern-arcade-main 6C 8633 tomasz",
  ]),
  code("BW 82257 A", "brightwater", "74ls257", "Selector. Outputs float when disabled.", [
    "harrow-80 U12 8339 bram",
    "harrow-80 U13 8339 bram",
  ]),
  code("BW 82374 C", "brightwater", "74ls374", "Register.", [
    "tern-arcade-main 7G 8633 tomasz",
    "moth-driver U1 8640 dolores",
  ]),
  code("BW 02805 A", "brightwater", "7805", "Regulator in TO-220; 0 is their figure for everything that is no DIP.", [
    "moth-driver VR1 8639 dolores",
  ]),
  code("BW 82901 A", "brightwater", undefined, "DIP-16, ceramic. Warm with 5 V, whatever one does to the other pins."),
];

export const codes: SeedCode[] = [...veltrax, ...orrin, ...sunmarsh, ...ketteringLo, ...hadal, ...brightwater];
