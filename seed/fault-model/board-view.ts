import type { Technology } from "#lib/core/shared/index.ts";
import type { SeedBoard, SeedChip, SeedNet, SeedPin, SeedPlacement, SeedRail } from "#seed/shapes.ts";
import { HIGHEST_RAIL } from "./parameters.ts";

/** A pin of a chip on the board, with what it is connected to. */
export interface Leg {
  /** `U7.14` */
  place: string;
  pin: SeedPin;
  net: SeedNet | null;
}

export interface ChipView {
  designator: string;
  placement: SeedPlacement;
  chip: SeedChip;
  legs: Leg[];
}

/** A board as a repairer looks at it: from a pin to its net, from a net to its pins, from a rail to its source. */
export interface BoardView {
  board: SeedBoard;
  chips: ChipView[];
  chipAt: ReadonlyMap<string, ChipView>;
  legAt: ReadonlyMap<string, Leg>;
  netOf: ReadonlyMap<string, SeedNet>;
  /** Pins on clock, address and data lines, which move while the machine runs. */
  lines: Leg[];
  /** D.c. rails that anybody may measure, by name. */
  rails: ReadonlyMap<string, SeedRail>;
}

/** Joins the board's record with the records of the chips on it; parts without a chip record have no legs. */
export function viewOf(board: SeedBoard, chips: ReadonlyMap<string, SeedChip>): BoardView {
  const netOf = new Map(board.nets.flatMap((net) => net.pins.map((pin) => [pin, net] as const)));
  const views = board.placements.flatMap((placement): ChipView[] => {
    const chip = chips.get(placement.chip ?? "");
    const pins = chip?.packages.find((one) => one.name === placement.package) ?? chip?.packages[0];
    if (chip === undefined || pins === undefined) return [];
    const { designator } = placement;
    const legs = pins.pins.map((pin): Leg => {
      const place = `${designator}.${pin.number}`;
      return { place, pin, net: netOf.get(place) ?? null };
    });
    return [{ designator, placement, chip, legs }];
  });
  return {
    board,
    chips: views,
    chipAt: new Map(views.map((one) => [one.designator, one])),
    legAt: new Map(views.flatMap((one) => one.legs.map((leg) => [leg.place, leg] as const))),
    netOf,
    lines: views.flatMap(({ legs }) =>
      legs.filter(({ net }) => net?.role === "address" || net?.role === "data" || net?.role === "clock"),
    ),
    rails: new Map(
      board.rails
        .filter((rail) => rail.ac !== true && Math.abs(rail.nominal) <= HIGHEST_RAIL && rail.nominal !== 0)
        .map((rail) => [rail.name, rail]),
    ),
  };
}

const LOGIC: ReadonlySet<Technology> = new Set<Technology>([
  "TTL",
  "LS",
  "ALS",
  "S",
  "F",
  "HC",
  "HCT",
  "CMOS-4000",
  "CMOS",
  "NMOS",
]);

/** Whether the chip's pins show logic levels, so that a probe tells moving from standing. */
export function isLogic({ chip }: ChipView): boolean {
  return LOGIC.has(chip.technology);
}

/** Nets that leave a chip: a pin that drives, and somebody on the other end. */
export function isDriving({ pin, net }: Leg): boolean {
  const drives = pin.type === "output" || pin.type === "three-state" || pin.type === "bidirectional";
  return drives && net !== null && net.pins.length > 1 && net.role !== "power" && net.role !== "ground";
}

export function isReceiving({ pin, net }: Leg): boolean {
  return pin.type === "input" && net !== null && net.role !== "power" && net.role !== "ground";
}

/** Whether the line moves all the time while the machine runs, so that standing still is a fault. */
export function isBusy({ pin, net }: Leg): boolean {
  const busyNet = net !== null && ["clock", "address", "data", "select"].includes(net.role);
  return busyNet && !["reset", "interrupt", "supply", "ground", "analog"].includes(pin.role);
}

/** Designator of a place: of `U7.14` it is `U7`. */
export function partOf(place: string): string {
  const dot = place.indexOf(".");
  return dot < 0 ? place : place.slice(0, dot);
}
