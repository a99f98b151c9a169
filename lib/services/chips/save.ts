import { codeKeys } from "#lib/core/marking/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import { change, isDuplicate, lockRecord, type Touched } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { slugOfName } from "../slug.ts";
import { readChipRow } from "./read.ts";
import { CreateChip, UpdateChip, type PackageInput } from "./schema.ts";

export interface SavedChip {
  id: string;
  slug: string;
  version: number;
  made: boolean;
}

/** Adds a chip with its pin tables: all or nothing. */
export async function createChip(ctx: Ctx, raw: unknown): Promise<SavedChip> {
  const { id: asked, slug: askedSlug, ...input } = CreateChip.parse(raw);
  demand(ctx.actor, "member", "write");
  const slug = askedSlug ?? slugOfName(input.name);
  const again = asked
    ? await ctx.db.chip.findUnique({
        where: { id: asked },
        select: { id: true, slug: true, version: true, name: true },
      })
    : null;
  if (again) {
    if (again.name !== input.name) throw new ServiceError("conflict", "Another chip has this id.");
    return { id: again.id, slug: again.slug, version: again.version, made: false };
  }
  const id = asked ?? ctx.newId();
  try {
    return await change(ctx, "member", async (tx) => {
      const at = ctx.now();
      const { packages, ...plain } = input;
      await tx.chip.create({
        data: {
          id,
          slug,
          ...plain,
          keys: codeKeys(input.name),
          createdById: memberId(ctx.actor),
          createdAt: at,
          updatedAt: at,
        },
        select: { id: true },
      });
      await writePackages(tx, ctx, id, packages);
      return { value: { id, slug, version: 1, made: true }, did: "chip.create", touched: [await touchedChip(tx, id)] };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("slug", `There is a chip at the address "${slug}" already.`);
    throw error;
  }
}

/** Changes a chip; packages that are given replace them all. Throws `stale` where someone was first. */
export async function updateChip(ctx: Ctx, slug: string, version: number, raw: unknown): Promise<SavedChip> {
  const { packages, ...input } = UpdateChip.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await tx.chip.findUnique({ where: { slug }, select: { id: true } });
    if (!found) throw notFound(`chip "${slug}"`);
    await lockRecord(tx, "Chip", found.id, version, () => readChipRow(tx, found.id));
    const updated = await tx.chip.update({
      where: { id: found.id },
      data: {
        ...Object.fromEntries(Object.entries(input).filter(([, value]) => value !== undefined)),
        ...(input.name && { keys: codeKeys(input.name) }),
        version: { increment: 1 },
        updatedAt: ctx.now(),
      },
      select: { version: true },
    });
    if (packages) await writePackages(tx, ctx, found.id, packages);
    return {
      value: { id: found.id, slug, version: updated.version, made: false },
      did: "chip.update",
      touched: [await touchedChip(tx, found.id)],
    };
  });
}

/** Replaces all packages and pin tables of a chip. */
export async function writePackages(
  tx: Tx,
  ctx: Ctx,
  chipId: string,
  packages: readonly PackageInput[],
): Promise<void> {
  refuseTwice(packages);
  await tx.chipPackage.deleteMany({ where: { chipId } });
  const rows = packages.map((one, position) => ({ ...one, id: ctx.newId(), position }));
  await tx.chipPackage.createMany({
    data: rows.map(({ id, name, style, pins, position }) => ({
      id,
      chipId,
      name,
      style,
      pinCount: pins.length,
      position,
    })),
  });
  await tx.chipPin.createMany({
    data: rows.flatMap(({ id, pins }) =>
      pins.map((pin, position) => ({ id: ctx.newId(), packageId: id, position, ...pin })),
    ),
  });
}

function refuseTwice(packages: readonly PackageInput[]): void {
  for (const [index, one] of packages.entries()) {
    if (packages.findIndex((other) => other.name === one.name) !== index) {
      throw invalid(`packages.${index}.name`, `The package ${one.name} stands here twice.`);
    }
    const numbers = one.pins.map((pin) => pin.number);
    const twice = numbers.findIndex((number, at) => numbers.indexOf(number) !== at);
    if (twice >= 0) throw invalid(`packages.${index}.pins.${twice}.number`, `Pin ${numbers[twice]} stands here twice.`);
  }
}

export async function touchedChip(tx: Tx, id: string): Promise<Touched> {
  const { boards: _boards, codes: _codes, ...snapshot } = await readChipRow(tx, id);
  return { kind: "chip", id, version: snapshot.version, snapshot };
}
