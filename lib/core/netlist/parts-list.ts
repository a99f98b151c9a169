import { clean, looksLikeCode, readRef } from "../marking/index.ts";
import type { Ref } from "../marking/index.ts";
import type { PlacementKind } from "../shared/index.ts";
import { placementKindOf } from "./placement-kind.ts";

/** One placement that a line of the list names. `R1-R8 4k7` makes eight rows with one line number. */
export interface PartsListRow {
  /** Counted from 1. */
  line: number;
  designator: string;
  /** Chip or value as written; empty when the line gives none. */
  value: string;
  kind: PlacementKind;
  socketed: boolean;
  notes?: string;
}

/** A line, or a designator of it, that was not taken, and why. */
export interface PartsListProblem {
  line: number;
  text: string;
  message: string;
}

export interface PartsList {
  rows: PartsListRow[];
  problems: PartsListProblem[];
}

/** Lines and characters of a line that are read; far above any board of the period. */
const MOST_LINES = 5_000;
const LONGEST_LINE = 500;
/** Most placements of one range: a wider one is a slip of the finger. */
const LONGEST_RANGE = 200;

const HEADER = /^(?:ref(?:erence|des|s)?|designators?|parts?|place(?:ment)?s?|position|item|component|qty|quantity)\b/i;
const COMMENT = /^(?:#|\/\/|--)/;
const BULLET = /^(?:[-*•]\s+|\d{1,3}[.)]\s+)/;
const NOT_SOCKETED = /\b(?:not\s+socketed|no\s+socket|un-?socketed|soldered(?:\s+in)?|direct)\b/gi;
const SOCKETED = /\b(?:in\s+(?:a\s+)?socket|on\s+(?:a\s+)?socket|socketed|socket|skt)\b/gi;
const COLUMN = /\s*[\t;|]\s*/;
const UNIT_WORD = /^(?:[pnumkM]?(?:F|H|Hz|V|W|A|R)|[kKM]|[kM]?ohms?|uF|nF|pF|MHz|kHz|mA)$/;
const NUMBER = /^\d+(?:[.,]\d+)?$/;

interface Line {
  number: number;
  text: string;
}

/** What stands in front of the value: designators, and the rest of the line. */
interface Named {
  designators: string[];
  rest: string;
  problem?: string;
}

function readDesignator(word: string): Ref | null {
  const ref = readRef(word, { anyPrefix: true });
  return ref && ref.pin === undefined ? ref : null;
}

/** The number of a lettered designator without a section letter. */
function numberOf({ designator, prefix }: Ref): number {
  return Number(/\d+/.exec(designator.slice(prefix.length))?.[0] ?? 0);
}

function expandRange(first: Ref, last: number): string[] | string {
  const from = numberOf(first);
  const count = last - from + 1;
  if (count < 2) return `The range begins at ${first.designator} and ends before it.`;
  if (count > LONGEST_RANGE)
    return `${first.designator} to ${first.prefix}${last} is ${count} parts; at most ${LONGEST_RANGE} may stand in one line.`;
  return Array.from({ length: count }, (_, at) => `${first.prefix}${from + at}`);
}

