import type { Prisma } from "#lib/infra/db/index.ts";
import { demand, hasRole, isMember, type Ctx } from "../context.ts";
import { notFound } from "../errors.ts";
import { SymbolPlan, type ImportLineState, type PlanLine } from "./schema.ts";

export const JOB = {
  id: true,
  format: true,
  fileName: true,
  state: true,
  plan: true,
  createdAt: true,
  committedAt: true,
  member: { select: { handle: true, name: true } },
} as const satisfies Prisma.ImportJobSelect;
export type JobRow = Prisma.ImportJobGetPayload<{ select: typeof JOB }>;

/** A dry run, and what became of it. */
export interface ImportView {
  id: string;
  format: string;
  fileName: string;
  library: string;
  state: "planned" | "committed";
  by: { handle: string; name: string };
  createdAt: string;
  committedAt: string | null;
  counts: Record<ImportLineState, number>;
  symbols: {
    name: string;
    state: ImportLineState;
    /** Address of the chip record; null where there is none and will be none. */
    chip: string | null;
    changes: string[];
    why: string;
    /** Line of the file, for a symbol that could not be read. */
    line: number | null;
  }[];
}

export type ImportLine = Omit<ImportView, "symbols">;

/** The imports that an actor may see: one's own, for stewards all. */
function visibleJobs(ctx: Ctx): Prisma.ImportJobWhereInput {
  if (hasRole(ctx.actor, "steward")) return {};
  return { memberId: isMember(ctx.actor) ? ctx.actor.id : "00000000-0000-0000-0000-000000000000" };
}

export async function jobRow(ctx: Ctx, id: string): Promise<JobRow> {
  const row = UUID.test(id)
    ? await ctx.db.importJob.findFirst({ where: { id, ...visibleJobs(ctx) }, select: JOB })
    : null;
  if (!row) throw notFound("import with this id");
  return row;
}
const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

export async function readImport(ctx: Ctx, id: string): Promise<ImportView> {
  demand(ctx.actor, "member", "read");
  return importView(await jobRow(ctx, id));
}

/** The last imports, newest first. */
export async function listImports(ctx: Ctx): Promise<ImportLine[]> {
  demand(ctx.actor, "member", "read");
  const rows = await ctx.db.importJob.findMany({
    where: visibleJobs(ctx),
    select: JOB,
    orderBy: [{ createdAt: "desc" }, { id: "desc" }],
    take: IMPORTS_LISTED,
  });
  return rows.map((row) => {
    const { symbols: _symbols, ...line } = importView(row);
    return line;
  });
}
/** Each row carries its whole plan, so the list is short. */
const IMPORTS_LISTED = 10;

export function importView(row: JobRow): ImportView {
  const { library, lines } = SymbolPlan.parse(row.plan);
  return {
    id: row.id,
    format: row.format,
    fileName: row.fileName,
    library,
    state: row.state === "committed" ? "committed" : "planned",
    by: row.member,
    createdAt: row.createdAt.toISOString(),
    committedAt: row.committedAt?.toISOString() ?? null,
    counts: countsOf(lines),
    symbols: lines.map(({ slug, version: _version, ...line }) => ({ ...line, chip: slug })),
  };
}

function countsOf(lines: readonly PlanLine[]): Record<ImportLineState, number> {
  const counts: Record<ImportLineState, number> = { new: 0, changed: 0, same: 0, refused: 0 };
  for (const line of lines) counts[line.state]++;
  return counts;
}
