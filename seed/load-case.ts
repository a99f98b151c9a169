import { confirmCase, createCase } from "#lib/services/cases/index.ts";
import { createComment } from "#lib/services/comments/index.ts";
import type { Ctx, MemberActor } from "#lib/services/context.ts";
import { demoId } from "#seed/identity.ts";
import type { SeedCase, SeedCause, SeedCheck } from "#seed/shapes.ts";

export interface CaseSurroundings {
  memberOf(handle: string): MemberActor;
  yearsAgo(years: number): Date;
  hasChip(slug: string): boolean;
}

/** Loads one case with its confirmations and comments. Returns its number. */
export async function loadCase(ctx: Ctx, around: CaseSurroundings, one: SeedCase): Promise<number> {
  const at = around.yearsAgo(one.yearsAgo);
  const author = around.memberOf(one.author);
  const id = (kind: string, key: string | number) => demoId(kind, `${one.key} ${key}`, at);
  const checkId = (index: number) => id("check", index);
  const measured = one.checks.map((check, index) => checkInput(check, checkId(index), at, index));
  const repeated = one.causes.flatMap((cause, position) => repeatedChecks(one, cause, position, at, checkId));
  const created = await createCase(
    { ...ctx, now: () => at, onBehalfOf: author.id },
    {
      id: id("case", ""),
      board: one.board,
      ...(one.revision && { revision: one.revision }),
      ...(one.copyTag && { copy: one.copyTag }),
      title: one.title,
      symptoms: one.symptoms,
      symptomText: one.symptomText,
      reproduced: one.reproduced,
      outcome: one.outcome,
      lesson: one.lesson ?? "",
      story: one.story ?? "",
      asksHelp: one.asksHelp ?? "",
      publish: !one.draft,
      checks: [...measured, ...repeated],
      causes: one.causes.map((cause, position) => causeInput(around, cause, id("cause", position), checkId)),
    },
    { authorId: author.id, at },
  );
  for (const word of one.confirmations ?? []) {
    const later = new Date(at.getTime() + 40 * 86_400_000);
    const asMember = { ...ctx, actor: around.memberOf(word.member), now: () => later };
    await confirmCase(asMember, created.number, { helped: word.helped, note: word.note });
  }
  for (const [index, comment] of (one.comments ?? []).entries()) {
    const said = around.yearsAgo(comment.yearsAgo);
    const provenance = { memberId: around.memberOf(comment.member).id, at: said };
    const input = { id: id("comment", index), kind: "case", record: created.id, body: comment.body };
    await createComment({ ...ctx, now: () => said, onBehalfOf: provenance.memberId }, input, provenance);
  }
  return created.number;
}

/** Minutes between two checks at the bench, so that their order shows in their times too. */
const MINUTES_A_CHECK = 4;

function checkInput(check: SeedCheck, id: string, at: Date, index: number) {
  const { verdict, ...plain } = check;
  return {
    ...plain,
    id,
    takenAt: new Date(at.getTime() + index * MINUTES_A_CHECK * 60_000).toISOString(),
    ...(verdict && { verdict: verdict.chosen, reason: verdict.reason }),
  };
}

/** The failed checks measured again after the cure. */
function repeatedChecks(
  one: SeedCase,
  cause: SeedCause,
  position: number,
  at: Date,
  checkId: (index: number) => string,
) {
  return (cause.proof?.repeats ?? []).flatMap(({ check, measured }, nth) => {
    const original = one.checks[check];
    if (!original) return [];
    const { verdict: _verdict, note: _note, ...same } = original;
    const id = demoId("check", `${one.key} repeat ${position} ${nth}`, at);
    return [{ ...checkInput({ ...same, measured }, id, at, one.checks.length + nth), repeats: checkId(check) }];
  });
}

function causeInput(around: CaseSurroundings, cause: SeedCause, id: string, checkId: (index: number) => string) {
  const { cure, proof } = cause;
  return {
    id,
    at: cause.at,
    ...(cause.chip && around.hasChip(cause.chip) && { chip: cause.chip }),
    failure: cause.failure,
    description: cause.description,
    explains: cause.explains.map(checkId),
    ...(cure && {
      cure: {
        action: cure.action,
        description: cure.description,
        ...(cure.fittedCode && { fittedCode: cure.fittedCode }),
        ...(cure.from && { from: cure.from }),
      },
    }),
    ...(proof && { proof: { kind: proof.kind, note: proof.note, ...(proof.minutes && { minutes: proof.minutes }) } }),
  };
}
