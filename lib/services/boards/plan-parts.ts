import { z } from "zod";
import { codeKeys, codeParts, looksLikeCode, normalForm } from "#lib/core/marking/index.ts";
import { printPartLine, readPartLines, type PartLine, type PartsListProblem } from "#lib/core/netlist/index.ts";
import type { PlacementKind } from "#lib/core/shared/index.ts";
import { demand, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { readBoard, type BoardView } from "./read.ts";
import type { PlacementInput } from "./schema.ts";

export const PlanParts = z.strictObject({
  /** One part a line, spelling free. */
  text: z.string().max(300_000, "At most 300,000 characters."),
  /** Slug of the board that has a list already; left out: a new board. */
  board: z.string().max(120).optional(),
  /** Whether parts that the text does not name leave the board. */
  whole: z.boolean().default(true),
});
export type PlanParts = z.infer<typeof PlanParts>;

type Placed = BoardView["placements"][number];

/** What saving would do with one part. */
export interface PlannedPart {
  /** Of the text, from 1; null where the text does not name the part. */
  line: number | null;
  designator: string;
  kind: PlacementKind;
  value: string;
  package: string;
  socketed: boolean;
  sheet: string;
  notes: string;
  chip: { slug: string; name: string; function: string } | null;
  code: { id: string; code: string } | null;
  /** Names of chip records that all fit, where it is not clear which is meant. */
  choices: string[];
  change: "new" | "changed" | "same" | "gone";
  /** The line of the record as it is now, where it changes or goes. */
  before: string | null;
}

export interface PartsPlan {
  parts: PlannedPart[];
  problems: PartsListProblem[];
  counts: Record<PlannedPart["change"], number>;
  /** What is saved: the whole list. */
  placements: z.input<typeof PlacementInput>[];
}

/** A placement's line of the parts list. */
export function partLineOf(placed: Placed): string {
  const { chip, code, value, ...rest } = placed;
  return printPartLine({ ...rest, value: code?.code ?? (value === "" ? (chip?.name ?? "") : value) });
}

/** Reads a pasted parts list against the chip records and the board as it is. Writes nothing. */
export async function planParts(ctx: Ctx, raw: unknown): Promise<PartsPlan> {
  const { text, board, whole } = PlanParts.parse(raw);
  demand(ctx.actor, "member", "read");
  const present = board === undefined ? [] : (await readBoard(ctx, board)).placements;
  const before = new Map(present.map((placed) => [placed.designator, placed]));
  const { untouched, rest } = takeUntouched(text, present);
  const { parts, problems } = readPartLines(rest);
  const known = await knownParts(ctx, parts);
  const read = parts.map((part) => plannedPart(part, before.get(part.designator) ?? null, known, whole));
  const named = new Map<string, { planned: PlannedPart; placement: z.input<typeof PlacementInput> }>();
  for (const one of [...untouched, ...read].toSorted((a, b) => (a.planned.line ?? 0) - (b.planned.line ?? 0))) {
    const first = named.get(one.planned.designator);
    if (first) problems.push(twice(one.planned, first.planned));
    else named.set(one.planned.designator, one);
  }
  const left = present.filter((placed) => !named.has(placed.designator));
  const kept = left.map((placed) => ({ planned: asItIs(placed, null, whole ? "gone" : "same"), placed }));
  const planned = [...named.values()].map((one) => one.planned).concat(kept.map((one) => one.planned));
  return {
    parts: planned,
    problems: problems.toSorted((a, b) => a.line - b.line),
    counts: countsOf(planned),
    placements: [
      ...[...named.values()].map((one) => one.placement),
      ...(whole ? [] : kept.map((one) => inputOf(one.placed))),
    ],
  };
}

/**
 * The placements that a text stands for, to be saved. Throws `invalid` with each line that cannot be read, unless those
 * are to be left out.
 */
export async function placementsOfText(
  ctx: Ctx,
  raw: unknown,
  options: { leaveOut: boolean },
): Promise<PartsPlan["placements"]> {
  const { placements, problems } = await planParts(ctx, raw);
  if (problems.length > 0 && !options.leaveOut) {
    throw new ServiceError("invalid", "Some lines of the parts list cannot be taken as they are.", {
      problems: problems.map(({ line, message }) => ({ path: "parts", message: `Line ${line}: ${message}` })),
    });
  }
  return placements;
}

interface Planned {
  planned: PlannedPart;
  placement: z.input<typeof PlacementInput>;
}

/** Lines that stand as the record prints them mean the placement as it is; the others are read. */
function takeUntouched(text: string, present: readonly Placed[]): { untouched: Planned[]; rest: string } {
  const printed = new Map(present.map((placed) => [partLineOf(placed), placed]));
  const untouched: Planned[] = [];
  const seen = new Set<string>();
  const rest = text.split(/\r\n|[\n\r]/).map((line, index) => {
    const placed = printed.get(line.trim());
    if (!placed || seen.has(placed.designator)) return line;
    seen.add(placed.designator);
    untouched.push({ planned: asItIs(placed, index + 1, "same"), placement: inputOf(placed) });
    return "";
  });
  return { untouched, rest: rest.join("\n") };
}

function asItIs(placed: Placed, line: number | null, change: "same" | "gone"): PlannedPart {
  const { x: _x, y: _y, ...rest } = placed;
  return { ...rest, line, choices: [], change, before: change === "gone" ? partLineOf(placed) : null };
}

function inputOf(placed: Placed): z.input<typeof PlacementInput> {
  return { ...placed, chip: placed.chip?.slug ?? null, code: placed.code?.code ?? null };
}

function twice(second: PlannedPart, first: PlannedPart): PartsListProblem {
  const message = `${second.designator} already stands on line ${first.line ?? 0}. The first one is kept.`;
  return { line: second.line ?? 0, text: second.designator, message };
}

interface Found {
  chip: PlannedPart["chip"];
  code: PlannedPart["code"];
  /** The code as it is written, where its words were torn apart. */
  value: string;
  notes: string;
  choices: string[];
}

function plannedPart(part: PartLine, placed: Placed | null, known: KnownParts, whole: boolean): Planned {
  const said = whole || !placed ? part : filledUp(part, placed);
  const same = placed && said.value === valueOf(placed) && (placed.chip || placed.code);
  const found = same ? { ...said, chip: placed.chip, code: placed.code, choices: [] } : findPart(said, known);
  const kind = placed?.kind ?? (found.chip ? "chip" : said.kind);
  const value = found.chip && !found.code && found.value === found.chip.name ? "" : found.value;
  const { line, designator, socketed, sheet, x, y } = said;
  const plain = { designator, kind, package: said.package, socketed, sheet, notes: found.notes };
  const placement = { ...plain, x, y, value, chip: found.chip?.slug ?? null, code: found.code?.code ?? null };
  const after: Placed = { ...plain, x, y, value, chip: found.chip, code: found.code };
  const before = placed && !isSame(placed, after) ? partLineOf(placed) : null;
  const change = !placed ? "new" : before === null ? "same" : "changed";
  const { chip, code, choices } = found;
  return { planned: { ...plain, line, value, chip, code, choices, change, before }, placement };
}

/** In a list that only adds, what a line leaves out stays as it is. */
function filledUp(part: PartLine, placed: Placed): PartLine {
  return {
    ...part,
    value: part.value || valueOf(placed),
    package: part.package || placed.package,
    socketed: part.socketed || placed.socketed,
    sheet: part.sheet || placed.sheet,
    x: part.x ?? placed.x,
    y: part.y ?? placed.y,
    notes: part.notes || placed.notes,
  };
}

function valueOf({ code, chip, value }: Placed): string {
  return code?.code ?? (value === "" ? (chip?.name ?? "") : value);
}

function isSame(a: Placed, b: Placed): boolean {
  return partLineOf(a) === partLineOf(b) && a.chip?.slug === b.chip?.slug && a.code?.id === b.code?.id;
}

interface KnownParts {
  chips: { slug: string; name: string; function: string; normal: string; core: string }[];
  codes: {
    id: string;
    code: string;
    normal: string;
    chip: { slug: string; name: string; function: string } | null;
  }[];
}

/** Parts that carry a number of a maker; the value of a resistor is no such number. */
const NUMBERED: ReadonlySet<PlacementKind> = new Set<PlacementKind>(["chip", "transistor", "diode", "other"]);

/** More words than this beside a value are a remark, not parts of a number. */
const MOST_TORN = 4;

/**
 * The ways in which a line may have written the number, the longest first: `VQ4 0061 03` is read as the value 0061 with
 * the notes VQ4 03, because other lines have remarks there.
 */
function writings({ kind, value, notes }: PartLine): { text: string; notes: string }[] {
  if (value === "") return [];
  const plain = { text: value, notes };
  const words = notes.split(/\s+/).filter((word) => word !== "");
  if (!NUMBERED.has(kind) || words.length === 0 || words.length > MOST_TORN) return [plain];
  const torn = words.concat("").flatMap((_, before) =>
    words.concat("").flatMap((__, count) => {
      const behind = before + count;
      if (behind > words.length || behind === 0) return [];
      const text = [...words.slice(0, before), value, ...words.slice(before, behind)].join(" ");
      return [{ text, notes: words.slice(behind).join(" ") }];
    }),
  );
  return [...torn.toSorted((a, b) => b.text.length - a.text.length), plain];
}

/** Whether a text may be the number of a chip. Beside the letter of a chip any number may. */
function mayBeNumber(kind: PlacementKind, text: string): boolean {
  return NUMBERED.has(kind) ? /\d/.test(text) : looksLikeCode(text);
}

async function knownParts(ctx: Ctx, parts: readonly PartLine[]): Promise<KnownParts> {
  const texts = [
    ...new Set(
      parts.flatMap((part) =>
        writings(part)
          .map(({ text }) => text)
          .filter((text) => mayBeNumber(part.kind, text)),
      ),
    ),
  ];
  if (texts.length === 0) return { chips: [], codes: [] };
  const chip = { slug: true, name: true, function: true } as const;
  const [chips, codes] = await Promise.all([
    ctx.db.chip.findMany({
      where: { hiddenAt: null, keys: { hasSome: [...new Set(texts.flatMap((text) => codeKeys(text)))] } },
      select: chip,
      orderBy: { slug: "asc" },
    }),
    ctx.db.partCode.findMany({
      where: { hiddenAt: null, normal: { in: [...new Set(texts.map(normalForm))] } },
      select: { id: true, code: true, normal: true, chip: { select: chip } },
      orderBy: { id: "asc" },
    }),
  ]);
  return {
    codes,
    chips: chips.map((one) => ({ ...one, normal: normalForm(one.name), core: codeParts(one.name).core })),
  };
}

/** The record of a chip or of a house code that the line means, where exactly one fits. */
function findPart(part: PartLine, known: KnownParts): Found {
  for (const { text, notes } of writings(part).filter((one) => mayBeNumber(part.kind, one.text))) {
    const exact = known.chips.filter((chip) => chip.normal === normalForm(text));
    const [chip] = exact;
    if (chip && exact.length === 1) return { chip: briefChip(chip), code: null, value: text, notes, choices: [] };
    if (!NUMBERED.has(part.kind)) continue;
    const codes = known.codes.filter((code) => code.normal === normalForm(text));
    const [code] = codes;
    if (code && codes.length === 1)
      return { chip: code.chip, code: { id: code.id, code: code.code }, value: code.code, notes, choices: [] };
    const { core } = codeParts(text);
    const alike = known.chips.filter((one) => one.core === core);
    const [only] = alike;
    if (only && alike.length === 1) return { chip: briefChip(only), code: null, value: text, notes, choices: [] };
    if (alike.length > 1)
      return { chip: null, code: null, value: text, notes, choices: alike.map((one) => one.name).slice(0, 6) };
  }
  return { chip: null, code: null, value: part.value, notes: part.notes, choices: [] };
}

function briefChip({ slug, name, function: does }: KnownParts["chips"][number]): NonNullable<PlannedPart["chip"]> {
  return { slug, name, function: does };
}

function countsOf(parts: readonly PlannedPart[]): PartsPlan["counts"] {
  const counts = { new: 0, changed: 0, same: 0, gone: 0 };
  for (const part of parts) counts[part.change]++;
  return counts;
}
