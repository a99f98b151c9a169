import type { PlacementKind } from "#lib/core/shared/index.ts";
import type { SeedPlacement } from "#seed/shapes.ts";

/** A part before it has a place on the drawing. */
export type Part = Omit<SeedPlacement, "x" | "y">;

/** Millimetres on the drawing; DIPs lie flat, pins along the long sides. */
export interface Footprint {
  width: number;
  height: number;
}

const BY_PACKAGE: Record<string, Footprint> = {
  "DIP-8": { width: 10, height: 8 },
  "DIP-14": { width: 19, height: 8 },
  "DIP-16": { width: 20, height: 8 },
  "DIP-18": { width: 23, height: 8 },
  "DIP-20": { width: 25, height: 8 },
  "DIP-24": { width: 31, height: 15 },
  "DIP-28": { width: 36, height: 15 },
  "DIP-40": { width: 52, height: 15 },
  "PLCC-44": { width: 18, height: 18 },
  "PLCC-68": { width: 25, height: 25 },
  "QFP-44": { width: 14, height: 14 },
  "QFP-64": { width: 18, height: 18 },
  "QFP-80": { width: 20, height: 20 },
  "SOIC-16": { width: 11, height: 10 },
  "SOIC-28": { width: 18, height: 11 },
  "SIP-8": { width: 21, height: 4 },
  "SIP-9": { width: 23, height: 4 },
  "SIP-10": { width: 26, height: 4 },
  "TO-220": { width: 11, height: 6 },
  "TO-220-5": { width: 12, height: 6 },
  "TO-3": { width: 39, height: 26 },
  "TO-92": { width: 5, height: 4 },
  "radial-8": { width: 8, height: 8 },
  "radial-18": { width: 18, height: 18 },
  "radial-30": { width: 30, height: 30 },
  "edge-36": { width: 75, height: 9 },
  "edge-44": { width: 90, height: 9 },
  "edge-50": { width: 100, height: 9 },
  DE9: { width: 31, height: 12 },
  DB25: { width: 53, height: 12 },
  "DIN-5": { width: 20, height: 14 },
  "DIN-6": { width: 20, height: 14 },
  BNC: { width: 15, height: 15 },
  "screw-8": { width: 40, height: 11 },
  "screw-3": { width: 16, height: 11 },
  "header-4": { width: 12, height: 7 },
  "header-6": { width: 17, height: 7 },
  "header-8": { width: 22, height: 7 },
  "header-10": { width: 27, height: 7 },
  "header-16": { width: 42, height: 7 },
  "header-20": { width: 30, height: 9 },
  "header-26": { width: 40, height: 9 },
  "core-driver": { width: 20, height: 18 },
  "line-output": { width: 45, height: 48 },
  "mains-transformer": { width: 62, height: 52 },
  oven: { width: 36, height: 36 },
  trimmer: { width: 10, height: 10 },
  "bridge-square": { width: 28, height: 28 },
  bridge: { width: 19, height: 6 },
};

const BY_KIND: Record<PlacementKind, Footprint> = {
  chip: { width: 20, height: 8 },
  transistor: { width: 5, height: 4 },
  diode: { width: 8, height: 3 },
  resistor: { width: 9, height: 3 },
  "resistor-pack": { width: 23, height: 4 },
  capacitor: { width: 5, height: 3 },
  inductor: { width: 12, height: 12 },
  crystal: { width: 11, height: 5 },
  connector: { width: 27, height: 7 },
  switch: { width: 12, height: 10 },
  fuse: { width: 24, height: 8 },
  relay: { width: 20, height: 11 },
  transformer: { width: 62, height: 52 },
  battery: { width: 21, height: 12 },
  jumper: { width: 6, height: 3 },
  "test-point": { width: 3, height: 3 },
  other: { width: 12, height: 8 },
};

/** Room that a part takes on the drawing: by its package, else by its kind. */
export function footprint(part: { kind: PlacementKind; package?: string }): Footprint {
  return BY_PACKAGE[part.package ?? ""] ?? BY_KIND[part.kind];
}

/** A chip with a record of its own. */
export function chip(designator: string, slug: string, packageName: string, extra: Partial<Part> = {}): Part {
  return { designator, kind: "chip", chip: slug, package: packageName, ...extra };
}

/** Any other part, by its value. */
export function part(designator: string, kind: PlacementKind, value: string, extra: Partial<Part> = {}): Part {
  return { designator, kind, value, ...extra };
}

/**
 * Parts side by side from `x` on, all at `y`, `gap` millimetres apart; a number between parts leaves that much more
 * room. The step is wide enough whether a place is read as the part's upper left corner or as its middle.
 */
export function row(x: number, y: number, parts: readonly (Part | number)[], gap = 3): SeedPlacement[] {
  const placed: SeedPlacement[] = [];
  let at = x;
  let before: Footprint | undefined;
  let extra = 0;
  for (const item of parts) {
    if (typeof item === "number") {
      extra += item;
      continue;
    }
    const size = footprint(item);
    if (before !== undefined) at += Math.max(before.width, (before.width + size.width) / 2) + gap + extra;
    placed.push({ ...item, x: Math.round(at * 10) / 10, y });
    before = size;
    extra = 0;
  }
  return placed;
}
