import type { Tx } from "#lib/infra/db/index.ts";
import { visibleCases } from "../cases/index.ts";
import { change } from "../change.ts";
import { demand, hasRole, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { writtenBy, type Provenance } from "./provenance.ts";
import { EvidenceInput } from "./schema.ts";
import { touchedClaim } from "./snapshot.ts";

export interface SavedEvidence {
  id: string;
  claimId: string;
  /** False where the same evidence was there already: the request came twice. */
  made: boolean;
}

/** Adds what speaks for or against a claim. */
export async function addEvidence(
  ctx: Ctx,
  claimId: string,
  raw: unknown,
  provenance?: Provenance,
): Promise<SavedEvidence> {
  const input = EvidenceInput.parse(raw);
  demand(ctx.actor, "member", "write");
  const by = writtenBy(ctx, provenance);
  return change<SavedEvidence>(ctx, "member", async (tx) => {
    if (!(await tx.claim.findUnique({ where: { id: claimId }, select: { id: true } })))
      throw notFound("claim with this id");
    const again = input.id
      ? await tx.evidence.findUnique({ where: { id: input.id }, select: { id: true, claimId: true, kind: true } })
      : null;
    if (again) {
      if (again.claimId !== claimId || again.kind !== input.kind)
        throw new ServiceError("conflict", "Other evidence has this id.");
      return { value: { id: again.id, claimId, made: false }, did: "evidence.add", touched: [] };
    }
    const id = await writeEvidence(tx, ctx, claimId, input, by, "");
    return { value: { id, claimId, made: true }, did: "evidence.add", touched: await touchedClaim(tx, claimId) };
  });
}

/** Takes evidence back: it no longer counts and stays readable. One's own, or any for a reviewer. */
export async function retractEvidence(ctx: Ctx, id: string): Promise<void> {
  await setRetracted(ctx, id, ctx.now(), "evidence.retract");
}

/** Lets evidence that was taken back count again. */
export async function restoreEvidence(ctx: Ctx, id: string): Promise<void> {
  await setRetracted(ctx, id, null, "evidence.restore");
}

async function setRetracted(ctx: Ctx, id: string, retractedAt: Date | null, did: string): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await tx.evidence.findUnique({
      where: { id },
      select: { claimId: true, memberId: true, retractedAt: true },
    });
    if (!found) throw notFound("evidence with this id");
    const own = ctx.actor.kind === "member" && found.memberId === ctx.actor.id;
    if (!own && !hasRole(ctx.actor, "reviewer")) {
      throw new ServiceError("forbidden", "Only the member who gave it, or a reviewer, takes evidence back.");
    }
    if ((found.retractedAt === null) === (retractedAt === null)) return { value: undefined, did, touched: [] };
    await tx.evidence.update({ where: { id }, data: { retractedAt }, select: { id: true } });
    return { value: undefined, did, touched: await touchedClaim(tx, found.claimId) };
  });
}

export async function writeEvidence(
  tx: Tx,
  ctx: Ctx,
  claimId: string,
  input: EvidenceInput,
  by: { memberId: string | null; at: Date },
  path: string,
): Promise<string> {
  const { id, case: number, provedElsewhere, ...plain } = input;
  if (provedElsewhere !== null && input.kind !== "fitted-failed") {
    throw invalid(`${path}provedElsewhere`, "Whether a part was good elsewhere is asked only of one that failed here.");
  }
  const made = await tx.evidence.create({
    data: {
      id: id ?? ctx.newId(),
      claimId,
      ...plain,
      provedElsewhere: input.kind === "fitted-failed" ? (provedElsewhere ?? "not-known") : null,
      caseId: number === null ? null : await caseIdOf(tx, ctx, number, `${path}case`),
      memberId: by.memberId,
      createdAt: by.at,
    },
    select: { id: true },
  });
  return made.id;
}

async function caseIdOf(tx: Tx, ctx: Ctx, number: number, path: string): Promise<string> {
  const found = await tx.faultCase.findFirst({
    where: { number, AND: [visibleCases(ctx.actor)] },
    select: { id: true },
  });
  if (!found) throw invalid(path, `There is no case ${number}.`);
  return found.id;
}
