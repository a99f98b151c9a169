import { readPlace } from "../netlist/index.ts";
import type { PinType } from "../shared/index.ts";
import { boardNames, chipPin, placeFacts, type BoardFacts } from "./facts.ts";

/** Pins that can hold a net high or low. */
const DRIVES: Record<PinType, boolean> = {
  input: false,
  output: true,
  bidirectional: true,
  "three-state": true,
  "open-collector": true,
  "open-emitter": true,
  passive: false,
  "power-in": false,
  "power-out": true,
  "no-connect": false,
  "do-not-connect": false,
  unspecified: false,
};

/**
 * Designators of what feeds a rail, or drives the net, at a place; the part at the place itself is left out. Empty where
 * the board's record has no nets there.
 */
export function feedsOf(facts: BoardFacts, at: string): string[] {
  const place = readPlace(at, boardNames(facts));
  if (!place.ok) return [];
  const found = placeFacts(facts, place.value);
  if (found.rail) return found.rail.source === "" ? [] : [found.rail.source];
  const net = facts.nets.find((candidate) => candidate.name === found.net?.name);
  const own = found.placement?.designator.toUpperCase();
  const drivers = (net?.pins ?? []).flatMap((spelled) => {
    const dot = spelled.lastIndexOf(".");
    const driver = chipPin(facts, spelled.slice(0, dot), spelled.slice(dot + 1));
    return driver && DRIVES[driver.pin.type] ? [driver.placement.designator] : [];
  });
  return [...new Set(drivers)].filter((designator) => designator.toUpperCase() !== own);
}
