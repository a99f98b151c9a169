import { change } from "../change.ts";
import { demand, isMember, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { visibleCases } from "../visible-cases.ts";
import { ConfirmInput } from "./schema.ts";

/** "This cured mine" or "did not help mine". A member's later word replaces the earlier one. */
export async function confirmCase(ctx: Ctx, number: number, raw: unknown): Promise<{ id: string }> {
  const input = ConfirmInput.parse(raw);
  demand(ctx.actor, "member", "write");
  const { actor } = ctx;
  if (!isMember(actor)) throw new ServiceError("forbidden", "A confirmation is a member's word.");
  return change(ctx, "member", async (tx) => {
    const found = await tx.faultCase.findFirst({
      where: { number, AND: [visibleCases(actor)] },
      select: { id: true, authorId: true, causes: { select: { id: true } } },
    });
    if (!found) throw notFound(`case ${number}`);
    if (found.authorId === actor.id)
      throw invalid("helped", "This is your own case: the others say whether it helped them.");
    if (input.cause && !found.causes.some((cause) => cause.id === input.cause)) {
      throw invalid("cause", "This is not a cause of this case.");
    }
    const linked = input.linkedCase
      ? await tx.faultCase.findFirst({
          where: { number: input.linkedCase, AND: [visibleCases(actor)] },
          select: { id: true },
        })
      : null;
    if (input.linkedCase && !linked) throw invalid("linkedCase", `There is no case ${input.linkedCase}.`);
    if (linked?.id === found.id) throw invalid("linkedCase", "A case is not linked to itself.");
    const data = {
      helped: input.helped,
      note: input.note,
      causeId: input.cause ?? found.causes[0]?.id ?? null,
      linkedCaseId: linked?.id ?? null,
      createdAt: ctx.now(),
    };
    const made = await tx.confirmation.upsert({
      where: { caseId_memberId: { caseId: found.id, memberId: actor.id } },
      create: { id: ctx.newId(), caseId: found.id, memberId: actor.id, ...data },
      update: data,
      select: { id: true },
    });
    return {
      value: made,
      did: input.helped ? "case.helped" : "case.did-not-help",
      touched: [{ kind: "case", id: found.id }],
    };
  });
}
