import { boardFacts } from "../boards/index.ts";
import { change, lockRecord } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, notFound } from "../errors.ts";
import { workableCase, type FoundCase } from "./access.ts";
import { writeFeatures } from "./features.ts";
import { CauseInput, RecordProof } from "./schema.ts";
import { touchedCase } from "./snapshot.ts";
import { chipId, codeId, placeOfCause, setCure, setExplained, writeCause, writeProof } from "./write-cause.ts";
import type { Tx } from "#lib/infra/db/index.ts";

async function factsOf(tx: Tx, found: FoundCase) {
  return found.boardId ? boardFacts(tx, found.boardId) : null;
}

/** Adds a cause, with its cure and its proof where they are known already. */
export async function recordCause(ctx: Ctx, number: number, raw: unknown): Promise<{ id: string }> {
  const input = CauseInput.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    const facts = await factsOf(tx, found);
    const target = { caseId: found.id, facts, authorId: memberId(ctx.actor), at: ctx.now() };
    const touched = await writeCause(tx, ctx, target, input, "");
    await writeFeatures(tx, found.id, facts);
    return { value: { id: touched.id }, did: "cause.record", touched: [{ kind: "case", id: found.id }, touched] };
  });
}

/** Rewrites a cause and its cure. Its proofs stay. Throws `stale` where someone was first. */
export async function updateCause(
  ctx: Ctx,
  number: number,
  causeId: string,
  version: number,
  raw: unknown,
): Promise<{ version: number }> {
  const input = CauseInput.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    await demandCause(tx, found.id, causeId);
    await lockRecord(tx, "Cause", causeId, version, () =>
      tx.cause.findUnique({ where: { id: causeId }, include: { cure: true } }),
    );
    const facts = await factsOf(tx, found);
    const place = placeOfCause(facts, input.at, "at");
    const updated = await tx.cause.update({
      where: { id: causeId },
      data: {
        at: place.at,
        chipId: await chipId(tx, input.chip ?? place.chip, "chip", input.chip !== undefined),
        codeId: input.code ? await codeId(tx, input.code) : null,
        failure: input.failure,
        description: input.description,
        version: { increment: 1 },
        updatedAt: ctx.now(),
      },
      select: { version: true },
    });
    await setExplained(tx, found.id, causeId, input.explains, "explains");
    if (input.cure) await setCure(tx, ctx, causeId, input.cure);
    else await tx.cure.deleteMany({ where: { causeId } });
    await writeFeatures(tx, found.id, facts);
    const snapshot = { ...input, at: place.at };
    return {
      value: { version: updated.version },
      did: "cause.update",
      touched: [
        { kind: "case", id: found.id },
        { kind: "cause", id: causeId, version: updated.version, snapshot },
      ],
    };
  });
}

/** Takes a cause back. A cured case cannot lose its last proof this way: say first that it is not cured. */
export async function deleteCause(ctx: Ctx, number: number, causeId: string, version: number): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    await demandCause(tx, found.id, causeId);
    await lockRecord(tx, "Cause", causeId, version, () => tx.cause.findUnique({ where: { id: causeId } }));
    await tx.cause.delete({ where: { id: causeId }, select: { id: true } });
    const left = await tx.proof.count({ where: { caseId: found.id } });
    if (found.outcome === "cured" && left === 0) {
      throw invalid("outcome", "This is the last proof of a cured case. Change the outcome first.");
    }
    await writeFeatures(tx, found.id, await factsOf(tx, found));
    return {
      value: undefined,
      did: "cause.delete",
      touched: [
        { kind: "case", id: found.id },
        { kind: "cause", id: causeId },
      ],
    };
  });
}

/** Records what shows that a cure holds; the case then counts as cured. */
export async function recordProof(ctx: Ctx, number: number, raw: unknown): Promise<{ id: string }> {
  const { cause, ...proof } = RecordProof.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    await demandCause(tx, found.id, cause);
    const at = ctx.now();
    const id = await writeProof(tx, ctx, { caseId: found.id, authorId: memberId(ctx.actor), at }, cause, proof);
    await tx.faultCase.update({
      where: { id: found.id },
      data: { outcome: "cured", closedAt: at, version: { increment: 1 }, updatedAt: at },
      select: { id: true },
    });
    await writeFeatures(tx, found.id, await factsOf(tx, found));
    return { value: { id }, did: "proof.record", touched: [await touchedCase(tx, found.id)] };
  });
}

async function demandCause(tx: Tx, caseId: string, causeId: string): Promise<void> {
  const cause = await tx.cause.findFirst({ where: { id: causeId, caseId }, select: { id: true } });
  if (!cause) throw notFound("cause with this id in this case");
}
