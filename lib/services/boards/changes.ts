import { printContactLines, printNetLines } from "#lib/core/netlist/index.ts";
import { partLineOf } from "./plan-parts.ts";
import type { BoardView } from "./read.ts";

/** A field of a board's record that an edit changed; of a list, only the lines that differ. */
export interface BoardChange {
  field: string;
  before: string;
  after: string;
}

/**
 * What an edit changed, from the states of the record before and after it as the history keeps them. Empty for the
 * first state.
 */
export function boardChanges(before: unknown, after: unknown): BoardChange[] {
  if (!isState(before) || !isState(after)) return [];
  return Object.entries(FIELDS).flatMap(([field, linesOf]) => {
    const [was, is] = [linesOf(before), linesOf(after)];
    const [gone, come] = [without(was, is), without(is, was)];
    // Only the order changed, which no reader of a history looks for.
    if (gone.length === 0 && come.length === 0) return [];
    return [{ field, before: gone.join("\n"), after: come.join("\n") }];
  });
}

/** A state may be older than a field: what it lacks is empty. */
type State = Partial<BoardView>;

function isState(snapshot: unknown): snapshot is State {
  return typeof snapshot === "object" && snapshot !== null && !Array.isArray(snapshot);
}

const text = (value: string | number | null | undefined): string[] =>
  value === null || value === undefined || value === "" ? [] : String(value).split("\n");

/** The fields in the order in which they are shown, each as lines that can be compared. */
const FIELDS: Record<string, (state: State) => string[]> = {
  name: ({ name }) => text(name),
  kind: ({ kind }) => text(kind),
  maker: ({ maker }) => text(maker),
  machine: ({ machine }) => text(machine),
  year: ({ year }) => text(year),
  summary: ({ summary }) => text(summary),
  "width in mm": ({ width }) => text(width),
  "height in mm": ({ height }) => text(height),
  "highest voltage": ({ highestVoltage }) => text(highestVoltage),
  "what can hurt": ({ hazards = [] }) => hazards,
  cautions: ({ cautions = [] }) => cautions.map(({ at, text: said }) => words([at, said])),
  revisions: ({ revisions = [] }) => revisions.map(({ name, notes }) => words([name, notes])),
  rails: ({ rails = [] }) => rails.map(railText),
  parts: ({ placements = [] }) => placements.map(partLineOf),
  connectors: ({ connectors = [] }) => connectors.flatMap(connectorLines),
  nets: ({ nets = [] }) => nets.map((net) => printNetLines([net])),
  "self-test codes": ({ selfTests = [] }) =>
    selfTests.map(({ form, signal, meaning, suspects }) => words([form, `${signal}:`, meaning, suspects.join(" ")])),
  notes: ({ notes }) => text(notes),
};

function railText(rail: BoardView["rails"][number]): string {
  return words([
    rail.name,
    `${rail.nominal} V${rail.ac ? " a.c." : ""}`,
    rail.tolerancePercent === null ? "" : `±${rail.tolerancePercent} %`,
    rail.regulated ? "" : "unregulated",
    rail.source === "" ? "" : `from ${rail.source}`,
    rail.notes,
  ]);
}

function connectorLines({ designator, name, kind, pins }: BoardView["connectors"][number]): string[] {
  const contacts = pins.length === 0 ? [] : printContactLines(pins).split("\n");
  return [words([designator, name, kind]), ...contacts.map((line) => `${designator}.${line}`)];
}

function words(parts: readonly string[]): string {
  return parts.filter((part) => part !== "").join(" ");
}

/** The lines that the other list lacks, each as often as it is more there than here. */
function without(lines: readonly string[], others: readonly string[]): string[] {
  const left = new Map<string, number>();
  for (const line of others) left.set(line, (left.get(line) ?? 0) + 1);
  return lines.filter((line) => {
    const count = left.get(line) ?? 0;
    if (count > 0) left.set(line, count - 1);
    return count === 0;
  });
}
