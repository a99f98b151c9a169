import type { ChipSymbol, RefusedSymbol } from "#lib/core/pinout/index.ts";
import { slugOfText } from "../slug.ts";
import { change } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { chipOfSymbol, type ImportedChip } from "./chip-of-symbol.ts";
import { decide, type Decision } from "./decide.ts";
import { knownChips, type KnownChip } from "./known-chips.ts";
import { importView, JOB, type ImportView } from "./read.ts";
import { IMPORT_LIMITS, PlanSymbolImport, type PlanLine, type SymbolPlan } from "./schema.ts";

/**
 * Reads a symbol library and says what importing it would do: the dry run. Writes no chip. A broken file is refused
 * with the line where it breaks.
 */
export async function planSymbolImport(ctx: Ctx, raw: unknown): Promise<ImportView> {
  const { fileName, bytes } = PlanSymbolImport.parse(raw);
  demand(ctx.actor, "member", "import");
  const by = memberId(ctx.actor);
  if (!by) throw new ServiceError("forbidden", "An import needs a member who answers for it.");
  if (bytes.byteLength === 0) throw invalid("file", "The file is empty.");
  if (bytes.byteLength > IMPORT_LIMITS.fileBytes) throw tooLarge();
  const library = libraryName(fileName);
  const lines = await planLines(ctx, bytes, library);
  const { hash } = await ctx.files.put(bytes);
  const plan: SymbolPlan = { library, hash, lines };
  return change(
    ctx,
    "member",
    async (tx) => {
      const row = await tx.importJob.create({
        data: {
          id: ctx.newId(),
          memberId: by,
          format: "symbols",
          fileName,
          state: "planned",
          plan,
          createdAt: ctx.now(),
        },
        select: JOB,
      });
      return { value: importView(row), did: "import.plan", touched: [], detail: { library } };
    },
    { scope: "import" },
  );
}

function tooLarge(): ServiceError {
  const most = IMPORT_LIMITS.fileBytes / 1_000_000;
  return new ServiceError("too-large", `The file is larger than ${most} MB. Split the library, or send part of it.`);
}

/** `74xx.kicad_sym` → `74xx`. */
function libraryName(fileName: string): string {
  const bare = fileName.replace(/^.*[/\\]/, "").replace(/\.[A-Za-z_0-9]{1,12}$/, "");
  const plain = bare.replace(/[^\p{L}\p{N}_.+-]+/gu, "_").slice(0, 80);
  if (plain === "") throw invalid("file", "The file's name must say which library it is, such as 74xx.kicad_sym.");
  return plain;
}

async function planLines(ctx: Ctx, bytes: Uint8Array, library: string): Promise<PlanLine[]> {
  const lines: PlanLine[] = [];
  const taken = new Set<string>();
  let left: number = IMPORT_LIMITS.pins;
  const read = await ctx.symbols.read(bytes, library, async (symbols) => {
    const fits = symbols.filter((symbol) => (left -= symbol.pins.length) >= 0);
    lines.push(...(await planBatch(ctx, fits, taken)));
    const beyond = symbols.filter((symbol) => !fits.includes(symbol));
    const why = `the parts before it have ${IMPORT_LIMITS.pins} pins already; import the rest as a file of its own`;
    lines.push(...beyond.map((symbol) => refusedLine({ name: symbol.name, reason: why, line: null })));
  });
  if (!read.ok) throw invalid("file", `Line ${read.problem.line}: ${read.problem.reason}.`);
  return [...lines, ...read.value.refused.map(refusedLine)];
}

async function planBatch(ctx: Ctx, symbols: readonly ChipSymbol[], taken: Set<string>): Promise<PlanLine[]> {
  const read = symbols.map((symbol) => ({ symbol, chip: chipOfSymbol(symbol) }));
  const chips = read.flatMap(({ chip }) => (chip.ok ? [chip.value] : []));
  const known = await knownChips(ctx.db, {
    sources: chips.map((chip) => chip.source),
    slugs: chips.flatMap((chip) => (slugOfText(chip.name) || null) ?? []),
  });
  return read.map(({ symbol, chip }) =>
    chip.ok ? planLine(chip.value, known, taken) : refusedLine({ name: symbol.name, reason: chip.problem, line: null }),
  );
}

function planLine(chip: ImportedChip, known: readonly KnownChip[], taken: Set<string>): PlanLine {
  const usual = slugOfText(chip.name) || null;
  if (usual === null) return refusedLine({ name: chip.name, reason: "the name has no letter or digit", line: null });
  const there = known.find((one) => one.source === chip.source) ?? known.find((one) => one.slug === usual) ?? null;
  const slug = there?.slug ?? freeSlug(usual, taken);
  if (there && taken.has(slug)) {
    return refusedLine({ name: chip.name, reason: `another part of this file is the record ${slug}`, line: null });
  }
  taken.add(slug);
  const decision = decide(chip, there);
  return {
    name: chip.name,
    state: decision.state,
    slug: decision.state === "refused" ? null : slug,
    version: there?.version ?? null,
    changes: changesTold(decision),
    why: "why" in decision ? decision.why : "",
    line: null,
  };
}

function changesTold(decision: Decision): string[] {
  if (decision.state !== "changed") return [];
  const { changes } = decision;
  const told = changes.slice(0, IMPORT_LIMITS.changesTold);
  return changes.length > told.length ? [...told, `and ${changes.length - told.length} more`] : told;
}

function refusedLine({ name, reason, line }: Omit<RefusedSymbol, "line"> & { line: number | null }): PlanLine {
  return { name, state: "refused", slug: null, version: null, changes: [], why: reason, line };
}

/** Two parts of a file whose names differ in signs only get addresses of their own. */
function freeSlug(usual: string, taken: ReadonlySet<string>): string {
  for (let count = 1; ; count++) {
    const slug = count === 1 ? usual : `${usual.slice(0, 74)}-${count}`;
    if (!taken.has(slug)) return slug;
  }
}
