import type { Tx } from "#lib/infra/db/index.ts";
import { change, isDuplicate, lockRecord } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { writeEvidence } from "./evidence.ts";
import { codeOfField } from "./find.ts";
import { writtenBy, type Provenance } from "./provenance.ts";
import { CreateClaim, UpdateClaim } from "./schema.ts";
import { claimOwnFields, touchedClaim } from "./snapshot.ts";

export interface SavedClaim {
  id: string;
  version: number;
  fromId: string;
  toId: string;
  /** False where the same claim was there already: the request came twice. */
  made: boolean;
}

const SAVED = { id: true, version: true, fromId: true, toId: true } as const;
const THERE_ALREADY = "There is such a claim already. Add your evidence to it.";

/** Claims that one code can stand in for another, perhaps with the evidence it rests on. */
export async function createClaim(ctx: Ctx, raw: unknown, provenance?: Provenance): Promise<SavedClaim> {
  const { id: asked, from, to, evidence, ...plain } = CreateClaim.parse(raw);
  demand(ctx.actor, "member", "write");
  const by = writtenBy(ctx, provenance);
  try {
    return await change(ctx, "member", async (tx) => {
      const [fromCode, toCode] = [await codeOfField(tx, from, "from"), await codeOfField(tx, to, "to")];
      if (fromCode.id === toCode.id) throw invalid("to", "A claim is about two different codes.");
      const ends = { fromId: fromCode.id, toId: toCode.id };
      const again = asked ? await sameClaim(tx, asked, ends) : null;
      if (again) return { value: again, did: "claim.create", touched: [] };
      await refuseMirrored(tx, ends, plain.grade, plain.bothWays);
      const id = asked ?? ctx.newId();
      await tx.claim.create({
        data: { id, ...ends, ...plain, createdById: by.memberId, createdAt: by.at, updatedAt: by.at },
        select: { id: true },
      });
      if (evidence) await writeEvidence(tx, ctx, id, evidence, by, "evidence.");
      const value = { id, version: 1, ...ends, made: true };
      return { value, did: "claim.create", touched: await touchedClaim(tx, id) };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("to", THERE_ALREADY);
    throw error;
  }
}

/** Changes what a claim says; its two codes stay. Throws `stale` where someone was first. */
export async function updateClaim(ctx: Ctx, id: string, version: number, raw: unknown): Promise<SavedClaim> {
  const { grade, bothWays, conditions, note } = UpdateClaim.parse(raw);
  demand(ctx.actor, "member", "write");
  try {
    return await change(ctx, "member", async (tx) => {
      if (!(await tx.claim.findUnique({ where: { id }, select: { id: true } }))) throw notFound("claim with this id");
      await lockRecord(tx, "Claim", id, version, () => claimOwnFields(tx, id));
      const updated = await tx.claim.update({
        where: { id },
        data: {
          ...(grade !== undefined && { grade }),
          ...(bothWays !== undefined && { bothWays }),
          ...(conditions !== undefined && { conditions }),
          ...(note !== undefined && { note }),
          version: { increment: 1 },
          updatedAt: ctx.now(),
        },
        select: SAVED,
      });
      return { value: { ...updated, made: false }, did: "claim.update", touched: await touchedClaim(tx, id) };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("grade", THERE_ALREADY);
    throw error;
  }
}

async function sameClaim(tx: Tx, id: string, ends: { fromId: string; toId: string }): Promise<SavedClaim | null> {
  const found = await tx.claim.findUnique({ where: { id }, select: SAVED });
  if (!found) return null;
  if (found.fromId !== ends.fromId || found.toId !== ends.toId) {
    throw new ServiceError("conflict", "Another claim has this id.");
  }
  return { ...found, made: false };
}

/** A claim that holds both ways is the same claim from the other end. */
async function refuseMirrored(
  tx: Tx,
  ends: { fromId: string; toId: string },
  grade: string,
  bothWays: boolean,
): Promise<void> {
  const mirrored = await tx.claim.findFirst({
    where: { fromId: ends.toId, toId: ends.fromId, grade, ...(bothWays ? {} : { bothWays: true }) },
    select: { bothWays: true },
  });
  if (!mirrored) return;
  const why = mirrored.bothWays
    ? THERE_ALREADY
    : "There is such a claim the other way round. Mark that one as holding both ways.";
  throw invalid("to", why);
}
