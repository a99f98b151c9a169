import type { Tx } from "#lib/infra/db/index.ts";
import { visibleCases } from "../cases/index.ts";
import { change, lockRecord } from "../change.ts";
import { demand, hasRole, memberId, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { CreateComment, UpdateComment, type Commented } from "./schema.ts";

export interface CommentView {
  id: string;
  /** Markdown; empty where it was taken back. */
  body: string;
  check: string | null;
  at: string;
  edited: boolean;
  takenBack: boolean;
  by: { handle: string; name: string } | null;
  version: number;
  /** Whether the one who asks may edit it or take it back. */
  mine: boolean;
}

/** For the demo: who wrote it and when. Only the program itself may say so. */
export interface Provenance {
  memberId: string;
  at: Date;
}

/** Adds a comment to a record that the actor may see. */
export async function createComment(
  ctx: Ctx,
  raw: unknown,
  provenance?: Provenance,
): Promise<{ id: string; made: boolean }> {
  const input = CreateComment.parse(raw);
  demand(ctx.actor, "member", "write");
  if (provenance && ctx.actor.kind !== "club")
    throw new ServiceError("forbidden", "Only the program says who wrote a comment.");
  const authorId = provenance?.memberId ?? memberId(ctx.actor);
  if (!authorId) throw new ServiceError("forbidden", "A comment is a member's.");
  const again = input.id
    ? await ctx.db.comment.findUnique({ where: { id: input.id }, select: { id: true, body: true } })
    : null;
  if (again) {
    if (again.body !== input.body) throw new ServiceError("conflict", "Another comment has this id.");
    return { id: again.id, made: false };
  }
  return change(ctx, "member", async (tx) => {
    await demandVisible(tx, ctx, input.kind, input.record);
    if (input.check) await demandCheck(tx, input.record, input.check);
    const at = provenance?.at ?? ctx.now();
    const made = await tx.comment.create({
      data: {
        id: input.id ?? ctx.newId(),
        recordKind: input.kind,
        recordId: input.record,
        checkId: input.check ?? null,
        authorId,
        body: input.body,
        createdAt: at,
        updatedAt: at,
      },
      select: { id: true },
    });
    return {
      value: { id: made.id, made: true },
      did: "comment.create",
      touched: [{ kind: "comment", id: made.id, version: 1, snapshot: { body: input.body } }],
    };
  });
}

/** Rewrites one's own comment. Throws `stale` where it changed meanwhile. */
export async function updateComment(ctx: Ctx, id: string, version: number, raw: unknown): Promise<{ version: number }> {
  const { body } = UpdateComment.parse(raw);
  return rewrite(ctx, id, version, "comment.update", (at) => ({ body, updatedAt: at }));
}

/** Takes a comment back: its place in the talk stays, its words go. The history keeps them for stewards. */
export async function deleteComment(ctx: Ctx, id: string, version: number): Promise<void> {
  await rewrite(ctx, id, version, "comment.delete", (at) => ({ deletedAt: at, updatedAt: at }));
}

async function rewrite(
  ctx: Ctx,
  id: string,
  version: number,
  did: string,
  data: (at: Date) => { body?: string; deletedAt?: Date; updatedAt: Date },
): Promise<{ version: number }> {
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await tx.comment.findUnique({
      where: { id },
      select: { authorId: true, body: true, deletedAt: true, version: true },
    });
    if (!found || found.deletedAt) throw notFound("comment with this id");
    const own = found.authorId !== null && found.authorId === memberId(ctx.actor);
    if (!own && !hasRole(ctx.actor, "steward"))
      throw new ServiceError("forbidden", "Only its author may change a comment.");
    await lockRecord(tx, "Comment", id, version, async () => ({ body: found.body, version: found.version }));
    const updated = await tx.comment.update({
      where: { id },
      data: { ...data(ctx.now()), version: { increment: 1 } },
      select: { version: true, body: true },
    });
    return {
      value: { version: updated.version },
      did,
      touched: [{ kind: "comment", id, version: updated.version, snapshot: { body: updated.body } }],
    };
  });
}

/** The talk under a record, oldest first. The caller has shown that the actor may see the record. */
export async function listComments(ctx: Ctx, kind: Commented, recordId: string): Promise<CommentView[]> {
  const rows = await ctx.db.comment.findMany({
    where: { recordKind: kind, recordId },
    select: {
      id: true,
      body: true,
      checkId: true,
      createdAt: true,
      updatedAt: true,
      deletedAt: true,
      version: true,
      authorId: true,
      author: { select: { handle: true, name: true } },
    },
    orderBy: [{ createdAt: "asc" }, { id: "asc" }],
  });
  const me = memberId(ctx.actor);
  return rows.map((row) => ({
    id: row.id,
    body: row.deletedAt ? "" : row.body,
    check: row.checkId,
    at: row.createdAt.toISOString(),
    edited: row.deletedAt === null && row.updatedAt > row.createdAt,
    takenBack: row.deletedAt !== null,
    by: row.author,
    version: row.version,
    mine: row.deletedAt === null && me !== null && (row.authorId === me || hasRole(ctx.actor, "steward")),
  }));
}

/** Refuses to talk about what the actor cannot see. */
export async function demandVisible(tx: Tx, ctx: Ctx, kind: Commented, id: string): Promise<void> {
  const found = await visibleRecord(tx, ctx, kind, id);
  if (!found) throw notFound(`${kind} with this id`);
}

function visibleRecord(tx: Tx, ctx: Ctx, kind: Commented, id: string): Promise<{ id: string } | null> {
  const where = { id, hiddenAt: null };
  switch (kind) {
    case "case":
      return tx.faultCase.findFirst({ where: { id, AND: [visibleCases(ctx.actor)] }, select: { id: true } });
    case "board":
      return tx.board.findFirst({ where, select: { id: true } });
    case "chip":
      return tx.chip.findFirst({ where, select: { id: true } });
    case "code":
      return tx.partCode.findFirst({ where, select: { id: true } });
  }
}

async function demandCheck(tx: Tx, caseId: string, checkId: string): Promise<void> {
  const found = await tx.check.findFirst({ where: { id: checkId, caseId }, select: { id: true } });
  if (!found) throw invalid("check", "This is not a check of this case.");
}
