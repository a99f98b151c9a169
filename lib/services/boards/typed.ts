import { z } from "zod";
import { readRail } from "#lib/core/marking/index.ts";
import { readContactLines, readNetLines } from "#lib/core/netlist/index.ts";
import { ServiceError, type FieldProblem } from "../errors.ts";

/** Lists of a board that are typed row by row. */
export const TYPED_LISTS = ["rails", "connectors", "selfTests", "cautions", "revisions"] as const;
export type TypedList = (typeof TYPED_LISTS)[number];

const Rows = z.array(z.record(z.string(), z.string())).max(400);
type Row = Record<string, string>;

/**
 * Rows as they are typed into a form, as a board's schema takes them. Throws `invalid`, naming the row and field of
 * everything that cannot be read.
 */
export function listOfTyped(list: TypedList, raw: unknown): Record<string, unknown> {
  const rows = Rows.parse(raw);
  const problems: FieldProblem[] = [];
  const read = rows.map((row, index) =>
    READERS[list](row, (field, message) => problems.push({ path: `${list}.${index}.${field}`, message })),
  );
  if (problems.length > 0) throw new ServiceError("invalid", "Some rows cannot be read.", { problems });
  return { [list]: read };
}

/** Nets as lines of a text. Throws `invalid`, naming each line that cannot be read. */
export function netsOfText(text: string): { name: string; role: string; pins: string[] }[] {
  const { nets, problems } = readNetLines(text);
  if (problems.length > 0) {
    throw new ServiceError("invalid", "Some lines cannot be read.", {
      problems: problems.map(({ line, message }) => ({ path: "nets", message: `Line ${line}: ${message}` })),
    });
  }
  return nets.map(({ name, role, pins }) => ({ name, role, pins }));
}

type Complain = (field: string, message: string) => void;

const READERS: Record<TypedList, (row: Row, complain: Complain) => Record<string, unknown>> = {
  rails: (row, complain) => ({
    name: text(row, "name"),
    nominal: nominalOf(row, complain),
    ac: row.ac === "yes",
    tolerancePercent: toleranceOf(row, complain),
    regulated: row.regulated !== "no",
    source: text(row, "source").toUpperCase(),
    notes: text(row, "notes"),
  }),
  connectors: (row, complain) => {
    const { contacts, problems } = readContactLines(row.pins ?? "");
    for (const { line, message } of problems) complain("pins", `Line ${line}: ${message}`);
    return {
      designator: text(row, "designator").toUpperCase(),
      name: text(row, "name"),
      kind: text(row, "kind"),
      pins: contacts,
    };
  },
  selfTests: (row) => ({
    form: text(row, "form"),
    signal: text(row, "signal"),
    meaning: text(row, "meaning"),
    suspects: text(row, "suspects")
      .split(/[\s,;]+/)
      .filter((one) => one !== ""),
  }),
  cautions: (row) => ({ at: text(row, "at"), text: text(row, "text") }),
  revisions: (row) => ({ name: text(row, "name"), notes: text(row, "notes") }),
};

function text(row: Row, field: string): string {
  return (row[field] ?? "").trim();
}

/** Volts as typed; where nothing is typed, as the rail's name says. */
function nominalOf(row: Row, complain: Complain): number {
  const typed = text(row, "nominal");
  const named = typed === "" ? readRail(text(row, "name")) : null;
  if (named && named.sign !== "±") return Number(named.volts) * (named.sign === "-" ? -1 : 1);
  const volts = numberOf(typed.replace(/\s*v(?:olts?)?(?:\s*(?:[ad]\.?c\.?|rms))?$/i, ""));
  if (volts === null) complain("nominal", "How many volts? Write a number such as 5 or -12; one rail for each sign.");
  return volts ?? 0;
}

function toleranceOf(row: Row, complain: Complain): number | null {
  const typed = text(row, "tolerancePercent").replace(/^(?:±|\+\/?-)\s*/, "");
  if (typed === "") return null;
  const percent = numberOf(typed.replace(/\s*%$/, ""));
  if (percent === null) complain("tolerancePercent", "How many percent? Write a number such as 5, or leave it out.");
  return percent;
}

function numberOf(typed: string): number | null {
  const plain = typed.replace(/[−–]/g, "-").replace(",", ".").replace(/\s/g, "");
  return /^[+-]?\d+(?:\.\d+)?$/.test(plain) ? Number(plain) : null;
}
