import type { SeedCode } from "#seed/shapes.ts";

type Sighting = SeedCode["sightings"][number];

/** `harrow-80 U10 8433 bram | a remark`: where a marking was seen, its date code (`-` for none), and by whom. */
export function seenAt(text: string): Sighting {
  const [where = "", note] = text.split(" | ");
  const [board = "", at = "", dateCode = "-", member = ""] = where.split(" ");
  return {
    board,
    at,
    ...(dateCode === "-" ? {} : { dateCode }),
    member,
    ...(note === undefined ? {} : { note }),
  };
}
