import type { BoardKind } from "#lib/core/shared/vocabulary.ts";
import type { Ctx } from "../context.ts";
import { visibleCases } from "../visible-cases.ts";
import { ListBoards } from "./schema.ts";

export interface BoardLine {
  slug: string;
  name: string;
  kind: BoardKind;
  maker: string;
  machine: string;
  year: number | null;
  summary: string;
  cases: number;
  cured: number;
  placements: number;
  copies: number;
}

/** Boards by name. */
export async function listBoards(ctx: Ctx, raw: unknown): Promise<{ boards: BoardLine[]; next: string | null }> {
  const query = ListBoards.parse(raw);
  const contains = query.q ? ({ contains: query.q, mode: "insensitive" } as const) : null;
  const after = query.cursor
    ? await ctx.db.board.findUnique({ where: { slug: query.cursor }, select: { id: true } })
    : null;
  const rows = await ctx.db.board.findMany({
    where: {
      hiddenAt: null,
      ...(query.kind && { kind: query.kind }),
      ...(contains && { OR: [{ name: contains }, { maker: contains }, { machine: contains }] }),
    },
    select: {
      id: true,
      slug: true,
      name: true,
      kind: true,
      maker: true,
      machine: true,
      year: true,
      summary: true,
      _count: { select: { cases: { where: visibleCases(ctx.actor) }, placements: true, copies: true } },
    },
    orderBy: [{ name: "asc" }, { id: "asc" }],
    take: query.limit + 1,
    ...(after && { cursor: { id: after.id }, skip: 1 }),
  });
  const page = rows.slice(0, query.limit);
  const cured = await ctx.db.faultCase.groupBy({
    by: ["boardId"],
    where: { boardId: { in: page.map((row) => row.id) }, outcome: "cured", AND: [visibleCases(ctx.actor)] },
    _count: true,
  });
  const curedOf = new Map(cured.map((row) => [row.boardId, row._count]));
  const boards = page.map(({ id, _count, kind, ...row }) => ({
    ...row,
    kind: kind as BoardKind,
    cases: _count.cases,
    cured: curedOf.get(id) ?? 0,
    placements: _count.placements,
    copies: _count.copies,
  }));
  return { boards, next: rows.length > query.limit ? (boards.at(-1)?.slug ?? null) : null };
}
