import { change, isDuplicate, lockRecord } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, notFound } from "../errors.ts";
import { CopyInput } from "./schema.ts";

const COPY = {
  tag: true,
  serial: true,
  modifications: true,
  jumpers: true,
  contents: true,
  works: true,
  notes: true,
  version: true,
  owner: { select: { handle: true } },
  revision: { select: { name: true } },
} as const;

/** Adds a copy: one real board with its serial, modifications and owner. */
export async function createCopy(ctx: Ctx, raw: unknown): Promise<{ id: string; version: number }> {
  const input = CopyInput.parse(raw);
  demand(ctx.actor, "member", "write");
  try {
    return await change(ctx, "member", async (tx) => {
      const { board: slug, owner, revision, id: asked, ...plain } = input;
      const links = await copyLinks(tx, ctx, slug, revision, owner);
      const at = ctx.now();
      const made = await tx.boardCopy.create({
        data: { id: asked ?? ctx.newId(), ...plain, ...links, createdAt: at, updatedAt: at },
        select: { id: true, version: true },
      });
      return { value: made, did: "copy.create", touched: [{ kind: "copy", id: made.id, version: 1, snapshot: input }] };
    });
  } catch (error) {
    throw tagTaken(error, input.tag);
  }
}

function tagTaken(error: unknown, tag: string): unknown {
  return isDuplicate(error) ? invalid("tag", `There is a copy of this board with the tag "${tag}" already.`) : error;
}

/** Rewrites a copy's record. Throws `stale` where someone was first. */
export async function updateCopy(
  ctx: Ctx,
  id: string,
  version: number,
  raw: unknown,
): Promise<{ id: string; version: number }> {
  const { id: _same, ...input } = CopyInput.parse(raw);
  demand(ctx.actor, "member", "write");
  try {
    return await change(ctx, "member", async (tx) => {
      await lockRecord(tx, "BoardCopy", id, version, () => tx.boardCopy.findUnique({ where: { id }, select: COPY }));
      const { board: slug, owner, revision, ...plain } = input;
      const links = await copyLinks(tx, ctx, slug, revision, owner);
      const updated = await tx.boardCopy.update({
        where: { id },
        data: { ...plain, ...links, version: { increment: 1 }, updatedAt: ctx.now() },
        select: { id: true, version: true },
      });
      return {
        value: updated,
        did: "copy.update",
        touched: [{ kind: "copy", id, version: updated.version, snapshot: input }],
      };
    });
  } catch (error) {
    throw tagTaken(error, input.tag);
  }
}

async function copyLinks(
  tx: Parameters<Parameters<typeof change>[2]>[0],
  ctx: Ctx,
  slug: string,
  revision: string,
  owner: string | null | undefined,
): Promise<{ boardId: string; revisionId: string | null; ownerId: string | null }> {
  const board = await tx.board.findUnique({
    where: { slug },
    select: { id: true, revisions: { where: { name: revision }, select: { id: true } } },
  });
  if (!board) throw notFound(`board "${slug}"`);
  if (revision !== "" && !board.revisions[0]) throw invalid("revision", `This board has no revision "${revision}".`);
  if (owner === undefined)
    return { boardId: board.id, revisionId: board.revisions[0]?.id ?? null, ownerId: memberId(ctx.actor) };
  const found = owner === null ? null : await tx.member.findUnique({ where: { handle: owner }, select: { id: true } });
  if (owner !== null && !found) throw invalid("owner", `There is no member "${owner}".`);
  return { boardId: board.id, revisionId: board.revisions[0]?.id ?? null, ownerId: found?.id ?? null };
}
