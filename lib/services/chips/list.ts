import { codeKeys, normalForm } from "#lib/core/marking/index.ts";
import type { Technology } from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { ListChips } from "./schema.ts";

const LINE = {
  id: true,
  slug: true,
  name: true,
  function: true,
  technology: true,
  contents: true,
  packages: { select: { name: true }, orderBy: { position: "asc" } },
  placements: { select: { boardId: true }, where: { board: { hiddenAt: null } } },
  _count: { select: { codes: { where: { hiddenAt: null } } } },
} as const satisfies Prisma.ChipSelect;
type LineRow = Prisma.ChipGetPayload<{ select: typeof LINE }>;

/** A chip as one line of a list. */
export interface ChipLine {
  id: string;
  slug: string;
  name: string;
  function: string;
  technology: Technology;
  contents: string;
  /** Names: `DIP-20`. */
  packages: string[];
  codes: number;
  boards: number;
}

/** Chips by name. `total` counts all that fit; `next` is the cursor of the next page. */
export async function listChips(
  ctx: Ctx,
  raw: unknown,
): Promise<{ chips: ChipLine[]; total: number; next: string | null }> {
  const query = ListChips.parse(raw);
  const where = narrowed(query);
  const [rows, total] = await Promise.all([
    ctx.db.chip.findMany({
      where,
      select: LINE,
      orderBy: [{ name: "asc" }, { id: "asc" }],
      take: query.limit + 1,
      ...(query.cursor && { cursor: { id: query.cursor }, skip: 1 }),
    }),
    ctx.db.chip.count({ where }),
  ]);
  const page = rows.slice(0, query.limit);
  return { chips: page.map(chipLine), total, next: rows.length > query.limit ? (page.at(-1)?.id ?? null) : null };
}

function narrowed(query: ListChips): Prisma.ChipWhereInput {
  return {
    hiddenAt: null,
    ...(query.technology && { technology: query.technology }),
    ...(query.contents && { contents: query.contents }),
    ...(query.q !== "" && { OR: written(query.q) }),
  };
}

/** By any way of writing its number, by part of its name, or by what it does. */
function written(q: string): Prisma.ChipWhereInput[] {
  return [
    { name: { contains: q, mode: "insensitive" } },
    { function: { contains: q, mode: "insensitive" } },
    ...(normalForm(q) === "" ? [] : [{ keys: { hasSome: codeKeys(q) } }]),
  ];
}

function chipLine({ _count, packages, placements, ...row }: LineRow): ChipLine {
  return {
    ...row,
    technology: row.technology as Technology,
    packages: packages.map((one) => one.name),
    codes: _count.codes,
    boards: new Set(placements.map((one) => one.boardId)).size,
  };
}
