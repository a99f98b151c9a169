import type { BoardKind, Hazard, NetRole, PlacementKind } from "#lib/core/shared/index.ts";
import type { Db, Prisma, Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";

const inOrder = { orderBy: { position: "asc" } } as const;
const PERSON = { select: { handle: true, name: true } } as const;

const BOARD = {
  id: true,
  slug: true,
  name: true,
  kind: true,
  maker: true,
  machine: true,
  year: true,
  summary: true,
  notes: true,
  width: true,
  height: true,
  hazards: true,
  highestVoltage: true,
  version: true,
  updatedAt: true,
  revisions: { select: { id: true, name: true, notes: true }, ...inOrder },
  rails: {
    select: { name: true, nominal: true, ac: true, tolerancePercent: true, regulated: true, source: true, notes: true },
    ...inOrder,
  },
  connectors: {
    select: { designator: true, name: true, kind: true, pins: { select: { number: true, name: true }, ...inOrder } },
    ...inOrder,
  },
  placements: {
    select: {
      designator: true,
      kind: true,
      value: true,
      package: true,
      socketed: true,
      sheet: true,
      x: true,
      y: true,
      notes: true,
      chip: { select: { slug: true, name: true, function: true } },
      code: { select: { id: true, code: true } },
    },
    ...inOrder,
  },
  nets: { select: { name: true, role: true, pins: { select: { designator: true, pin: true } } }, ...inOrder },
  selfTests: { select: { form: true, signal: true, meaning: true, suspects: true }, ...inOrder },
  cautions: { select: { at: true, text: true }, ...inOrder },
  copies: {
    select: {
      id: true,
      tag: true,
      serial: true,
      modifications: true,
      jumpers: true,
      contents: true,
      works: true,
      notes: true,
      version: true,
      owner: PERSON,
      revision: { select: { name: true } },
    },
    orderBy: { tag: "asc" },
  },
  documents: {
    select: {
      id: true,
      title: true,
      kind: true,
      sheets: true,
      rights: true,
      attachment: { select: { id: true, name: true, mediaType: true, byteSize: true } },
    },
    orderBy: { createdAt: "asc" },
  },
} as const satisfies Prisma.BoardSelect;
type BoardRow = Prisma.BoardGetPayload<{ select: typeof BOARD }>;

/** A board whole, as its page and the interface show it. */
export type BoardView = Omit<BoardRow, "kind" | "hazards" | "placements" | "nets" | "updatedAt"> & {
  kind: BoardKind;
  hazards: Hazard[];
  placements: (Omit<BoardRow["placements"][number], "kind"> & { kind: PlacementKind })[];
  nets: { name: string; role: NetRole; pins: string[] }[];
  updatedAt: string;
};

export async function readBoard(ctx: Ctx, slug: string): Promise<BoardView> {
  const found = await ctx.db.board.findFirst({ where: { slug, hiddenAt: null }, select: { id: true } });
  if (!found) throw notFound(`board "${slug}"`);
  return readBoardRow(ctx.db, found.id);
}

export async function readBoardRow(db: Db | Tx, id: string): Promise<BoardView> {
  const row = await db.board.findUniqueOrThrow({ where: { id }, select: BOARD });
  return {
    ...row,
    kind: row.kind as BoardKind,
    hazards: row.hazards as Hazard[],
    placements: row.placements.map((one) => ({ ...one, kind: one.kind as PlacementKind })),
    nets: row.nets.map((net) => ({
      name: net.name,
      role: net.role as NetRole,
      pins: net.pins.map((pin) => `${pin.designator}.${pin.pin}`),
    })),
    updatedAt: row.updatedAt.toISOString(),
  };
}
