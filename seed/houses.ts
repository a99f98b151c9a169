import type { SeedHouse } from "#seed/shapes.ts";

/** The chip makers of the demo club. None of them ever existed. */
export const houses: SeedHouse[] = [
  {
    slug: "veltrax",
    name: "Veltrax",
    notes:
      "`VQ4-0061-03`: family, four figures of type, two of the version of the silicon. Date code year and week, below the number, on the right. Ceramic parts carry the type on the lid and the version on the underside only.",
  },
  {
    slug: "orrin",
    name: "Orrin Devices",
    notes:
      "`OR 27-114B`: the figure before the hyphen is the process (27 is CMOS, 14 is NMOS), the letter is the version. Often printed without the blank. Their date codes have the week first.",
  },
  {
    slug: "sunmarsh",
    name: "Sunmarsh",
    notes:
      "`SM6612P` or `SM6612-2`: a letter behind the figures is the package (P plastic, F flat, C ceramic), a hyphen with a figure the speed. Second source of nearly everybody; the figures are their own and follow nobody.",
  },
  {
    slug: "kettering-lo",
    name: "Kettering-Lo",
    notes:
      "`KL/0402/7`: type, then the number of the mask. On ROMs the mask number says which contents: the same type with another mask is **another part**. Date code by itself on the underside.",
  },
  {
    slug: "hadal",
    name: "Hadal",
    notes:
      "`HDL-C15-22`: a letter for the sort (C logic, M memory, L linear), type, batch or grade. Nobody in the club is sure whether the last two figures are a grade or a date. Sold mostly as spares, in foil.",
  },
  {
    slug: "brightwater",
    name: "Brightwater",
    notes:
      "`BW 80113 A`: the first figure is the package (8 DIP, 0 everything else), then the type, then the version. Quality parts; the ink comes off with alcohol, so take a photo before cleaning.",
  },
];
