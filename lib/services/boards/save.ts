import type { Tx } from "#lib/infra/db/index.ts";
import { change, isDuplicate, lockRecord, type Touched } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { slugOfName } from "../slug.ts";
import { readBoardRow, type BoardView } from "./read.ts";
import { CreateBoard, UpdateBoard } from "./schema.ts";
import { writeParts } from "./write-parts.ts";

export interface SavedBoard {
  id: string;
  slug: string;
  version: number;
  /** False where the same board was there already: the request came twice. */
  made: boolean;
}

/** Adds a board with all its lists: all or nothing. */
export async function createBoard(ctx: Ctx, raw: unknown): Promise<SavedBoard> {
  const input = CreateBoard.parse(raw);
  demand(ctx.actor, "member", "write");
  const { id: asked, slug: askedSlug, ...fields } = input;
  const slug = askedSlug ?? slugOfName(input.name);
  const again = asked
    ? await ctx.db.board.findUnique({
        where: { id: asked },
        select: { id: true, slug: true, version: true, name: true },
      })
    : null;
  if (again) {
    if (again.name !== input.name) throw new ServiceError("conflict", "Another board has this id.");
    return { id: again.id, slug: again.slug, version: again.version, made: false };
  }
  const id = asked ?? ctx.newId();
  try {
    return await change(ctx, "member", async (tx) => {
      const at = ctx.now();
      const { revisions, rails, connectors, placements, nets, selfTests, cautions, ...plain } = fields;
      await tx.board.create({
        data: { id, slug, ...plain, createdById: memberId(ctx.actor), createdAt: at, updatedAt: at },
        select: { id: true },
      });
      await writeParts(tx, ctx, id, { revisions, rails, connectors, placements, nets, selfTests, cautions });
      return {
        value: { id, slug, version: 1, made: true },
        did: "board.create",
        touched: [await touchedBoard(tx, id)],
      };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("slug", `There is a board at the address "${slug}" already.`);
    throw error;
  }
}

/** Changes a board; lists that are given replace the whole list. Throws `stale` where someone was first. */
export async function updateBoard(ctx: Ctx, slug: string, version: number, raw: unknown): Promise<SavedBoard> {
  const input = UpdateBoard.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await tx.board.findUnique({ where: { slug }, select: { id: true } });
    if (!found) throw notFound(`board "${slug}"`);
    await lockRecord(tx, "Board", found.id, version, () => readBoardRow(tx, found.id));
    const {
      revisions: _r,
      rails: _l,
      connectors: _c,
      placements: _p,
      nets: _n,
      selfTests: _s,
      cautions: _a,
      ...plain
    } = input;
    const updated = await tx.board.update({
      where: { id: found.id },
      data: {
        ...Object.fromEntries(Object.entries(plain).filter(([, value]) => value !== undefined)),
        version: { increment: 1 },
        updatedAt: ctx.now(),
      },
      select: { version: true },
    });
    await writeParts(tx, ctx, found.id, input);
    return {
      value: { id: found.id, slug, version: updated.version, made: false },
      did: "board.update",
      touched: [await touchedBoard(tx, found.id)],
    };
  });
}

async function touchedBoard(tx: Tx, id: string): Promise<Touched> {
  const snapshot: BoardView = await readBoardRow(tx, id);
  return { kind: "board", id, version: snapshot.version, snapshot };
}
