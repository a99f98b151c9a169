import type { EvidenceKind, InterchangeGrade } from "#lib/core/shared/index.ts";
import type { SeedClaim } from "#seed/shapes.ts";

// What can stand in for what, among the generic parts and the house codes of this folder. Where members disagree both
// are kept.

type Evidence = SeedClaim["evidence"][number];

function by(member: string, kind: EvidenceKind, yearsAgo: number, note: string): Evidence {
  return { kind, member, note, yearsAgo };
}

function failed(
  member: string,
  yearsAgo: number,
  provedElsewhere: "yes" | "not-known" | "found-bad",
  note: string,
): Evidence {
  return { kind: "fitted-failed", member, note, yearsAgo, provedElsewhere };
}

interface More {
  oneWay?: true;
  if?: string[];
  note?: string;
}

function claim(from: string, to: string, grade: InterchangeGrade, evidence: Evidence[], more: More = {}): SeedClaim {
  return {
    from,
    to,
    grade,
    bothWays: more.oneWay !== true,
    conditions: more.if ?? [],
    ...(more.note === undefined ? {} : { note: more.note }),
    evidence,
  };
}

const buffers: SeedClaim[] = [
  claim("VQ4-2001-01", "VQ4-2001-02", "same-part", [
    by("mirela", "electrical", 2.9, "Diode readings of all twenty pins, largest difference 6 mV."),
  ]),
  claim("VQ4-2001-02", "SM2244P", "same-part", [
    by("greta", "pin-table", 2.1, "Traced on both boards: enables on 1 and 19, the rest follows."),
    by("pim", "fitted-worked", 1.6, "Mine came from a terminal and sits in my Merle now."),
  ]),
  claim("SM2244P", "74LS244N", "drop-in", [
    by("yusuf", "fitted-worked", 3.4, "Counter runs with either."),
    by("mirela", "electrical", 3.3, "Sinks 24 mA at 0.41 V, so LS and not something weaker."),
  ]),
  claim("OR 27-2114B", "74HCT244N", "same-part", [
    by("tomasz", "electrical", 2.4, "0.71 V at each input, draws next to nothing, TTL thresholds."),
  ]),
  claim(
    "74LS244N",
    "OR 27-2114B",
    "conditional",
    [
      by("tomasz", "fitted-worked", 2.3, "Two of them, address side, a year of play."),
      failed(
        "anouk",
        1.1,
        "yes",
        "On the long cable of a keyboard: edges ring, keys double. The same part is well on the board.",
      ),
    ],
    { oneWay: true, if: ["Loads on the same board only: it sinks 6 mA, not 24"] },
  ),
  claim(
    "74LS244N",
    "OR 27-2114D",
    "conditional",
    [
      failed(
        "dolores",
        1.9,
        "yes",
        "Lamp rows flickered. High from the chip in front is 2.8 V, that is nothing for this one.",
      ),
      by("mirela", "electrical", 1.8, "Threshold at 2.5 V: CMOS levels. B and D are two parts."),
      by("bram", "fitted-worked", 1.5, "Works in mine. Driven by a CMOS part there, I admit."),
    ],
    { oneWay: true, if: ["Inputs driven by CMOS, or a pull-up at each"], note: "The letter decides. D is not B." },
  ),
  claim("74LS244N", "74HCT244N", "conditional", [by("mirela", "data-sheet", 4.2, "Levels fit; sinks a quarter.")], {
    oneWay: true,
    if: ["No terminated line or long cable behind it"],
  }),
  claim(
    "74LS244N",
    "74HC244N",
    "conditional",
    [by("mirela", "data-sheet", 4.2, "Wants 3.15 V for a high; LS promises 2.7.")],
    {
      oneWay: true,
      if: ["A pull-up at each driven input"],
    },
  ),
  claim("74LS244N", "74LS240N", "not-a-fit", [
    by("ines", "data-sheet", 5.5, "Same pins, inverts."),
    failed("bram", 5.4, "yes", "Fitted it. Screen full of its own negative."),
  ]),
  claim("74LS244N", "SN74LS244N", "same-part", [by("ines", "data-sheet", 5.5, "Prefix only.")]),
  claim(
    "SM2244P",
    "74LS244D",
    "adapter",
    [by("anouk", "fitted-worked", 1.2, "SOIC on a small adapter with DIP pins; pins one to one.")],
    { oneWay: true },
  ),
  claim("VQ4-2014-01", "74LS245N", "drop-in", [
    by("ines", "fitted-worked", 3.9, "Harrow, bus side."),
    by("tomasz", "fitted-worked", 2.6, "Arcade, sprite side."),
  ]),
  claim("74LS245N", "74HCT245N", "conditional", [by("tomasz", "fitted-worked", 2.6, "Short bus, no trouble.")], {
    oneWay: true,
    if: ["Bus ends on the same board"],
  }),
];

