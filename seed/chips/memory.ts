import type { ContentsKind, Technology } from "#lib/core/shared/index.ts";
import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { inOrder, rearranged } from "./in-order.ts";

// Memories. Pins from the makers' data sheets; VPP of an EPROM is +5 V in the machine that reads it.

const EPROM_24 = (eighteen: string, twenty: string, twentyOne: string): string =>
  `A7:a A6:a A5:a A4:a A3:a A2:a A1:a A0:a D0:dt D1:dt D2:dt GND=0 D3:dt D4:dt D5:dt D6:dt D7:dt ${eighteen} A10:a ${twenty} ${twentyOne} A9:a A8:a VCC=5`;
const EPROM_28 = (one: string, twentyTwo: string, twentySix: string, twentySeven: string): string =>
  `${one} A12:a A7:a A6:a A5:a A4:a A3:a A2:a A1:a A0:a D0:dt D1:dt D2:dt GND=0 D3:dt D4:dt D5:dt D6:dt D7:dt /CE:cs A10:a ${twentyTwo} A11:a A9:a A8:a ${twentySix} ${twentySeven} VCC=5`;
const DRAM = (one: string, eight: string, nine: string): string =>
  `${one} DIN:d /WE:c /RAS:c A0:a A2:a A1:a ${eight} ${nine} A5:a A4:a A3:a A6:a DOUT:dt /CAS:c VSS=0`;

const EPROM_27C256 = inOrder("DIP-28", EPROM_28("VPP=5", "/OE:en", "A13:a", "A14:a"));
const EPROM_27C512 = inOrder("DIP-28", EPROM_28("A15:a", "/OE:en", "A13:a", "A14:a"));

/** 28 pins of a byte-wide memory on the 32 of a PLCC: 1, 12, 17 and 26 are left over. */
function onPlcc32(number: number): number {
  if (number <= 10) return number + 1;
  if (number <= 14) return number + 2;
  return number <= 22 ? number + 3 : number + 4;
}

function chip(
  slug: string,
  technology: Technology,
  contents: ContentsKind,
  what: string,
  packages: SeedPackage[],
  notes: string,
): SeedChip {
  return { slug, name: slug.toUpperCase(), function: what, technology, contents, notes, packages };
}

export const memories: SeedChip[] = [
  chip(
    "2114",
    "NMOS",
    "none",
    "1 K × 4 static RAM",
    [
      inOrder(
        "DIP-18",
        "A6:a A5:a A4:a A3:a A0:a A1:a A2:a /CS:cs GND=0 /WE:c D3:b D2:b D1:b D0:b A9:a A8:a A7:a VCC=5",
      ),
    ],
    "Works in pairs. Warm is usual, too hot to touch is not; piggy-back a good one on it and see whether the picture changes.",
  ),
  chip(
    "6116",
    "CMOS",
    "none",
    "2 K × 8 static RAM",
    [
      inOrder(
        "DIP-24",
        "A7:a A6:a A5:a A4:a A3:a A2:a A1:a A0:a D0:b D1:b D2:b GND=0 D3:b D4:b D5:b D6:b D7:b /CS:cs A10:a /OE:en /WE:c A9:a A8:a VCC=5",
      ),
    ],
    "Often kept by a battery. The low-power versions hold for years, the others empty the cell in weeks.",
  ),
  chip(
    "62256",
    "CMOS",
    "none",
    "32 K × 8 static RAM",
    [
      inOrder(
        "DIP-28",
        "A14:a A12:a A7:a A6:a A5:a A4:a A3:a A2:a A1:a A0:a D0:b D1:b D2:b GND=0 D3:b D4:b D5:b D6:b D7:b /CS:cs A10:a /OE:en A11:a A9:a A8:a A13:a /WE:c VCC=5",
      ),
    ],
    "Pins as the 28-pin EPROMs but for 1, 26 and 27.",
  ),
  chip(
    "4116",
    "NMOS",
    "none",
    "16 K × 1 dynamic RAM, three supplies",
    [inOrder("DIP-16", DRAM("VBB=-5", "VDD=12", "VCC=5"))],
    "-5 V on pin 1, +12 V on pin 8, +5 V on pin 9. Loses its life when -5 V is missing while +12 V is there: measure -5 V first, without the RAM in its sockets. A 4164 in this place gets 12 V on its 5 V pin.",
  ),
  chip(
    "4164",
    "NMOS",
    "none",
    "64 K × 1 dynamic RAM, +5 V only",
    [inOrder("DIP-16", DRAM("NC:nc", "VCC=5", "A7:a"))],
    "One chip is one bit. The one that is hotter than its seven sisters is the suspect; a finger finds it.",
  ),
  chip(
    "41256",
    "NMOS",
    "none",
    "256 K × 1 dynamic RAM, +5 V only",
    [inOrder("DIP-16", DRAM("A8:a", "VCC=5", "A7:a"))],
    "Does for a 4164 where pin 1 is tied to a level and not left open.",
  ),
  chip(
    "2716",
    "NMOS",
    "eprom",
    "2 K × 8 EPROM",
    [inOrder("DIP-24", EPROM_24("/CE:cs", "/OE:en", "VPP=5"))],
    "Programs at 25 V. One maker's 2716 wants three supplies: read the marking whole before it goes into a programmer.",
  ),
  chip(
    "2732",
    "NMOS",
    "eprom",
    "4 K × 8 EPROM",
    [inOrder("DIP-24", EPROM_24("/CE:cs", "/OE/VPP:en", "A11:a"))],
    "Programs at 25 V, the A version at 21. The wrong one of the two kills it.",
  ),
  chip(
    "2764",
    "NMOS",
    "eprom",
    "8 K × 8 EPROM",
    [inOrder("DIP-28", EPROM_28("VPP=5", "/OE:en", "NC:nc", "/PGM:c"))],
    "Read it twice and compare before anything else. A bit that reads otherwise at 4.5 V than at 5 V is on its way out.",
  ),
  chip(
    "27128",
    "NMOS",
    "eprom",
    "16 K × 8 EPROM",
    [inOrder("DIP-28", EPROM_28("VPP=5", "/OE:en", "A13:a", "/PGM:c"))],
    "As 2764 with A13 on pin 26.",
  ),
  chip(
    "27c256",
    "CMOS",
    "eprom",
    "32 K × 8 EPROM",
    [
      EPROM_27C256,
      rearranged(EPROM_27C256, "PLCC-32", onPlcc32, {
        1: "do-not-connect",
        12: "no-connect",
        17: "do-not-connect",
        26: "no-connect",
      }),
    ],
    "Programs at 12.5 V. In PLCC pins 1 and 17 must be left alone. A label over the window comes off with its glue: warm it first.",
  ),
  chip(
    "27c512",
    "CMOS",
    "eprom",
    "64 K × 8 EPROM",
    [
      EPROM_27C512,
      rearranged(EPROM_27C512, "PLCC-32", onPlcc32, {
        1: "no-connect",
        12: "no-connect",
        17: "no-connect",
        26: "no-connect",
      }),
    ],
    "In a place for a 27C256 the image goes in twice, because pin 1 is A15 here and VPP there.",
  ),
];
