import type { Prisma } from "#lib/infra/db/index.ts";
import { change, isDuplicate, lockRecord } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { slugOfName } from "../slug.ts";
import { writtenBy, type Provenance } from "./provenance.ts";
import { CreateHouse, UpdateHouse } from "./schema.ts";

export interface HouseView {
  id: string;
  slug: string;
  name: string;
  notes: string;
  version: number;
  codes: number;
}

export interface SavedHouse {
  id: string;
  slug: string;
  version: number;
  /** False where the same house was there already: the request came twice. */
  made: boolean;
}

const HOUSE = { id: true, slug: true, name: true, notes: true, version: true } as const;
const COUNTED = {
  ...HOUSE,
  _count: { select: { codes: { where: { hiddenAt: null } } } },
} as const satisfies Prisma.HouseSelect;

/** All houses by name, each with how many codes it prints. */
export async function listHouses(ctx: Ctx): Promise<HouseView[]> {
  const rows = await ctx.db.house.findMany({
    select: COUNTED,
    orderBy: { name: "asc" },
  });
  return rows.map(houseView);
}

function houseView({ _count, ...house }: Prisma.HouseGetPayload<{ select: typeof COUNTED }>): HouseView {
  return { ...house, codes: _count.codes };
}

export async function readHouse(ctx: Ctx, slug: string): Promise<HouseView> {
  const row = await ctx.db.house.findUnique({ where: { slug }, select: COUNTED });
  if (!row) throw notFound(`house "${slug}"`);
  return houseView(row);
}

/** Adds a house: a maker that prints codes of its own. */
export async function createHouse(ctx: Ctx, raw: unknown, provenance?: Provenance): Promise<SavedHouse> {
  const { id: asked, slug: askedSlug, ...plain } = CreateHouse.parse(raw);
  demand(ctx.actor, "member", "write");
  const { at } = writtenBy(ctx, provenance);
  const slug = askedSlug ?? slugOfName(plain.name);
  const again = asked ? await ctx.db.house.findUnique({ where: { id: asked }, select: HOUSE }) : null;
  if (again) {
    if (again.name !== plain.name) throw new ServiceError("conflict", "Another house has this id.");
    return { id: again.id, slug: again.slug, version: again.version, made: false };
  }
  const id = asked ?? ctx.newId();
  try {
    return await change(ctx, "member", async (tx) => {
      const snapshot = await tx.house.create({
        data: { id, slug, ...plain, createdAt: at, updatedAt: at },
        select: HOUSE,
      });
      return {
        value: { id, slug, version: 1, made: true },
        did: "house.create",
        touched: [{ kind: "house", id, version: 1, snapshot }],
      };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("slug", `There is a house at the address "${slug}" already.`);
    throw error;
  }
}

/** Changes a house. Throws `stale` where someone was first. */
export async function updateHouse(ctx: Ctx, slug: string, version: number, raw: unknown): Promise<SavedHouse> {
  const input = UpdateHouse.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await tx.house.findUnique({ where: { slug }, select: HOUSE });
    if (!found) throw notFound(`house "${slug}"`);
    await lockRecord(tx, "House", found.id, version, () =>
      tx.house.findUnique({ where: { id: found.id }, select: HOUSE }),
    );
    const snapshot = await tx.house.update({
      where: { id: found.id },
      data: {
        ...(input.name !== undefined && { name: input.name }),
        ...(input.notes !== undefined && { notes: input.notes }),
        version: { increment: 1 },
        updatedAt: ctx.now(),
      },
      select: HOUSE,
    });
    const codes = await tx.partCode.findMany({ where: { houseId: found.id }, select: { id: true } });
    return {
      value: { id: found.id, slug, version: snapshot.version, made: false },
      did: "house.update",
      touched: [
        { kind: "house", id: found.id, version: snapshot.version, snapshot },
        // The house's name is part of what its codes are found by.
        ...codes.map((code) => ({ kind: "code" as const, id: code.id })),
      ],
    };
  });
}
