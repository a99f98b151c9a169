import type { RecordKind } from "../change.ts";
import type { Ctx } from "../context.ts";

export interface HistoryEntry {
  id: string;
  kind: RecordKind;
  recordId: string;
  version: number;
  did: string;
  at: string;
  by: { handle: string; name: string } | null;
  snapshot: unknown;
  /** The state before, where there is one: what a page compares with. */
  before: unknown;
}

/** A page of a record's history, newest first. The caller has shown that the actor may see the record. */
export async function recordHistory(ctx: Ctx, kind: RecordKind, recordId: string, most = 100): Promise<HistoryEntry[]> {
  const related = kind === "case" ? await partsOfCase(ctx, recordId) : [];
  const rows = await ctx.db.recordRevision.findMany({
    where: { OR: [{ recordKind: kind, recordId }, ...related] },
    select: {
      id: true,
      recordKind: true,
      recordId: true,
      version: true,
      did: true,
      at: true,
      snapshot: true,
      member: { select: { handle: true, name: true } },
    },
    orderBy: [{ at: "desc" }, { id: "desc" }],
    take: most,
  });
  return rows.map((row, index) => ({
    id: row.id,
    kind: row.recordKind as RecordKind,
    recordId: row.recordId,
    version: row.version,
    did: row.did,
    at: row.at.toISOString(),
    by: row.member,
    snapshot: row.snapshot,
    before: rows.slice(index + 1).find((older) => older.recordId === row.recordId)?.snapshot ?? null,
  }));
}

/** A case's checks and causes keep histories of their own; those that are still there belong on its page. */
async function partsOfCase(ctx: Ctx, caseId: string): Promise<{ recordKind: string; recordId: { in: string[] } }[]> {
  const [checks, causes] = await Promise.all([
    ctx.db.check.findMany({ where: { caseId }, select: { id: true } }),
    ctx.db.cause.findMany({ where: { caseId }, select: { id: true } }),
  ]);
  return [
    { recordKind: "check", recordId: { in: checks.map((one) => one.id) } },
    { recordKind: "cause", recordId: { in: causes.map((one) => one.id) } },
  ];
}
