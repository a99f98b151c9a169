import { placeFacts, type BoardFacts } from "#lib/core/board/index.ts";
import { comparePinNumbers } from "#lib/core/pinout/index.ts";
import { printPlace, readPlace, type Place } from "#lib/core/netlist/index.ts";
import type { BenchBoard } from "./bench-entry.ts";
import type { ComboOption } from "./combo-options.ts";

/** More offers than this are no help, and slow to draw on a phone. */
export const MOST_OFFERS = 40;

/**
 * Places of the board that begin as typed: rails, parts and nets first; the pins of a part once its designator stands
 * there (`U7.`). Empty typed text offers the rails and the parts.
 */
export function placeOffers(facts: BoardFacts, typed: string): ComboOption[] {
  const text = typed.trim().toUpperCase();
  const [designator = "", pin] = text.split(".");
  const pins = pinNumbers(facts, designator).map((number) => pinOffer(facts, designator, number));
  if (pin !== undefined) return pins.filter((offer) => offer.value.startsWith(text)).slice(0, MOST_OFFERS);
  const rails = facts.rails.map((rail) => offer(rail.name, "rail"));
  const parts = facts.placements.map((part) => offer(part.designator, chipName(facts, part.chip) || part.value));
  const connectors = facts.connectors.map((one) => offer(one.designator, "connector"));
  const nets = facts.nets.map((net) => offer(net.name, "net"));
  const begins = [...rails, ...parts, ...connectors, ...nets].filter((one) => one.value.toUpperCase().startsWith(text));
  const exact = begins.some((one) => one.value.toUpperCase() === text) ? pins : [];
  return unique([...begins, ...exact]).slice(0, MOST_OFFERS);
}

function offer(value: string, hint: string): ComboOption {
  return { value, label: value, ...(hint !== "" && { hint }) };
}

function unique(offers: readonly ComboOption[]): ComboOption[] {
  return [...new Map(offers.map((one) => [one.value.toUpperCase(), one])).values()];
}

function chipName(facts: BoardFacts, slug: string | null): string {
  return (slug && facts.chips[slug]?.name) || "";
}

function pinOffer(facts: BoardFacts, designator: string, number: string): ComboOption {
  const place: Place = { kind: "pin", designator, pin: number };
  const found = placeFacts(facts, place);
  return offer(
    printPlace(place),
    [found.pin?.name ?? found.connectorPin ?? "", found.net?.name ?? ""].filter(Boolean).join(", "),
  );
}

/** The pins of a part or connector in the order in which one goes along it; from the nets where there is no pin table. */
export function pinNumbers(facts: BoardFacts, designator: string): string[] {
  const found = placeFacts(facts, { kind: "part", designator });
  const connector = facts.connectors.find((one) => one.designator.toUpperCase() === designator.toUpperCase());
  const begin = `${designator.toUpperCase()}.`;
  const inNets = facts.nets
    .flatMap((net) => net.pins)
    .filter((pin) => pin.toUpperCase().startsWith(begin))
    .map((pin) => pin.slice(begin.length));
  const listed = found.chip?.pins.map((pin) => pin.number) ?? connector?.pins.map((pin) => pin.number) ?? [];
  return [...new Set(listed.length > 0 ? listed : inNets)].toSorted(comparePinNumbers);
}

/**
 * The neighbour of a place: the next or previous pin along its chip or connector, the next part of the same letters, the
 * next rail. Null at the end, and where the place cannot be read. Pins that no record lists are counted on.
 */
export function stepPlace(board: BenchBoard, at: string, by: 1 | -1): string | null {
  const place = readPlace(at, board.names);
  if (!place.ok) return null;
  switch (place.value.kind) {
    case "pin":
      return stepPin(board.facts, place.value, by);
    case "part":
      return neighbour(partsLike(board.facts, place.value.designator), place.value.designator, by);
    case "net":
      return neighbour(board.facts?.rails.map((rail) => rail.name) ?? [], place.value.net, by);
  }
}

function stepPin(
  facts: BoardFacts | null,
  { designator, pin }: { designator: string; pin: string },
  by: 1 | -1,
): string | null {
  const listed = facts ? pinNumbers(facts, designator) : [];
  if (listed.some((number) => number.toUpperCase() === pin.toUpperCase())) {
    const next = neighbour(listed, pin, by);
    return next === null ? null : printPlace({ kind: "pin", designator, pin: next });
  }
  const [, letters = "", digits] = /^(\D*)(\d+)$/.exec(pin) ?? [];
  const next = Number(digits) + by;
  return digits === undefined || next < 1 ? null : printPlace({ kind: "pin", designator, pin: `${letters}${next}` });
}

function partsLike(facts: BoardFacts | null, designator: string): string[] {
  const letters = designator.replace(/\d+$/, "").toUpperCase();
  const parts = facts?.placements.map((part) => part.designator) ?? [];
  return parts.filter((name) => name.replace(/\d+$/, "").toUpperCase() === letters).toSorted(comparePinNumbers);
}

function neighbour(list: readonly string[], now: string, by: 1 | -1): string | null {
  const index = list.findIndex((one) => one.toUpperCase() === now.toUpperCase());
  return index < 0 ? null : (list[index + by] ?? null);
}
