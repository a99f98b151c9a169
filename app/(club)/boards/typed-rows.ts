import { printContactLines, printNetLines } from "#lib/core/netlist/index.ts";
import { partLineOf, type BoardView } from "#lib/services/boards/index.ts";
import type { BoardFactsTyped, EditedList, Row } from "./edit-lists.ts";

/** A list of the record as the rows of its form. */
export function typedRows(board: BoardView, list: EditedList): Row[] {
  switch (list) {
    case "rails":
      return board.rails.map((rail) => ({
        name: rail.name,
        nominal: String(rail.nominal),
        tolerancePercent: rail.tolerancePercent === null ? "" : String(rail.tolerancePercent),
        ac: rail.ac ? "yes" : "no",
        regulated: rail.regulated ? "yes" : "no",
        source: rail.source,
        notes: rail.notes,
      }));
    case "connectors":
      return board.connectors.map(({ pins, ...rest }) => ({ ...rest, pins: printContactLines(pins) }));
    case "selfTests":
      return board.selfTests.map(({ suspects, ...rest }) => ({ ...rest, suspects: suspects.join(" ") }));
    case "cautions":
      return board.cautions;
    case "revisions":
      return board.revisions.map(({ name, notes }) => ({ name, notes }));
  }
}

/** A list of the record as the lines of its text. */
export function typedText(board: BoardView, list: "parts" | "nets"): string {
  return list === "nets" ? printNetLines(board.nets) : board.placements.map(partLineOf).join("\n");
}

export function typedFacts(board: BoardView): BoardFactsTyped {
  const number = (value: number | null) => (value === null ? "" : String(value));
  return {
    name: board.name,
    kind: board.kind,
    maker: board.maker,
    machine: board.machine,
    year: number(board.year),
    summary: board.summary,
    notes: board.notes,
    width: number(board.width),
    height: number(board.height),
    highestVoltage: number(board.highestVoltage),
    hazards: board.hazards,
  };
}
