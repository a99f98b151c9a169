import type { ContentsKind, PackageStyle, PinRole, PinType, Technology } from "#lib/core/shared/index.ts";
import type { Db, Prisma, Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";

const CHIP = {
  id: true,
  slug: true,
  name: true,
  function: true,
  technology: true,
  contents: true,
  contentsRef: true,
  notes: true,
  dataSheet: true,
  source: true,
  version: true,
  updatedAt: true,
  packages: {
    select: {
      name: true,
      style: true,
      pinCount: true,
      pins: {
        select: { number: true, name: true, type: true, role: true, activeLow: true, supply: true, unit: true },
        orderBy: { position: "asc" },
      },
    },
    orderBy: { position: "asc" },
  },
  codes: {
    where: { hiddenAt: null },
    select: { id: true, code: true, house: { select: { slug: true, name: true } } },
    orderBy: { code: "asc" },
  },
  placements: {
    select: {
      designator: true,
      socketed: true,
      board: { select: { slug: true, name: true, kind: true, hiddenAt: true } },
    },
    orderBy: [{ board: { name: "asc" } }, { position: "asc" }],
  },
} as const satisfies Prisma.ChipSelect;
type ChipRow = Prisma.ChipGetPayload<{ select: typeof CHIP }>;

export interface PinView {
  number: string;
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
  supply: number | null;
  unit: number;
}

/** A chip whole, as its page and the interface show it. */
export interface ChipView {
  id: string;
  slug: string;
  name: string;
  function: string;
  technology: Technology;
  contents: ContentsKind;
  contentsRef: string;
  notes: string;
  dataSheet: string;
  source: string;
  packages: { name: string; style: PackageStyle; pinCount: number; pins: PinView[] }[];
  codes: { id: string; code: string; house: { slug: string; name: string } | null }[];
  boards: { slug: string; name: string; kind: string; designators: string[] }[];
  version: number;
  updatedAt: string;
}

export async function readChip(ctx: Ctx, slug: string): Promise<ChipView> {
  const found = await ctx.db.chip.findFirst({ where: { slug, hiddenAt: null }, select: { id: true } });
  if (!found) throw notFound(`chip "${slug}"`);
  return readChipRow(ctx.db, found.id);
}

export async function readChipRow(db: Db | Tx, id: string): Promise<ChipView> {
  const { placements, packages, updatedAt, ...row } = await db.chip.findUniqueOrThrow({ where: { id }, select: CHIP });
  return {
    ...row,
    technology: row.technology as Technology,
    contents: row.contents as ContentsKind,
    packages: packages.map((one) => ({
      ...one,
      style: one.style as PackageStyle,
      pins: one.pins.map((pin) => ({ ...pin, type: pin.type as PinType, role: pin.role as PinRole })),
    })),
    boards: boardsOf(placements),
    updatedAt: updatedAt.toISOString(),
  };
}

function boardsOf(placements: ChipRow["placements"]): ChipView["boards"] {
  const boards = new Map<string, ChipView["boards"][number]>();
  for (const { designator, board } of placements) {
    if (board.hiddenAt) continue;
    const known = boards.get(board.slug);
    if (known) known.designators.push(designator);
    else boards.set(board.slug, { slug: board.slug, name: board.name, kind: board.kind, designators: [designator] });
  }
  return [...boards.values()];
}
