import { boardCautions, type Caution } from "#lib/core/board/index.ts";
import { boardFacts } from "../boards/index.ts";
import { change } from "../change.ts";
import { demand, isMember, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { workableCase } from "./access.ts";
import { visibleCases } from "../visible-cases.ts";

/** Keeps that the member read a caution of this case's board: mains, a picture tube, more than 60 V. */
export async function tickCaution(ctx: Ctx, number: number, key: string): Promise<void> {
  demand(ctx.actor, "member", "write");
  const { actor } = ctx;
  if (!isMember(actor)) throw new ServiceError("forbidden", "A caution is ticked by a member.");
  await change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    const facts = found.boardId ? await boardFacts(tx, found.boardId) : null;
    const cautions: Caution[] = facts ? boardCautions(facts) : [];
    if (!cautions.some((caution) => caution.key === key && caution.tick)) {
      throw invalid("caution", "This board has no such caution to tick.");
    }
    const id = { caseId: found.id, caution: key, memberId: actor.id };
    await tx.cautionTick.createMany({ data: [{ ...id, at: ctx.now() }], skipDuplicates: true });
    return { value: undefined, did: "caution.tick", touched: [], detail: { caution: key, case: number } };
  });
}

/** Keys of the cautions that the person who asks has ticked on this case. */
export async function tickedCautions(ctx: Ctx, number: number): Promise<string[]> {
  if (!isMember(ctx.actor)) return [];
  const rows = await ctx.db.cautionTick.findMany({
    where: { memberId: ctx.actor.id, case: { number, AND: [visibleCases(ctx.actor)] } },
    select: { caution: true },
  });
  return rows.map((row) => row.caution);
}