const RANGE = /^([A-Z]{1,4}\d{1,4})\s*(?:-|\.\.|\bto\b)\s*([A-Z]{1,4})(\d{1,4})(?=$|[\s,:;|=&])/i;
const SHORT_RANGE = /^([A-Z]{1,4}\d{1,4})(?:-|\.\.)(\d{1,3})(?=$|[\s,:;|=&])/i;
const WORD = /^[A-Z0-9]{1,9}(?=$|[\s,:;|=&(/+]|-\s|->)/i;
/** Between two designators of one line; the second must be of the same kind, else it is the value. */
const BETWEEN = /^\s*(?:[,&+/]|\band\b)?\s*/i;
/** Between the designators and the value. */
const BEFORE_VALUE = /^\s*(?:->|[:=,;|]|-(?=\s))?\s*/;

/** Takes one designator or range from the front of the text. */
function takeDesignators(text: string): (Named & { ref: Ref }) | null {
  const range = RANGE.exec(text) ?? SHORT_RANGE.exec(text);
  const ref = readDesignator(range?.[1] ?? WORD.exec(text)?.[0] ?? "");
  if (!ref) return null;
  if (!range) return { ref, designators: [ref.designator], rest: text.slice(WORD.exec(text)?.[0].length) };
  const again = range[3] === undefined ? ref.prefix : (range[2] ?? "").toUpperCase();
  if (again !== ref.prefix) return { ref, designators: [ref.designator], rest: text.slice(range[1]?.length) };
  const expanded = expandRange(ref, Number(range[3] ?? range[2]));
  const rest = text.slice(range[0].length);
  return typeof expanded === "string"
    ? { ref, designators: [], rest, problem: expanded }
    : { ref, designators: expanded, rest };
}

function takeNames(text: string): Named | null {
  const first = takeDesignators(text);
  if (!first) return null;
  const named: Named = { designators: [...first.designators], rest: first.rest };
  if (first.problem !== undefined) named.problem = first.problem;
  for (;;) {
    const further = named.rest.replace(BETWEEN, "");
    const next = further === named.rest ? null : takeDesignators(further);
    if (!next || next.ref.style !== first.ref.style || next.ref.prefix !== first.ref.prefix) break;
    // A lone grid position behind another is more likely a value (10K).
    if (next.ref.style === "grid" && next.rest.trim() === "") break;
    named.designators.push(...next.designators);
    if (next.problem !== undefined) named.problem = next.problem;
    named.rest = next.rest;
  }
  return named;
}

/** `74LS244 U1`, `100n C14, C15`: the value first. Only when what stands first is no designator in common use. */
function takeNamesBehind(text: string): Named | null {
  const first = readRef(text.split(/[\s,;|]+/, 1)[0] ?? "");
  if (first && first.style === "lettered") return null;
  const at = /[\s,;|]+(?=[A-Z]{1,4}\d{1,4}[A-H]?(?:$|[\s,;|-]))/i.exec(text);
  if (!at || at.index === 0) return null;
  const named = takeNames(text.slice(at.index + at[0].length));
  if (!named || named.rest.trim() !== "" || !named.designators.every((designator) => readRef(designator))) return null;
  return { ...named, rest: ` ${text.slice(0, at.index)}` };
}

/** Socket words taken out of a text. */
function takeSocket(text: string): { text: string; socketed: boolean } {
  const without = text.replace(NOT_SOCKETED, " ");
  const bare = without.replace(SOCKETED, " ");
  return { text: bare.replace(/\(\s*[,;]?\s*\)|\[\s*\]/g, " "), socketed: bare !== without };
}

function tidy(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/^[\s,;:|=-]+(?=\s|$)|[\s,;:|=]+$/g, "")
    .trim();
}

/** Cells of a line with columns (tab, semicolon, bar, or comma right behind the designator), quotes taken off. */
function cells(rest: string): string[] | null {
  const behind = rest.trimStart();
  const comma = behind.startsWith(",");
  if (!comma && !/[\t;|]/.test(rest)) return null;
  const split = comma ? splitAtCommas(behind.slice(1)) : behind.replace(/^[\t;|]/, "").split(COLUMN);
  return split.map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, "$1")
      .trim(),
  );
}

function splitAtCommas(text: string): string[] {
  return text.match(/"[^"]*"|[^,]+|(?<=,)(?=,)/g) ?? [];
}

/** The value and what is said beside it, of a line in free words. */
function freeValue(text: string, kind: PlacementKind): { value: string; notes: string } {
  const words = text.split(" ");
  const isValue = (word: string): boolean => (kind === "chip" ? looksLikeCode(word) : /\d/.test(word));
  const at = words.findIndex((word) => isValue(word.replace(/[,;]$/, "")));
  const named = kind === "chip" || kind === "transistor" || kind === "diode";
  if (at < 0 || (at > 0 && !named) || kind === "connector" || kind === "test-point") return { value: text, notes: "" };
  const second = words[at + 1];
  const withUnit = second !== undefined && NUMBER.test(words[at] ?? "") && UNIT_WORD.test(second);
  const value = words.slice(at, at + (withUnit ? 2 : 1)).join(" ");
  return {
    value: tidy(value),
    notes: tidy([...words.slice(0, at), ...words.slice(at + (withUnit ? 2 : 1))].join(" ")),
  };
}

