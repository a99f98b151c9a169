import type { Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { invalid } from "../errors.ts";

export interface BoardLinks {
  boardId: string | null;
  revisionId: string | null;
  copyId: string | null;
}

/** Finds what a case says about its board. A copy's tag that is new makes a copy; an unknown board or revision is refused. */
export async function boardLinks(
  tx: Tx,
  ctx: Ctx,
  named: { board?: string | null | undefined; revision?: string | undefined; copy?: string | undefined },
): Promise<BoardLinks> {
  if (!named.board) return { boardId: null, revisionId: null, copyId: null };
  const board = await tx.board.findUnique({
    where: { slug: named.board },
    select: { id: true, name: true, revisions: { select: { id: true, name: true } } },
  });
  if (!board) throw invalid("board", `There is no board "${named.board}". Add it first, or leave the board out.`);
  const revision = named.revision ? board.revisions.find((one) => one.name === named.revision) : undefined;
  if (named.revision && !revision) {
    const names = board.revisions.map((one) => one.name).join(", ") || "none yet";
    throw invalid("revision", `${board.name} has no revision "${named.revision}" (known: ${names}).`);
  }
  const revisionId = revision?.id ?? null;
  return {
    boardId: board.id,
    revisionId,
    copyId: named.copy ? await copyId(tx, ctx, board.id, revisionId, named.copy) : null,
  };
}

async function copyId(tx: Tx, ctx: Ctx, boardId: string, revisionId: string | null, tag: string): Promise<string> {
  const known = await tx.boardCopy.findUnique({ where: { boardId_tag: { boardId, tag } }, select: { id: true } });
  if (known) return known.id;
  const at = ctx.now();
  const made = await tx.boardCopy.create({
    data: { id: ctx.newId(), boardId, revisionId, tag, createdAt: at, updatedAt: at },
    select: { id: true },
  });
  return made.id;
}