const logic: SeedClaim[] = [
  claim("VQ4-2041-03", "74LS373N", "drop-in", [
    by("anouk", "electrical", 3.1, "Follows while pin 11 is high: a latch."),
    by("bram", "fitted-worked", 2.2, "In mine since."),
  ]),
  claim("VQ4-2041-03", "74LS374N", "not-a-fit", [
    by("bram", "told", 3.3, "The seller's list says 374."),
    failed("anouk", 3.1, "yes", "Tried because of that list. Addresses come one access late."),
  ]),
  claim("74LS373N", "74LS374N", "not-a-fit", [
    by("mirela", "data-sheet", 4.6, "Pin 11: latch enable here, clock there."),
  ]),
  claim(
    "74LS373N",
    "74HCT373N",
    "conditional",
    [by("greta", "fitted-worked", 1.4, "In the terminal, on its own bus.")],
    {
      oneWay: true,
      if: ["Loads on the same board only"],
    },
  ),
  claim("BW 82374 C", "74LS374N", "drop-in", [by("dolores", "fitted-worked", 2.7, "Driver board, two games.")]),
  claim("BW 82157 A", "74LS157N", "drop-in", [
    by("tomasz", "fitted-worked", 2.5, "Swapped back and forth, no difference."),
  ]),
  claim("BW 82257 A", "74LS257N", "drop-in", [by("bram", "fitted-worked", 3.8, "Row and column addresses.")]),
  claim(
    "74LS157N",
    "74LS257N",
    "conditional",
    [
      by("mirela", "data-sheet", 4.4, "Disabled: low here, floating there."),
      by("bram", "fitted-worked", 3.7, "Pin 15 is on ground in my machine, so it never matters."),
      failed("kaisa", 2.9, "yes", "On a line that relies on the low: it floats and reads as high."),
    ],
    { if: ["Pin 15 tied to ground, so that it is never disabled"] },
  ),
  claim("VQ4-2030-01", "SM2138P", "same-part", [
    by("mirela", "electrical", 2.0, "Sixteen diode readings within 5 mV."),
  ]),
  claim("SM2138P", "74LS138N", "drop-in", [by("yusuf", "fitted-worked", 3.2, "Counter, select decoder.")]),
  claim("BW 82000 A", "74LS00N", "drop-in", [by("pim", "fitted-worked", 1.5, "Oscillates not, works.")]),
  claim("BW 82004 A", "74LS04N", "drop-in", [
    by("pim", "fitted-worked", 1.5, "Starts the 16 MHz crystal at once."),
    failed(
      "femi",
      1.0,
      "not-known",
      "With a 6 MHz crystal it started on the overtone once in ten. The old one did not.",
    ),
  ]),
  claim("BW 82014 B", "74LS14N", "drop-in", [by("femi", "fitted-worked", 2.3, "Thresholds 1.62 and 0.84 V.")]),
  claim("BW 82074 A", "74LS74N", "drop-in", [by("femi", "fitted-worked", 2.3, "Toggles to 31 MHz.")]),
  claim("74LS08N", "74LS32N", "not-a-fit", [
    by("ines", "data-sheet", 5.8, "Nothing on the pins differs; AND is not OR."),
  ]),
  claim("74LS00N", "74HC00N", "conditional", [by("mirela", "data-sheet", 4.2, "Level of a high at the inputs.")], {
    oneWay: true,
    if: ["Inputs driven by CMOS, or pull-ups"],
  }),
  claim("KL/2051/4", "4051BE", "drop-in", [by("kaisa", "fitted-worked", 3.0, "On ±5 V, leakage no worse.")]),
  claim("KL/2066/2", "4066BE", "drop-in", [by("kaisa", "fitted-worked", 3.0, "80 ohm, as it should.")]),
  claim("4016BE", "4066BE", "drop-in", [by("kaisa", "data-sheet", 4.0, "Same pins, less resistance.")], {
    oneWay: true,
    note: "The other way round the resistance may matter.",
  }),
];

