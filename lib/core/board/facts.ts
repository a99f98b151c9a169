import type {
  BoardKind,
  CheckKind,
  Hazard,
  NetRole,
  PackageStyle,
  PinRole,
  PinType,
  PlacementKind,
  Technology,
} from "../shared/index.ts";
import { readPlace, type BoardNames, type Place } from "../netlist/index.ts";
import { printExpectation, type Expectation } from "../quantity/index.ts";
import { expectFromPin, expectFromRail } from "../reading/index.ts";

export interface PinFacts {
  number: string;
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
  /** Volts, for supply pins, where known. */
  supply: number | null;
}

export interface ChipFacts {
  slug: string;
  name: string;
  technology: Technology;
  pins: PinFacts[];
  /** The package that the pins are of, for drawing it: `DIP-20`. Left out where no package is on record. */
  package?: { name: string; style: PackageStyle };
}

export interface RailFacts {
  name: string;
  /** Volts; RMS where `ac`. */
  nominal: number;
  ac: boolean;
  tolerancePercent: number | null;
  regulated: boolean;
  /** Designator of what makes it; empty: not known. */
  source: string;
}

export interface PlacementFacts {
  designator: string;
  kind: PlacementKind;
  value: string;
  socketed: boolean;
  /** Key into `chips`. */
  chip: string | null;
}

/** What a board's record says, as plain data: enough to judge a reading anywhere on it, in the browser too. */
export interface BoardFacts {
  slug: string;
  name: string;
  kind: BoardKind;
  hazards: Hazard[];
  /** Volts, peak for a.c. */
  highestVoltage: number | null;
  rails: RailFacts[];
  placements: PlacementFacts[];
  /** By slug; of each the pins of the package that fits the placement. */
  chips: Record<string, ChipFacts>;
  connectors: { designator: string; pins: { number: string; name: string }[] }[];
  nets: { name: string; role: NetRole; pins: string[] }[];
  cautions: { at: string; text: string }[];
}

/** What is known of one place on the board. */
export interface PlaceFacts {
  place: Place;
  /** Whether the board's record has such a place. */
  known: boolean;
  placement: PlacementFacts | null;
  chip: ChipFacts | null;
  pin: PinFacts | null;
  /** What the connector's pin is called. */
  connectorPin: string | null;
  net: { name: string; role: NetRole } | null;
  rail: RailFacts | null;
}

/** An expectation and the record that it comes from, in words. */
export interface FoundExpectation {
  expectation: Expectation;
  /** As it is shown and kept. */
  text: string;
  from: string;
}

/** The names of a board, for reading what was typed (`D3` may be a diode or a data line). */
export function boardNames(facts: BoardFacts): BoardNames {
  return {
    designators: [...facts.placements.map((p) => p.designator), ...facts.connectors.map((c) => c.designator)],
    nets: [...facts.nets.map((net) => net.name), ...facts.rails.map((rail) => rail.name)],
  };
}

/** What the board's record knows of a place that was read. Never fails: an unknown place comes back as not known. */
export function placeFacts(facts: BoardFacts, place: Place): PlaceFacts {
  switch (place.kind) {
    case "net":
      return netFacts(facts, place, place.net);
    case "part":
      return partFacts(facts, place, place.designator);
    case "pin":
      return pinFacts(facts, place, place.designator, place.pin);
  }
}

function netFacts(facts: BoardFacts, place: Place, name: string): PlaceFacts {
  const net = facts.nets.find((candidate) => same(candidate.name, name)) ?? null;
  const rail = facts.rails.find((candidate) => same(candidate.name, name)) ?? null;
  return { ...nothing(place), known: net !== null || rail !== null, net: net && brief(net), rail };
}

function partFacts(facts: BoardFacts, place: Place, designator: string): PlaceFacts {
  const placement = facts.placements.find((candidate) => same(candidate.designator, designator)) ?? null;
  const connector = facts.connectors.some((candidate) => same(candidate.designator, designator));
  return { ...nothing(place), known: placement !== null || connector, placement, chip: chipAt(facts, placement) };
}

function pinFacts(facts: BoardFacts, place: Place, designator: string, number: string): PlaceFacts {
  const part = partFacts(facts, place, designator);
  const pin = part.chip?.pins.find((candidate) => same(candidate.number, number)) ?? null;
  const connector = facts.connectors.find((candidate) => same(candidate.designator, designator));
  const contact = connector?.pins.find((candidate) => same(candidate.number, number)) ?? null;
  const spelled = `${designator}.${number}`;
  const net = facts.nets.find((candidate) => candidate.pins.some((other) => same(other, spelled))) ?? null;
  const rail = net && (facts.rails.find((candidate) => same(candidate.name, net.name)) ?? null);
  // A part without a pin table (a resistor, an unknown chip) has pins that nobody listed.
  const listed = part.chip !== null && part.chip.pins.length > 0;
  const known = pin !== null || contact !== null || net !== null || (part.placement !== null && !listed);
  return { ...part, known, pin, connectorPin: contact?.name ?? null, net: net && brief(net), rail };
}

/**
 * What a check of this kind should show here, by the board's and the chip's record: the rail first, then the pin.
 * Null where nothing is known: most places of an undocumented board.
 */
export function expectationAt(found: PlaceFacts, kind: CheckKind): FoundExpectation | null {
  if (found.rail && (kind === "dc-voltage" || kind === "ac-voltage") && (kind === "ac-voltage") === found.rail.ac) {
    const { expectation, why } = expectFromRail(found.rail);
    return { expectation, text: printExpectation(expectation), from: `the board's record, ${found.rail.name}: ${why}` };
  }
  if (!found.pin || !found.chip) return null;
  const { number: _number, ...pin } = found.pin;
  const expected = expectFromPin({ ...pin, technology: found.chip.technology }, kind);
  if (!expected) return null;
  const from = `${found.chip.name} pin ${found.pin.number} (${found.pin.name}): ${expected.why}`;
  return { expectation: expected.expectation, text: printExpectation(expected.expectation), from };
}

/** The same for a place as typed. Null also where it cannot be read. */
export function expectationFor(facts: BoardFacts, at: string, kind: CheckKind): FoundExpectation | null {
  const place = readPlace(at, boardNames(facts));
  return place.ok ? expectationAt(placeFacts(facts, place.value), kind) : null;
}

function chipAt(facts: BoardFacts, placement: PlacementFacts | null): ChipFacts | null {
  return placement?.chip ? (facts.chips[placement.chip] ?? null) : null;
}

/** A pin of a chip on the board, by its numbers; null where there is none, or no pin table. */
export function chipPin(
  facts: BoardFacts,
  designator: string,
  number: string,
): { placement: PlacementFacts; pin: PinFacts } | null {
  const placement = facts.placements.find((candidate) => same(candidate.designator, designator));
  const pin = placement && chipAt(facts, placement)?.pins.find((candidate) => same(candidate.number, number));
  return placement && pin ? { placement, pin } : null;
}

function nothing(place: Place): PlaceFacts {
  return { place, known: false, placement: null, chip: null, pin: null, connectorPin: null, net: null, rail: null };
}

function brief(net: { name: string; role: NetRole }): { name: string; role: NetRole } {
  return { name: net.name, role: net.role };
}

function same(a: string, b: string): boolean {
  return a.toUpperCase() === b.toUpperCase();
}
