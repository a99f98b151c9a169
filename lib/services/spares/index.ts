import { codeKeys, normalForm } from "#lib/core/marking/index.ts";
import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import { change, lockRecord } from "../change.ts";
import { demand, hasRole, memberId, type Actor, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { ListSpares, SpareInput } from "./schema.ts";

const SPARE = {
  id: true,
  direction: true,
  quantity: true,
  condition: true,
  note: true,
  visibility: true,
  version: true,
  createdAt: true,
  memberId: true,
  member: { select: { handle: true, name: true } },
  code: { select: { id: true, code: true } },
  chip: { select: { slug: true, name: true } },
  board: { select: { slug: true, name: true } },
} as const satisfies Prisma.SpareSelect;
type SpareRow = Prisma.SpareGetPayload<{ select: typeof SPARE }>;

const LINKED = {
  id: true,
  direction: true,
  quantity: true,
  memberId: true,
  member: { select: { handle: true, name: true } },
  codeId: true,
  chipId: true,
  boardId: true,
  code: { select: { code: true, chipId: true } },
  chip: { select: { name: true } },
  board: { select: { name: true } },
} as const satisfies Prisma.SpareSelect;
type LinkedRow = Prisma.SpareGetPayload<{ select: typeof LINKED }>;

/** Spares of one answer. */
const MOST_LISTED = 500;

export type SpareView = Omit<SpareRow, "createdAt" | "memberId" | "direction" | "visibility"> & {
  direction: "offer" | "want";
  visibility: "public" | "members";
  createdAt: string;
  mine: boolean;
};

/** What may be seen: visitors see what its owner showed to everybody. */
function visibleSpares(actor: Actor): Prisma.SpareWhereInput {
  return { doneAt: null, ...(actor.kind === "visitor" && { visibility: "public" }) };
}

export async function listSpares(ctx: Ctx, raw: unknown): Promise<SpareView[]> {
  const query = ListSpares.parse(raw);
  const rows = await ctx.db.spare.findMany({
    where: { AND: [visibleSpares(ctx.actor), narrowed(query)] },
    select: SPARE,
    orderBy: [{ createdAt: "desc" }, { id: "asc" }],
    take: MOST_LISTED,
  });
  return rows.map((row) => spareView(ctx, row));
}

/** A spare that answers another one: an offer beside a want of the same code, chip or board. */
export interface Counterpart {
  id: string;
  what: string;
  quantity: number;
  member: { handle: string; name: string };
}
export type MatchedSpare = SpareView & { counterparts: Counterpart[] };

/** Offers and wants, the newest first, each with what answers it. */
export async function spareLists(ctx: Ctx, raw: unknown): Promise<{ offers: MatchedSpare[]; wants: MatchedSpare[] }> {
  const query = ListSpares.parse(raw);
  const visible = visibleSpares(ctx.actor);
  const [listed, all] = await Promise.all([
    ctx.db.spare.findMany({
      where: { AND: [visible, narrowed(query)] },
      select: SPARE,
      orderBy: [{ createdAt: "desc" }, { id: "asc" }],
      take: MOST_LISTED,
    }),
    // What answers a listed one need not be listed itself.
    ctx.db.spare.findMany({ where: visible, select: LINKED, orderBy: [{ createdAt: "asc" }, { id: "asc" }] }),
  ]);
  const linksOf = new Map(all.map((row) => [row.id, row]));
  const matched = listed.map((row) => {
    const own = linksOf.get(row.id);
    const counterparts = own ? all.filter((other) => answers(own, other)).map(counterpart) : [];
    return { ...spareView(ctx, row), counterparts };
  });
  return {
    offers: matched.filter((one) => one.direction === "offer"),
    wants: matched.filter((one) => one.direction === "want"),
  };
}

/** One spare that is still listed. Throws `not-found`. */
export async function readSpare(ctx: Ctx, id: string): Promise<SpareView> {
  const row = await ctx.db.spare.findFirst({ where: { id, AND: [visibleSpares(ctx.actor)] }, select: SPARE });
  if (!row) throw notFound("spare with this id");
  return spareView(ctx, row);
}

function narrowed(query: ListSpares): Prisma.SpareWhereInput {
  return {
    ...(query.direction && { direction: query.direction }),
    ...(query.code && { codeId: query.code }),
    ...(query.chip && { chip: { slug: query.chip } }),
    ...(query.board && { board: { slug: query.board } }),
    ...(query.member && { member: { handle: query.member } }),
    ...(query.q && { OR: named(query.q) }),
  };
}

/** By any way of writing the code, or by words. */
function named(q: string): Prisma.SpareWhereInput[] {
  const words = { contains: q, mode: "insensitive" } as const;
  const keys = { hasSome: codeKeys(q) };
  const byCode: Prisma.SpareWhereInput[] =
    normalForm(q) === "" ? [] : [{ code: { keys } }, { chip: { keys } }, { code: { chip: { keys } } }];
  return [
    ...byCode,
    { chip: { OR: [{ name: words }, { function: words }] } },
    { board: { OR: [{ name: words }, { machine: words }] } },
    { note: words },
    { condition: words },
    { member: { name: words } },
  ];
}

/** A code answers its chip, and a chip every code that carries it. One's own spares are no answer to one's own want. */
function answers(own: LinkedRow, other: LinkedRow): boolean {
  if (own.direction === other.direction || own.memberId === other.memberId) return false;
  const sameCode = own.codeId !== null && own.codeId === other.codeId;
  const chip = chipOf(own);
  const sameChip = chip !== null && chip === chipOf(other);
  return sameCode || sameChip || (own.boardId !== null && own.boardId === other.boardId);
}

function chipOf(row: LinkedRow): string | null {
  return row.chipId ?? row.code?.chipId ?? null;
}

function counterpart({ id, quantity, member, code, chip, board }: LinkedRow): Counterpart {
  return { id, quantity, member, what: code?.code ?? chip?.name ?? board?.name ?? "part" };
}

/** Offers or seeks a part or a donor board. */
export async function createSpare(
  ctx: Ctx,
  raw: unknown,
  provenance?: { memberId: string; at: Date },
): Promise<{ id: string; made: boolean }> {
  const input = SpareInput.parse(raw);
  demand(ctx.actor, "member", "write");
  if (provenance && ctx.actor.kind !== "club")
    throw new ServiceError("forbidden", "Only the program says whose a spare is.");
  const owner = provenance?.memberId ?? memberId(ctx.actor);
  if (!owner) throw new ServiceError("forbidden", "A spare is a member's.");
  const again = input.id
    ? await ctx.db.spare.findUnique({ where: { id: input.id }, select: { id: true, memberId: true } })
    : null;
  if (again) {
    if (again.memberId !== owner) throw new ServiceError("conflict", "Another spare has this id.");
    return { id: again.id, made: false };
  }
  return change(ctx, "member", async (tx) => {
    const at = provenance?.at ?? ctx.now();
    const { id, code, chip, board, ...plain } = input;
    const made = await tx.spare.create({
      data: {
        id: id ?? ctx.newId(),
        memberId: owner,
        ...plain,
        ...(await spareLinks(tx, { code, chip, board })),
        createdAt: at,
        updatedAt: at,
      },
      select: { id: true },
    });
    return {
      value: { id: made.id, made: true },
      did: "spare.create",
      touched: [{ kind: "spare", id: made.id, version: 1, snapshot: { ...plain, code, chip, board } }],
    };
  });
}

/** Rewrites one's own spare. Throws `stale` where it changed meanwhile. */
export async function updateSpare(ctx: Ctx, id: string, version: number, raw: unknown): Promise<{ version: number }> {
  const { id: _same, code, chip, board, ...plain } = SpareInput.parse(raw);
  return changeOwn(ctx, id, version, "spare.update", async (tx) => ({
    ...plain,
    ...(await spareLinks(tx, { code, chip, board })),
  }));
}

/** Gone, given or found: it leaves the lists; its history stays. */
export async function closeSpare(ctx: Ctx, id: string, version: number): Promise<void> {
  await changeOwn(ctx, id, version, "spare.close", async () => ({ doneAt: ctx.now() }));
}

async function changeOwn(
  ctx: Ctx,
  id: string,
  version: number,
  did: string,
  data: (tx: Tx) => Promise<Prisma.SpareUncheckedUpdateInput>,
): Promise<{ version: number }> {
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await tx.spare.findUnique({ where: { id }, select: { memberId: true, doneAt: true } });
    if (!found || found.doneAt) throw notFound("spare with this id");
    if (found.memberId !== memberId(ctx.actor) && !hasRole(ctx.actor, "steward")) {
      throw new ServiceError("forbidden", "Only its owner may change a spare.");
    }
    await lockRecord(tx, "Spare", id, version, async () =>
      spareView(ctx, await tx.spare.findUniqueOrThrow({ where: { id }, select: SPARE })),
    );
    const row = await tx.spare.update({
      where: { id },
      data: { ...(await data(tx)), version: { increment: 1 }, updatedAt: ctx.now() },
      select: SPARE,
    });
    const { mine: _mine, ...snapshot } = spareView(ctx, row);
    return { value: { version: row.version }, did, touched: [{ kind: "spare", id, version: row.version, snapshot }] };
  });
}

