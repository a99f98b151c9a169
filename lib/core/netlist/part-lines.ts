import { readPackageName } from "../pinout/index.ts";
import type { PlacementKind } from "../shared/index.ts";
import { readPartsList, type PartsListProblem } from "./parts-list.ts";

/** What one line of a parts list says about one placement. */
export interface PartLine {
  /** Counted from 1. */
  line: number;
  designator: string;
  kind: PlacementKind;
  value: string;
  socketed: boolean;
  package: string;
  sheet: string;
  /** Millimetres from the upper left corner, component side; null where the line does not say. */
  x: number | null;
  y: number | null;
  notes: string;
}

export interface PartLines {
  parts: PartLine[];
  problems: PartsListProblem[];
}

/** A placement as it is printed: what has no place in a line (the kind) follows from the designator. */
export type PrintedPart = Omit<PartLine, "line" | "kind">;

const AT = /(?:^|\s)at\s+(-?\d+(?:\.\d+)?)\s*[,;]\s*(-?\d+(?:\.\d+)?)(?:\s*mm)?(?=\s|$)/i;
const SHEET = /(?:^|\s)sheet\s+("[^"]*"|\S+)(?=\s|$)/i;
const PACKAGE = /(?:^|\s)package\s+("[^"]*"|\S+)(?=\s|$)/i;
const NOTES = /\s\((.*)\)\s*$/;

interface Beside {
  package: string;
  sheet: string;
  at: { x: number; y: number } | null;
  notes: string;
}

/** Takes what stands beside the value out of a line: sheet, place, package, and notes in brackets at its end. */
function takeBeside(line: string): { bare: string; beside: Beside } {
  const notes = NOTES.exec(line);
  let bare = notes ? line.slice(0, notes.index) : line;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const found = pattern.exec(bare);
    if (found) bare = `${bare.slice(0, found.index)} ${bare.slice(found.index + found[0].length)}`;
    return found;
  };
  const at = take(AT);
  const sheet = unquoted(take(SHEET)?.[1] ?? "");
  const said = unquoted(take(PACKAGE)?.[1] ?? "");
  const known = said === "" ? takePackageWord(bare) : { bare, name: said };
  return {
    bare: known.bare.trimEnd(),
    beside: {
      package: known.name,
      sheet,
      at: at ? { x: Number(at[1]), y: Number(at[2]) } : null,
      notes: notes?.[1]?.trim() ?? "",
    },
  };
}

/** A package that everybody knows by its name needs no word before it; the first two words are part and value. */
function takePackageWord(line: string): { bare: string; name: string } {
  const words = [...line.matchAll(/[^\s|;]+/g)];
  const found = words.slice(2).find(([word]) => isPackageWord(word));
  if (!found) return { bare: line, name: "" };
  const [word] = found;
  return { bare: `${line.slice(0, found.index)}${line.slice(found.index + word.length)}`, name: word };
}

function isPackageWord(word: string): boolean {
  return /^[A-Za-z]{2,6}-?\d{1,3}$/.test(word) && readPackageName(word) !== null;
}

function unquoted(text: string): string {
  return text.replace(/^"(.*)"$/, "$1");
}

/**
 * Reads a parts list in which a line may also say package, sheet, place and notes: `U2 27C256 DIP-28 socketed sheet 3
 * at 40,76 (image LOW)`. All else as `readPartsList`. Never throws.
 */
export function readPartLines(text: string): PartLines {
  const lines = text.split(/\r\n|[\n\r]/).map(takeBeside);
  const { rows, problems } = readPartsList(lines.map(({ bare }) => bare).join("\n"));
  const perLine = new Map<number, number>();
  for (const { line } of rows) perLine.set(line, (perLine.get(line) ?? 0) + 1);
  const parts = rows.map(({ notes = "", ...row }): PartLine => {
    const beside = lines[row.line - 1]?.beside;
    // Several parts of one line cannot lie in one place.
    const at = perLine.get(row.line) === 1 ? beside?.at : null;
    return {
      ...row,
      package: beside?.package ?? "",
      sheet: beside?.sheet ?? "",
      x: at?.x ?? null,
      y: at?.y ?? null,
      notes: [notes, beside?.notes ?? ""].filter((one) => one !== "").join(", "),
    };
  });
  return { parts, problems };
}

/** One placement as a line that `readPartLines` takes. */
export function printPartLine(part: PrintedPart): string {
  const { designator, value, socketed, sheet, x, y, notes } = part;
  // Behind a bar a value may have several words.
  const bar = /\s/.test(value) ? "|" : "";
  const packed = isPackageWord(part.package) && value !== "" ? part.package : named("package", part.package);
  const words = [
    designator,
    bar,
    value,
    packed,
    socketed ? "socketed" : "",
    named("sheet", sheet),
    x === null || y === null ? "" : `at ${x},${y}`,
    notes === "" ? "" : `(${notes.replace(/\s+/g, " ")})`,
  ];
  return words.filter((word) => word !== "").join(" ");
}

function named(word: string, text: string): string {
  if (text === "") return "";
  return `${word} ${/\s/.test(text) ? `"${text}"` : text}`;
}
