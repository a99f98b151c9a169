import { demandVisible } from "../comments/index.ts";
import type { Commented } from "../comments/schema.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";
import { recordHistory, type HistoryEntry } from "./entries.ts";

export interface HistoryOfRecord {
  /** What the record is called. */
  name: string;
  href: string;
  entries: HistoryEntry[];
}

/** The history of a record that the actor may see, newest first. Throws `not-found`. */
export async function readHistory(ctx: Ctx, kind: Commented, id: string, most = 100): Promise<HistoryOfRecord> {
  await demandVisible(ctx.db, ctx, kind, id);
  const [named, entries] = await Promise.all([nameOf(ctx, kind, id), recordHistory(ctx, kind, id, most)]);
  if (!named) throw notFound(`${kind} with this id`);
  return { ...named, entries };
}

async function nameOf(ctx: Ctx, kind: Commented, id: string): Promise<{ name: string; href: string } | null> {
  const where = { id };
  switch (kind) {
    case "case": {
      const row = await ctx.db.faultCase.findUnique({ where, select: { number: true, title: true } });
      return row && { name: `Case ${row.number}: ${row.title}`, href: `/cases/${row.number}` };
    }
    case "board": {
      const row = await ctx.db.board.findUnique({ where, select: { slug: true, name: true } });
      return row && { name: row.name, href: `/boards/${row.slug}` };
    }
    case "chip": {
      const row = await ctx.db.chip.findUnique({ where, select: { slug: true, name: true } });
      return row && { name: row.name, href: `/chips/${row.slug}` };
    }
    case "code": {
      const row = await ctx.db.partCode.findUnique({ where, select: { code: true } });
      return row && { name: row.code, href: `/codes/${id}` };
    }
  }
}
