import type { SeedSpare } from "#seed/shapes.ts";

type What = { code: string } | { chip: string } | { board: string };

function offer(member: string, what: What, quantity: number, condition: string, note?: string): SeedSpare {
  return { member, direction: "offer", ...what, quantity, condition, ...(note === undefined ? {} : { note }) };
}

function want(member: string, what: What, quantity: number, note: string): SeedSpare {
  return { member, direction: "want", ...what, quantity, condition: "any", note };
}

/** What members have to give and look for, donor boards too. */
export const spares: SeedSpare[] = [
  offer("ines", { code: "74LS244N" }, 25, "new", "Club stock. Take one, leave a line."),
  offer("ines", { code: "74LS245N" }, 18, "new", "Club stock."),
  offer("ines", { code: "74LS138N" }, 12, "new"),
  offer("ines", { chip: "74ls373" }, 9, "new"),
  offer("ines", { chip: "74ls04" }, 30, "new", "Two makers, both start crystals."),
  offer(
    "ines",
    { code: "27C256-15" },
    11,
    "used, erased, read back FF",
    "Windows cleaned. Tell me the image and I write it in.",
  ),
  offer("otto", { chip: "7812" }, 6, "new"),
  offer("otto", { chip: "7912" }, 4, "new"),
  offer("otto", { code: "OR 14-2016C" }, 16, "pulled, tested warm", "Full set from a board that will not live again."),
  offer(
    "otto",
    { board: "vetch-terminal-deflection" },
    1,
    "donor, line output gone",
    "Everything but the hot end is well. Discharged.",
  ),
  offer("mirela", { code: "SM0612P" }, 1, "pulled, proved in two machines", "To lend for a comparison, not for keeps."),
  offer("mirela", { chip: "74ls163" }, 14, "new"),
  offer("mirela", { chip: "6522" }, 3, "pulled, timers tested"),
  offer(
    "bram",
    { board: "harrow-80" },
    2,
    "donor, one burnt at the regulator",
    "U2 gone on both, the rest take as you like.",
  ),
  offer("bram", { code: "HDL-M2164-15" }, 10, "new, doubtful", "Read the claims first. Free."),
  offer("bram", { code: "4164-20" }, 24, "pulled, untested"),
  offer("yusuf", { chip: "7805" }, 20, "new"),
  offer("yusuf", { chip: "lm317" }, 5, "new"),
  offer("yusuf", { board: "plover-supply" }, 1, "donor, transformer open", "Heat sink and all regulators well."),
  offer("kaisa", { chip: "ca3080" }, 6, "pulled, sorted", "Measured for equal current, numbers on the bag."),
  offer("kaisa", { chip: "tl074" }, 15, "new"),
  offer("kaisa", { chip: "4051" }, 8, "new"),
  offer("dolores", { chip: "tip122" }, 40, "new", "One goes every month."),
  offer("dolores", { chip: "uln2003" }, 12, "new"),
  offer("dolores", { board: "moth-driver" }, 1, "donor, acid damage along J1", "Upper half is clean."),
  offer("anouk", { code: "74LS244D" }, 50, "new, on reel", "With ten adapters to DIP-20."),
  offer("anouk", { chip: "62256" }, 4, "new", "Adapters for 24 pins on request."),
  offer("tomasz", { board: "tern-arcade-main" }, 2, "donors, no edge connector", "Sprites on one of them still well."),
  offer("tomasz", { chip: "2114" }, 20, "pulled, tested"),
  offer("tomasz", { code: "SM2809EP" }, 2, "new", "Bought by mistake. E!"),
  offer("femi", { chip: "lm339" }, 10, "new"),
  offer("femi", { chip: "8255" }, 3, "pulled, all ports tested"),
  offer("greta", { chip: "mc1488" }, 7, "new"),
  offer("greta", { chip: "mc1489" }, 9, "new", "With sockets. You will need the sockets."),
  want("pim", { code: "OR 27-041B" }, 1, "For a Merle that otherwise works. A loan would do to be sure."),
  want("femi", { code: "BW 00452 B" }, 1, "Or an hour with a good one."),
  want("yusuf", { code: "BW 00630 A" }, 1, "In any state, also dead: I would open it."),
  want("dolores", { code: "VQ4-0899-01" }, 2, "Nobody knows what it is. I only know that mine is dead."),
  want("tomasz", { code: "KL/0718/4" }, 1, "Speech ROM of the later phrases, dump welcome too."),
  want("kaisa", { code: "HDL-C45-22" }, 2, "Any grade, as long as both halves track."),
  want("greta", { board: "vetch-terminal-logic" }, 1, "A scrap one, for its plug J2."),
];