async function spareLinks(
  tx: Tx,
  named: { code: string | null; chip: string | null; board: string | null },
): Promise<{ codeId: string | null; chipId: string | null; boardId: string | null }> {
  const codes = named.code
    ? await tx.partCode.findMany({ where: { normal: normalForm(named.code) }, select: { id: true, code: true } })
    : [];
  const code = codes.find((one) => one.code.toUpperCase() === named.code?.toUpperCase()) ?? codes[0];
  if (named.code && !code)
    throw invalid("code", `There is no code "${named.code}" yet. Record it first: an unknown code is worth a page.`);
  const chip = named.chip ? await tx.chip.findUnique({ where: { slug: named.chip }, select: { id: true } }) : null;
  if (named.chip && !chip) throw invalid("chip", `There is no chip record "${named.chip}".`);
  const board = named.board ? await tx.board.findUnique({ where: { slug: named.board }, select: { id: true } }) : null;
  if (named.board && !board) throw invalid("board", `There is no board "${named.board}".`);
  return { codeId: code?.id ?? null, chipId: chip?.id ?? null, boardId: board?.id ?? null };
}

function spareView(ctx: Ctx, row: SpareRow): SpareView {
  const { memberId: owner, createdAt, ...rest } = row;
  return {
    ...rest,
    direction: row.direction as SpareView["direction"],
    visibility: row.visibility as SpareView["visibility"],
    createdAt: createdAt.toISOString(),
    mine: owner === memberId(ctx.actor),
  };
}