const memories: SeedClaim[] = [
  claim("SM2016-3", "6116P-3", "drop-in", [by("otto", "fitted-worked", 4.1, "Terminal, no battery there.")]),
  claim("SM2016-2L", "6116LP-3", "drop-in", [by("greta", "electrical", 2.2, "2 µA at 3 V, three samples.")]),
  claim(
    "6116LP-3",
    "VQ4-2033-01",
    "conditional",
    [
      by("femi", "electrical", 2.7, "38 µA at 3 V."),
      failed(
        "pim",
        1.3,
        "yes",
        "Settings gone after five weeks, cell empty. In a machine without battery the same chip is well.",
      ),
    ],
    { oneWay: true, if: ["Places without battery only"] },
  ),
  claim("6116P-3", "6116LP-3", "drop-in", [by("greta", "data-sheet", 2.2, "Low power is never wrong.")], {
    oneWay: true,
  }),
  claim(
    "6116P-3",
    "62256LP-12",
    "adapter",
    [
      by(
        "anouk",
        "fitted-worked",
        1.7,
        "28 on 24 pins, A11 to A14 to ground on the adapter, pin 28 to pin 24 of the place.",
      ),
    ],
    { oneWay: true, note: "Pins are computed from the two tables; only the four extra addresses are a decision." },
  ),
  claim("OR 27-2032A", "62256LP-12", "drop-in", [by("mirela", "pin-table", 1.9, "By a reader that treats it as one.")]),
  claim("OR 14-2006A", "2114-2", "conditional", [by("greta", "electrical", 3.4, "Access about 420 ns in a tester.")], {
    if: ["Places that wait for 450 ns"],
  }),
  claim("SM2114-2", "2114-2", "drop-in", [by("tomasz", "fitted-worked", 3.9, "Four boards.")]),
  claim("OR 14-2016C", "4116-3", "drop-in", [by("otto", "fitted-worked", 5.0, "Full house of sixteen, warm, well.")]),
  claim(
    "4116-3",
    "4164-15",
    "not-a-fit",
    [
      by("mirela", "data-sheet", 5.9, "+12 V of the place comes to the 5 V pin."),
      failed("bram", 5.7, "found-bad", "Eight of them, for the length of one smell."),
    ],
    { note: "Without rewiring of the whole row. Compare supplies by voltage, never by name." },
  ),
  claim("KL/2164/3", "4164-15", "drop-in", [
    by("pim", "fitted-worked", 1.8, "Two in my Merle."),
    by("mirela", "electrical", 1.7, "Passes at 150 ns in the tester."),
  ]),
  claim(
    "HDL-M2164-15",
    "4164-15",
    "drop-in",
    [
      by("bram", "fitted-worked", 2.6, "Two in my Merle, no complaint."),
      failed("pim", 2.0, "yes", "Drops bits when warm. The same chips pass in a slower machine."),
      by("mirela", "electrical", 1.9, "Three samples: 170, 185 and 190 ns. Not what is printed."),
      by("bram", "told", 1.9, "Seller says that the batch was mixed."),
    ],
    { note: "Contested. Measured, it is a 200 ns part." },
  ),
  claim("HDL-M2164-15", "4164-20", "drop-in", [by("mirela", "electrical", 1.9, "All three are inside of 200 ns.")]),
  claim(
    "4164-15",
    "41256-15",
    "conditional",
    [by("ines", "fitted-worked", 4.7, "Pin 1 tied to ground on the solder side.")],
    {
      oneWay: true,
      if: ["Pin 1 of the place tied to a level", "Refresh of the machine covers it"],
    },
  ),
  claim("KL/2256/2", "41256-15", "drop-in", [by("tomasz", "told", 2.8, "From the list of a dealer. Not tried.")]),
  claim(
    "2764-25",
    "27C256-15",
    "conditional",
    [by("ines", "fitted-worked", 4.9, "Image four times over; VPP place and PGM place are both on +5 V here.")],
    {
      oneWay: true,
      if: ["Image repeated to fill 32 K, or written at the top", "Pins 26 and 27 of the place on a fixed level"],
    },
  ),
  claim("2764-25", "27128-25", "conditional", [by("ines", "pin-table", 4.9, "Pin 26 becomes A13.")], {
    oneWay: true,
    if: ["Image twice, or pin 26 on a fixed level"],
  }),
  claim(
    "2716",
    "2732",
    "conditional",
    [by("tomasz", "fitted-worked", 3.6, "Pin 21 is +5 V in the place, so it reads the upper half.")],
    {
      oneWay: true,
      if: ["Image in the upper half"],
    },
  ),
  claim(
    "2732",
    "2732A-2",
    "conditional",
    [by("ines", "data-sheet", 5.1, "Reads alike. Programs at 21 V instead of 25.")],
    {
      if: ["Programmer set to the right one of the two"],
    },
  ),
  claim(
    "27C256-15",
    "27C512-12",
    "conditional",
    [by("greta", "fitted-worked", 2.0, "Pin 1 is on +5 V, so the upper half is read; image twice.")],
    {
      oneWay: true,
      if: ["Image in both halves"],
    },
  ),
];

