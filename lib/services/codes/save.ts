import { codeKeys, normalForm } from "#lib/core/marking/index.ts";
import type { Db, Tx } from "#lib/infra/db/index.ts";
import { change, isDuplicate, lockRecord, type Touched } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { theCode } from "./find.ts";
import { writtenBy, type Provenance } from "./provenance.ts";
import { CreateCode, UpdateCode } from "./schema.ts";
import { writeSighting } from "./sightings.ts";
import { codeOwnFields, touchedCode } from "./snapshot.ts";

export interface SavedCode {
  id: string;
  code: string;
  version: number;
  /** False where the same code was there already: the request came twice. */
  made: boolean;
}

/** Records a code as it is printed, known or not. */
export async function createCode(ctx: Ctx, raw: unknown, provenance?: Provenance): Promise<SavedCode> {
  const { id: asked, sighting, house, chip, ...plain } = CreateCode.parse(raw);
  demand(ctx.actor, "member", "write");
  const by = writtenBy(ctx, provenance);
  const again = asked ? await sameCode(ctx.db, asked, plain.code) : null;
  if (again) return again;
  const id = asked ?? ctx.newId();
  try {
    return await change(ctx, "member", async (tx) => {
      await tx.partCode.create({
        data: {
          id,
          ...plain,
          ...written(plain.code),
          houseId: await houseIdOf(tx, house),
          chipId: await chipIdOf(tx, chip),
          createdById: by.memberId,
          createdAt: by.at,
          updatedAt: by.at,
        },
        select: { id: true },
      });
      if (sighting) await writeSighting(tx, ctx, id, sighting, by, "sighting.");
      return {
        value: { id, code: plain.code, version: 1, made: true },
        did: "code.create",
        touched: [await touchedCode(tx, id)],
      };
    });
  } catch (error) {
    if (isDuplicate(error)) throw twice(plain.code);
    throw error;
  }
}

/** Changes a code's own fields; those left out stay. Throws `stale` where someone was first. */
export async function updateCode(ctx: Ctx, text: string, version: number, raw: unknown): Promise<SavedCode> {
  const { code, house, chip, notes } = UpdateCode.parse(raw);
  demand(ctx.actor, "member", "write");
  try {
    return await change(ctx, "member", async (tx) => {
      const found = await theCode(tx, text);
      await lockRecord(tx, "PartCode", found.id, version, () => codeOwnFields(tx, found.id));
      const before = await tx.partCode.findUniqueOrThrow({ where: { id: found.id }, select: { chipId: true } });
      const updated = await tx.partCode.update({
        where: { id: found.id },
        data: {
          ...(code !== undefined && { code, ...written(code) }),
          ...(notes !== undefined && { notes }),
          ...(house !== undefined && { houseId: await houseIdOf(tx, house) }),
          ...(chip !== undefined && { chipId: await chipIdOf(tx, chip) }),
          version: { increment: 1 },
          updatedAt: ctx.now(),
        },
        select: { id: true, code: true, version: true },
      });
      const touched: Touched[] = [await touchedCode(tx, found.id)];
      // The chip that it was said to be lists it no longer, which search can only learn from here.
      if (chip !== undefined && before.chipId) touched.push({ kind: "chip", id: before.chipId });
      return { value: { ...updated, made: false }, did: "code.update", touched };
    });
  } catch (error) {
    if (isDuplicate(error)) throw twice(code ?? text);
    throw error;
  }
}

async function sameCode(db: Db, id: string, code: string): Promise<SavedCode | null> {
  const found = await db.partCode.findUnique({ where: { id }, select: { id: true, code: true, version: true } });
  if (!found) return null;
  if (found.code !== code) throw new ServiceError("conflict", "Another code has this id.");
  return { ...found, made: false };
}

function written(code: string): { normal: string; keys: string[] } {
  return { normal: normalForm(code), keys: codeKeys(code) };
}

function twice(code: string): ServiceError {
  return invalid("code", `There is a record of "${code}" from this house already. Open it and add what you know.`);
}

async function houseIdOf(tx: Tx, slug: string | null): Promise<string | null> {
  if (slug === null) return null;
  const house = await tx.house.findUnique({ where: { slug }, select: { id: true } });
  if (!house) throw invalid("house", `There is no house "${slug}".`);
  return house.id;
}

async function chipIdOf(tx: Tx, slug: string | null): Promise<string | null> {
  if (slug === null) return null;
  const chip = await tx.chip.findFirst({ where: { slug, hiddenAt: null }, select: { id: true } });
  if (!chip) throw invalid("chip", `There is no chip record "${slug}".`);
  return chip.id;
}