function columnValue(list: readonly string[], count: number): { value: string; notes: string } {
  const filled = list.map(tidy);
  // A column that only counts the designators says nothing new.
  const useful = filled.filter((cell, at) => cell !== "" && !(filled.length > 1 && cell === String(count) && at > 0));
  return { value: useful[0] ?? "", notes: useful.slice(1).join(", ") };
}

function takeNotes(text: string): { text: string; notes: string } {
  const notes: string[] = [];
  const bare = text.replace(/\(([^()]*)\)/g, (_, inside: string) => {
    notes.push(tidy(inside));
    return " ";
  });
  return { text: bare, notes: notes.filter((note) => note !== "").join(", ") };
}

function rowsOfLine(number: number, { designators, rest }: Named): PartsListRow[] {
  const kind = placementKindOf(designators[0] ?? "");
  const socket = takeSocket(rest);
  const columns = cells(socket.text);
  const bracketed = takeNotes(columns ? "" : socket.text.replace(BEFORE_VALUE, ""));
  const read = columns ? columnValue(columns, designators.length) : freeValue(tidy(bracketed.text), kind);
  const notes = [read.notes, bracketed.notes].filter((note) => note !== "").join(", ");
  return designators.map((designator) => ({
    line: number,
    designator,
    value: read.value,
    kind,
    socketed: socket.socketed,
    ...(notes !== "" && { notes }),
  }));
}

/** A line as it is read: columns kept, everything else cleaned, bullets and the quotes of the first cell taken off. */
function plainLine(text: string): string {
  const columns = text.split("\t").map(clean).join("\t");
  return columns
    .replace(BULLET, "")
    .replace(/^"([^"]*)"/, "$1")
    .trim();
}

function readLine(line: Line): { rows: PartsListRow[]; problem?: string } {
  if (line.text.length > LONGEST_LINE)
    return { rows: [], problem: `The line is longer than ${LONGEST_LINE} characters.` };
  const named = takeNamesBehind(line.text) ?? takeNames(line.text);
  if (!named) {
    return {
      rows: [],
      problem: "No designator was found. Begin the line with what is printed beside the part, for example U1 74LS244.",
    };
  }
  const rows = rowsOfLine(line.number, named);
  return named.problem === undefined ? { rows } : { rows, problem: named.problem };
}

/**
 * Reads a pasted parts list, one part or range a line, in free spelling: `U1 74LS244`, `U2 27C256 socketed`,
 * `R1-R8 4k7`, `C1, C2: 100n`, tabs, semicolons, quoted cells, a heading. Empty lines and lines that begin with `#`
 * are left out. A designator that stands twice keeps its first row and is named among the problems. Never throws.
 */
export function readPartsList(text: string): PartsList {
  const list: PartsList = { rows: [], problems: [] };
  const firstRow = new Map<string, PartsListRow>();
  const lines = text.split(/\r\n|[\n\r]/);
  for (const [at, raw] of lines.slice(0, MOST_LINES).entries()) {
    const line = { number: at + 1, text: plainLine(raw.slice(0, LONGEST_LINE * 2)) };
    if (line.text === "" || COMMENT.test(line.text) || isHeading(line.text)) continue;
    const { rows, problem } = readLine(line);
    if (problem !== undefined)
      list.problems.push({ line: line.number, text: clean(raw).slice(0, LONGEST_LINE), message: problem });
    for (const row of rows) {
      const first = firstRow.get(row.designator);
      if (first) {
        list.problems.push({
          line: row.line,
          text: clean(raw).slice(0, LONGEST_LINE),
          message: duplicateProblem(row, first),
        });
      } else {
        firstRow.set(row.designator, row);
        list.rows.push(row);
      }
    }
  }
  if (lines.length > MOST_LINES) {
    list.problems.push({ line: MOST_LINES + 1, text: "", message: `Only the first ${MOST_LINES} lines were read.` });
  }
  return list;
}

function isHeading(text: string): boolean {
  return HEADER.test(text) && takeDesignators(text) === null;
}

function duplicateProblem(row: PartsListRow, first: PartsListRow): string {
  const same =
    row.value === first.value
      ? "with the same value"
      : `as ${first.value === "" ? "a part without value" : first.value}`;
  return `${row.designator} already stands on line ${first.line} ${same}. The first one is kept.`;
}
