import { codeKeys } from "#lib/core/marking/index.ts";
import type { ChipSymbol } from "#lib/core/pinout/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import { change, isDuplicate, type Touched } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { chipOfSymbol, type ImportedChip } from "./chip-of-symbol.ts";
import { tableOf } from "./decide.ts";
import { importView, JOB, jobRow, type ImportView } from "./read.ts";
import { SymbolPlan, type PlanLine } from "./schema.ts";
import { lockPlanned, writeSlice, writeHistory, type PlannedChip, type Slice } from "./write.ts";

/**
 * Does what the dry run showed: all or nothing. Once more changes nothing. Throws `conflict` where a chip of the plan
 * changed since.
 */
export async function commitImport(ctx: Ctx, id: string): Promise<ImportView> {
  demand(ctx.actor, "member", "import");
  const row = await jobRow(ctx, id);
  if (row.state === "committed") return importView(row);
  const plan = SymbolPlan.parse(row.plan);
  const { chips, slices } = await preparedSlices(ctx, plan);
  try {
    return await change(
      ctx,
      "member",
      async (tx) => {
        const [job] = await tx.$queryRaw<{ state: string }[]>`
          select "state" from "ImportJob" where "id" = ${id}::uuid for update`;
        if (job?.state === "committed") {
          const done = await tx.importJob.findUniqueOrThrow({ where: { id }, select: JOB });
          return { value: importView(done), did: "import.commit", touched: [] };
        }
        await lockPlanned(tx, chips);
        const at = ctx.now();
        for (const slice of slices) await writeSlice(tx, slice, at, memberId(ctx.actor));
        await writeHistory(tx, ctx, chips, at);
        const done = await tx.importJob.update({
          where: { id },
          data: { state: "committed", committedAt: at },
          select: JOB,
        });
        const view = importView(done);
        const touched: Touched[] = [
          { kind: "import", id, version: 1, snapshot: { fileName: view.fileName, counts: view.counts } },
          ...chips.map((chip) => ({ kind: "chip" as const, id: chip.id })),
        ];
        return { value: view, did: "import.commit", touched, detail: { library: plan.library, ...view.counts } };
      },
      { scope: "import" },
    );
  } catch (error) {
    if (isDuplicate(error)) throw new ServiceError("conflict", MADE_MEANWHILE);
    throw error;
  }
}

const MADE_MEANWHILE =
  "A chip of this plan was recorded by someone else meanwhile. Nothing was written. Upload the file again for a fresh dry run.";

/** Reads the file again and lays out what will be written, so that the database is held for the writing alone. */
async function preparedSlices(ctx: Ctx, plan: SymbolPlan): Promise<{ chips: PlannedChip[]; slices: Slice[] }> {
  const bytes = await ctx.files.read(plan.hash);
  if (!bytes) throw new ServiceError("unavailable", "The file of this import is gone. Upload it again.");
  const wanted = new Map(
    plan.lines.filter((line) => line.state === "new" || line.state === "changed").map((line) => [line.name, line]),
  );
  const chips: PlannedChip[] = [];
  const slices: Slice[] = [];
  const read = await ctx.symbols.read(bytes, plan.library, async (symbols) => {
    const sources = symbols.flatMap((symbol) => plannedOf(symbol, wanted));
    const known = await ctx.db.chip.findMany({
      where: { slug: { in: sources.flatMap(({ line }) => (line.state === "changed" ? (line.slug ?? []) : [])) } },
      select: KNOWN,
    });
    const bySlug = new Map(known.map((one) => [one.slug, one]));
    const slice = sliceOf(ctx, sources, bySlug);
    chips.push(...slice.chips);
    slices.push(slice);
  });
  if (!read.ok)
    throw new ServiceError("unavailable", "The file of this import can no longer be read. Upload it again.");
  return { chips, slices };
}

interface Planned {
  line: PlanLine;
  chip: ImportedChip;
}

function plannedOf(symbol: ChipSymbol, wanted: ReadonlyMap<string, PlanLine>): Planned[] {
  const line = wanted.get(symbol.name);
  if (!line) return [];
  const chip = chipOfSymbol(symbol);
  return chip.ok ? [{ line, chip: chip.value }] : [];
}

const KNOWN = {
  id: true,
  slug: true,
  source: true,
  packages: { select: { id: true, name: true, position: true }, orderBy: { position: "asc" } },
} as const satisfies Prisma.ChipSelect;
type KnownRow = Prisma.ChipGetPayload<{ select: typeof KNOWN }>;

function sliceOf(ctx: Ctx, planned: readonly Planned[], known: ReadonlyMap<string, KnownRow>): Slice {
  const slice: Slice = { chips: [], made: [], followed: [], replaced: [], packages: [], pins: [] };
  for (const { line, chip } of planned) {
    const slug = line.slug ?? "";
    const there = known.get(slug);
    const id = there?.id ?? ctx.newId();
    const follows = there?.source === chip.source;
    slice.chips.push({ id, slug, version: line.version });
    const { package: table, ...words } = chip;
    if (!there) slice.made.push({ id, slug, ...words, keys: codeKeys(chip.name) });
    else if (follows) slice.followed.push({ id, function: words.function, dataSheet: words.dataSheet });
    const packageId = ctx.newId();
    const replaced = there && follows ? tableOf(there.packages, table.name) : undefined;
    if (replaced) slice.replaced.push(replaced.id);
    const position = replaced?.position ?? there?.packages.length ?? 0;
    const { pins, ...outline } = table;
    slice.packages.push({ id: packageId, chipId: id, ...outline, pinCount: pins.length, position });
    slice.pins.push(...pins.map((pin, at) => ({ id: ctx.newId(), packageId, ...pin, position: at })));
  }
  return slice;
}
