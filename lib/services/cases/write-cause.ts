import { boardNames, placeFacts, type BoardFacts } from "#lib/core/board/index.ts";
import { normalForm } from "#lib/core/marking/index.ts";
import { printPlace, readPlace } from "#lib/core/netlist/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import type { Touched } from "../change.ts";
import { memberId, type Ctx } from "../context.ts";
import { invalid } from "../errors.ts";
import type { CauseInput, CureInput, ProofInput } from "./schema.ts";

export interface CauseTarget {
  caseId: string;
  facts: BoardFacts | null;
  authorId: string | null;
  at: Date;
}

/** Adds a cause with the checks it explains, its cure and its proof. */
export async function writeCause(
  tx: Tx,
  ctx: Ctx,
  target: CauseTarget,
  input: CauseInput,
  path: string,
): Promise<Touched> {
  const id = input.id ?? ctx.newId();
  const place = placeOfCause(target.facts, input.at, `${path}at`);
  const position = await tx.cause.count({ where: { caseId: target.caseId } });
  await tx.cause.create({
    data: {
      id,
      caseId: target.caseId,
      position,
      at: place.at,
      chipId: await chipId(tx, input.chip ?? place.chip, `${path}chip`, input.chip !== undefined),
      codeId: input.code ? await codeId(tx, input.code) : null,
      failure: input.failure,
      description: input.description,
      memberId: target.authorId ?? memberId(ctx.actor),
      createdAt: target.at,
      updatedAt: target.at,
    },
    select: { id: true },
  });
  await setExplained(tx, target.caseId, id, input.explains, `${path}explains`);
  if (input.cure) await setCure(tx, ctx, id, input.cure);
  if (input.proof) await writeProof(tx, ctx, target, id, input.proof);
  return { kind: "cause", id, version: 1, snapshot: { ...input, at: place.at } };
}

/** The place of a cause in its one spelling, and the chip that the board's record has there. */
export function placeOfCause(
  facts: BoardFacts | null,
  typed: string,
  path: string,
): { at: string; chip: string | null } {
  if (typed === "") return { at: "", chip: null };
  const place = readPlace(typed, facts ? boardNames(facts) : undefined);
  if (!place.ok) throw invalid(path, place.problem);
  const chip = facts ? (placeFacts(facts, place.value).chip?.slug ?? null) : null;
  return { at: printPlace(place.value), chip };
}

export async function chipId(tx: Tx, slug: string | null, path: string, demanded: boolean): Promise<string | null> {
  if (!slug) return null;
  const chip = await tx.chip.findUnique({ where: { slug }, select: { id: true } });
  if (!chip && demanded) throw invalid(path, `There is no chip record "${slug}".`);
  return chip?.id ?? null;
}

/** The record of a printed code; where several makers print it, none is guessed. */
export async function codeId(tx: Tx, code: string): Promise<string | null> {
  const exact = await tx.partCode.findMany({
    where: { code: { equals: code, mode: "insensitive" } },
    select: { id: true },
    take: 2,
  });
  if (exact.length === 1) return exact[0]?.id ?? null;
  const alike = await tx.partCode.findMany({ where: { normal: normalForm(code) }, select: { id: true }, take: 2 });
  return alike.length === 1 ? (alike[0]?.id ?? null) : null;
}

export async function setExplained(
  tx: Tx,
  caseId: string,
  causeId: string,
  checkIds: readonly string[],
  path: string,
): Promise<void> {
  const wanted = [...new Set(checkIds)];
  const known = await tx.check.count({ where: { caseId, id: { in: wanted } } });
  if (known !== wanted.length) throw invalid(path, "A cause explains checks of its own case only.");
  await tx.causeCheck.deleteMany({ where: { causeId } });
  await tx.causeCheck.createMany({ data: wanted.map((checkId) => ({ causeId, checkId })) });
}

export async function setCure(tx: Tx, ctx: Ctx, causeId: string, cure: CureInput): Promise<void> {
  const data = {
    action: cure.action,
    description: cure.description,
    fittedId: cure.fittedCode ? await codeId(tx, cure.fittedCode) : null,
    fittedText: cure.fittedCode ?? "",
    fromWhere: cure.from ?? "",
  };
  await tx.cure.upsert({
    where: { causeId },
    create: { id: ctx.newId(), causeId, ...data },
    update: data,
    select: { id: true },
  });
}

export async function writeProof(
  tx: Tx,
  ctx: Ctx,
  target: Pick<CauseTarget, "caseId" | "authorId" | "at">,
  causeId: string,
  proof: ProofInput,
): Promise<string> {
  const made = await tx.proof.create({
    data: {
      id: ctx.newId(),
      caseId: target.caseId,
      causeId,
      kind: proof.kind,
      soakMinutes: proof.minutes ?? null,
      note: proof.note,
      memberId: target.authorId ?? memberId(ctx.actor),
      provedAt: target.at,
    },
    select: { id: true },
  });
  return made.id;
}
