import { z } from "zod";
import { demand, type Ctx } from "../context.ts";

/** Entries on the steward's page: some months of an ordinary club. */
const SHOWN = 200;

export const ListAudit = z.strictObject({
  /** `case.create`, or the part before the point for all of its kind. */
  action: z
    .string()
    .trim()
    .max(60)
    .regex(/^[a-z]+(\.[a-z-]+)?$/)
    .optional(),
  /** Handle. */
  member: z.string().trim().max(80).optional(),
});

export interface AuditLine {
  id: string;
  at: string;
  /** Null: the program itself, or a member who is gone. */
  by: { handle: string; name: string } | null;
  action: string;
  record: { kind: string; id: string } | null;
  /** Where the request came from; empty from the command line. */
  address: string;
  /** What else was kept of it, as name and value. */
  detail: [string, string][];
}

export interface AuditTrail {
  entries: AuditLine[];
  /** There are older ones than these. */
  more: boolean;
  /** Every action that occurs, with how often. */
  actions: { action: string; count: number }[];
}

/** What was done in the club, newest first. For stewards. */
export async function auditTrail(ctx: Ctx, raw: unknown): Promise<AuditTrail> {
  const { action, member } = ListAudit.parse(raw);
  demand(ctx.actor, "steward", "read");
  const [rows, counted] = await Promise.all([
    ctx.db.auditEntry.findMany({
      where: {
        ...(action && { action: action.includes(".") ? action : { startsWith: `${action}.` } }),
        ...(member && { member: { handle: member } }),
      },
      select: {
        id: true,
        at: true,
        action: true,
        recordKind: true,
        recordId: true,
        address: true,
        detail: true,
        member: { select: { handle: true, name: true } },
      },
      orderBy: [{ at: "desc" }, { id: "desc" }],
      take: SHOWN + 1,
    }),
    ctx.db.auditEntry.groupBy({ by: ["action"], _count: { action: true }, orderBy: { action: "asc" } }),
  ]);
  return {
    entries: rows.slice(0, SHOWN).map(({ recordKind, recordId, at, address, detail, member: by, ...row }) => ({
      ...row,
      at: at.toISOString(),
      by,
      record: recordKind && recordId ? { kind: recordKind, id: recordId } : null,
      address: address ?? "",
      detail: detailWords(detail),
    })),
    more: rows.length > SHOWN,
    actions: counted.map((one) => ({ action: one.action, count: one._count.action })),
  };
}

function detailWords(detail: unknown): [string, string][] {
  if (typeof detail !== "object" || detail === null) return [];
  return Object.entries(detail).flatMap(([name, value]): [string, string][] =>
    value === null || value === "" ? [] : [[name, String(value)]],
  );
}
