import type { BoardFacts } from "#lib/core/board/index.ts";
import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import { memberId, type Ctx } from "../context.ts";
import { invalid } from "../errors.ts";
import { instrumentOf } from "./instrument.ts";
import { judgedCheck } from "./judged-check.ts";
import type { CheckInput } from "./schema.ts";

/** Adds checks to a case in the order given. Returns their ids. */
export async function writeChecks(
  tx: Tx,
  ctx: Ctx,
  target: { caseId: string; facts: BoardFacts | null; from: number; path: string; author?: string | null },
  inputs: readonly CheckInput[],
): Promise<string[]> {
  const at = ctx.now();
  const rows: Prisma.CheckCreateManyInput[] = [];
  for (const [index, input] of inputs.entries()) {
    const path = target.path ? `${target.path}.${index}.` : `${index}.`;
    const { id, takenAt, repeats, instrument: instrumentId, ...given } = input;
    const instrument = instrumentId ? await instrumentOf(tx, ctx, instrumentId, `${path}instrument`) : null;
    // A check written here a moment ago is one of this case, too.
    const earlier = rows.some((row) => row.id === repeats);
    if (repeats && !earlier) await demandSameCase(tx, target.caseId, repeats, `${path}repeats`);
    rows.push({
      ...judgedCheck(target.facts, given, path, instrument?.accuracy),
      id: id ?? ctx.newId(),
      caseId: target.caseId,
      position: target.from + index,
      instrumentId: instrument?.id ?? null,
      ...(instrument && { accuracy: instrument.raw }),
      memberId: target.author ?? memberId(ctx.actor),
      takenAt: takenAt ? new Date(takenAt) : at,
      repeatsId: repeats ?? null,
      createdAt: at,
      updatedAt: at,
    });
  }
  await tx.check.createMany({ data: rows });
  return rows.map((row) => row.id);
}

async function demandSameCase(tx: Tx, caseId: string, checkId: string, path: string): Promise<void> {
  const found = await tx.check.findFirst({ where: { id: checkId, caseId }, select: { id: true } });
  if (!found) throw invalid(path, "The check to repeat is not a check of this case.");
}

/** The place in the order after the last check. */
export async function nextPosition(tx: Tx, caseId: string): Promise<number> {
  const last = await tx.check.aggregate({ where: { caseId }, _max: { position: true } });
  return (last._max.position ?? -1) + 1;
}
