import type { PlacementKind } from "../shared/index.ts";
import { readRef } from "../marking/index.ts";

/** What the letters of a designator stand for. Common practice, no source. */
const KIND_LETTERS: readonly (readonly [PlacementKind, string])[] = [
  ["chip", "U IC"],
  ["transistor", "Q TR"],
  ["diode", "D CR ZD DZ LED DS"],
  ["resistor", "R VR POT RV TH NTC"],
  ["resistor-pack", "RN RA RP RM"],
  ["capacitor", "C CP CE EC TC"],
  ["inductor", "L FB LF"],
  ["crystal", "X Y XTAL XT OSC"],
  ["connector", "J CN CON CONN P PL SK TB"],
  ["switch", "S SW DSW"],
  ["fuse", "F FU FS"],
  ["relay", "K RY RL RLY"],
  ["transformer", "T TF TRF"],
  ["battery", "B BT BAT"],
  ["jumper", "JP W LK LINK E SB"],
  ["test-point", "TP TST"],
];

const KIND_OF = new Map<string, PlacementKind>(
  KIND_LETTERS.flatMap(([kind, letters]) => letters.split(" ").map((prefix) => [prefix, kind] as const)),
);

/**
 * The kind of part that a designator usually names: U7 → chip, RN2 → resistor-pack. A grid position (4F) is a chip.
 * `other` for letters that stand for nothing in common use.
 */
export function placementKindOf(designator: string): PlacementKind {
  const ref = readRef(designator, { anyPrefix: true });
  if (!ref) return "other";
  return ref.style === "grid" ? "chip" : (KIND_OF.get(ref.prefix) ?? "other");
}
