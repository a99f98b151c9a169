import { packageOutline, readPackageName } from "#lib/core/pinout/index.ts";
import type { PlacementKind } from "#lib/core/shared/index.ts";

export interface DrawnPlacement {
  designator: string;
  kind: PlacementKind;
  /** Chip, value or what else tells the part: `74LS244`, `100n`. */
  label: string;
  /** As people say it: `DIP-20`. */
  package?: string;
  /** Middle of the part in millimetres from the board's upper left corner, component side. */
  x: number;
  y: number;
  /** How many cases suspect it, or a word that says why it is marked. */
  marked?: number | string;
}

export interface DrawnConnector {
  designator: string;
  name: string;
}

export interface PlacedPart {
  placement: DrawnPlacement;
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Millimetres, long side first. Common sizes of through-hole parts of the period, no source. */
const PART_SIZES: Readonly<Record<PlacementKind, readonly [long: number, short: number]>> = {
  chip: [19, 7.6],
  transistor: [5, 4.5],
  diode: [8, 3],
  resistor: [8, 3],
  "resistor-pack": [20, 4],
  capacitor: [6, 5],
  inductor: [9, 6],
  crystal: [11, 5],
  connector: [40, 9],
  switch: [10, 8],
  fuse: [20, 7],
  relay: [20, 12],
  transformer: [32, 26],
  battery: [22, 16],
  jumper: [6, 3.5],
  "test-point": [3.5, 3.5],
  other: [7, 5],
};

/** Share of their size at which parts are tried in turn until no two chips lie on each other. */
const SHRINKS: readonly number[] = [1, 0.85, 0.7, 0.55];

/** A connector this close to the edge (share of the board's smaller side) lies along that edge. */
const EDGE_SHARE = 0.2;

/**
 * Where parts stand and how large they are drawn. The record knows no rotation, so all chips lie the way in which
 * fewer of them overlap, and shrink where that is not enough: the drawing is an index, not a measured plan.
 */
export function boardLayout(width: number, height: number, placements: readonly DrawnPlacement[]): PlacedPart[] {
  const chips = placements.filter((one) => one.kind === "chip");
  const ways = SHRINKS.flatMap((shrink) => [
    { shrink, upright: false },
    { shrink, upright: true },
  ]);
  const overlaps = (way: Way) => overlapOf(chips.map((one) => placed(one, way, width, height)));
  const best = ways.find((way) => overlaps(way) === 0) ?? { shrink: SHRINKS.at(-1) ?? 1, upright: false };
  return placements.map((one) => placed(one, best, width, height));
}

interface Way {
  shrink: number;
  upright: boolean;
}

function placed(placement: DrawnPlacement, way: Way, boardWidth: number, boardHeight: number): PlacedPart {
  const [long, short] = sizeOf(placement);
  const [across, down] = isUpright(placement, way, boardWidth, boardHeight) ? [short, long] : [long, short];
  // Rounded before the place is worked out, so that place and size together never pass the edge.
  const width = round(Math.min(across * way.shrink, boardWidth));
  const height = round(Math.min(down * way.shrink, boardHeight));
  // A part whose middle is given too near the edge is drawn whole, on the board.
  const x = clamp(placement.x - width / 2, 0, boardWidth - width);
  const y = clamp(placement.y - height / 2, 0, boardHeight - height);
  return { placement, x: round(x), y: round(y), width, height };
}

function sizeOf(placement: DrawnPlacement): readonly [number, number] {
  const named = placement.package === undefined ? null : readPackageName(placement.package);
  if (named !== null && named.pinCount !== null) {
    const outline = packageOutline(named.style, named.pinCount);
    if (outline.ok) {
      const { width, height } = outline.value;
      return [Math.max(width, height), Math.min(width, height)];
    }
  }
  return PART_SIZES[placement.kind];
}

function isUpright(placement: DrawnPlacement, way: Way, boardWidth: number, boardHeight: number): boolean {
  if (placement.kind === "chip") return way.upright;
  if (placement.kind !== "connector") return false;
  const toSide = Math.min(placement.x, boardWidth - placement.x);
  const toEnd = Math.min(placement.y, boardHeight - placement.y);
  return toSide < toEnd && toSide < Math.min(boardWidth, boardHeight) * EDGE_SHARE;
}

function overlapOf(parts: readonly PlacedPart[]): number {
  let area = 0;
  for (const [i, a] of parts.entries())
    for (const b of parts.slice(i + 1)) {
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
      const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
      if (across > 0.01 && down > 0.01) area += across * down;
    }
  return area;
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), Math.max(low, high));
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