const processorsAndLinears: SeedClaim[] = [
  claim("OR 14-2080B", "Z80A CPU", "drop-in", [
    by("mirela", "fitted-worked", 3.5, "Harrow, and a test program over night."),
    by("greta", "fitted-worked", 2.5, "Terminal."),
  ]),
  claim("Z80 CPU", "Z80A CPU", "drop-in", [by("ines", "data-sheet", 6.0, "Faster does slower.")], { oneWay: true }),
  claim("OR 14-2065A", "6502", "drop-in", [by("pim", "fitted-worked", 1.9, "At 1 MHz no doubt.")]),
  claim(
    "6502A",
    "OR 14-2065A",
    "conditional",
    [
      by("pim", "fitted-worked", 1.9, "At 2 MHz it starts cold."),
      failed("bram", 1.4, "yes", "Stops after twenty minutes at 2 MHz. At 1 MHz it runs all night."),
    ],
    { oneWay: true, if: ["1 MHz"] },
  ),
  claim("SM2809P", "6809P", "drop-in", [by("dolores", "fitted-worked", 2.9, "Controller board.")]),
  claim("SM2809EP", "6809EP", "drop-in", [by("mirela", "pin-table", 1.6, "E and Q are inputs.")]),
  claim("6809P", "SM2809EP", "not-a-fit", [
    failed("tomasz", 1.7, "yes", "No clock at all, of course: it waits for one."),
    by("tomasz", "told", 1.8, "Sold to me as the same."),
  ]),
  claim("6809P", "6809EP", "not-a-fit", [by("mirela", "data-sheet", 4.8, "Pins 33, 34, 35, 36, 38 and 39.")]),
  claim("HDL-C2022-22", "6522", "drop-in", [
    by("bram", "fitted-worked", 2.4, "Keyboard side, well."),
    failed("bram", 2.3, "found-bad", "Second of five: timer 2 does not count, anywhere."),
    by("mirela", "pin-table", 2.2, "Forty of forty."),
  ]),
  claim("6522", "6821P", "not-a-fit", [
    by("ines", "data-sheet", 5.2, "Ports agree, everything from pin 21 on does not."),
  ]),
  claim("HDL-C2055-10", "8255A-5", "drop-in", [by("femi", "fitted-worked", 3.0, "Counter, panel side.")]),
  claim("KL/2055/1", "NE555N", "drop-in", [by("greta", "fitted-worked", 2.8, "Reset timer.")]),
  claim("KL/2488/1", "MC1488P", "drop-in", [by("greta", "fitted-worked", 2.8, "Both terminals.")]),
  claim("KL/2489/1", "MC1489P", "drop-in", [by("greta", "fitted-worked", 2.8, "Both terminals.")]),
  claim("KL/2800/1", "DAC0800", "drop-in", [by("tomasz", "fitted-worked", 2.2, "Music as before.")]),
  claim("SM2339P", "LM339N", "drop-in", [by("dolores", "fitted-worked", 3.1, "Switch matrix.")]),
  claim("SM2003P", "ULN2003", "drop-in", [by("dolores", "fitted-worked", 3.1, "Lamps, not coils.")]),
  claim("HDL-L2074-11", "TL074N", "drop-in", [by("kaisa", "fitted-worked", 3.0, "By ear and by offset.")]),
  claim("HDL-L2072-11", "TL072N", "drop-in", [by("kaisa", "fitted-worked", 3.0, "Output stage.")]),
  claim("HDL-L2080-14", "CA3080", "drop-in", [
    by("kaisa", "fitted-worked", 2.8, "Three voices, in tune."),
    by("femi", "electrical", 2.6, "Transconductance within 4 % of each other, three samples."),
    failed("kaisa", 1.2, "not-known", "The fourth hissed. From another seller, so perhaps not one at all."),
  ]),
  claim(
    "TL074N",
    "LM324N",
    "conditional",
    [
      by("kaisa", "fitted-worked", 3.5, "In the control voltages nobody hears it."),
      failed("kaisa", 3.5, "yes", "In the sound: crossover, like sand."),
    ],
    { oneWay: true, if: ["Slow control voltages, no sound", "No source of more than some 100 k in front"] },
  ),
  claim("BW 02805 A", "7805CT", "drop-in", [by("dolores", "fitted-worked", 2.9, "1 A, tab on ground.")]),
  claim("7805CT", "78L05", "not-a-fit", [
    by("yusuf", "data-sheet", 5.6, "Pins 1 and 3 are swapped, and a tenth of the current."),
  ]),
  claim("7805CT", "7905CT", "not-a-fit", [by("yusuf", "data-sheet", 5.6, "Negative, and the pins are others.")]),
];

export const claims: SeedClaim[] = [...buffers, ...logic, ...memories, ...processorsAndLinears];
