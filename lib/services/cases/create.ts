import type { BoardFacts } from "#lib/core/board/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import { boardFacts } from "../boards/index.ts";
import { change, type Touched } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { visibleCases } from "../visible-cases.ts";
import { boardLinks } from "./board-of-case.ts";
import { demandProofFor } from "./outcome.ts";
import { CreateCase } from "./schema.ts";
import { writeFeatures } from "./features.ts";
import { storyForStorage } from "./story.ts";
import { touchedCase } from "./snapshot.ts";
import { setSymptoms } from "./symptoms.ts";
import { writeCause } from "./write-cause.ts";
import { writeChecks } from "./write-checks.ts";

export interface CreatedCase {
  id: string;
  number: number;
  version: number;
  /** False where the same case was there already: a phone asked twice. */
  made: boolean;
}

/** For the demo and for old notes: who wrote it and when. Only the program itself may say so. */
export interface Provenance {
  authorId: string;
  at: Date;
}

/** Opens a case, with all that is known of it already: checks, causes, cure and proof. All or nothing. */
export async function createCase(ctx: Ctx, raw: unknown, provenance?: Provenance): Promise<CreatedCase> {
  const input = CreateCase.parse(raw);
  if (provenance && ctx.actor.kind !== "club")
    throw new ServiceError("forbidden", "Only the program says who wrote a case.");
  demand(ctx.actor, "member", "write");
  const authorId = provenance?.authorId ?? memberId(ctx.actor);
  if (!authorId) throw new ServiceError("forbidden", "A case needs a member as its author.");
  const again = input.id ? await sameCase(ctx, input.id, input) : null;
  if (again) return again;
  return change(ctx, "member", async (tx) => {
    const links = await boardLinks(tx, ctx, input);
    const facts = links.boardId ? await boardFacts(tx, links.boardId) : null;
    const at = provenance?.at ?? ctx.now();
    const openedAt = input.openedAt ? new Date(input.openedAt) : at;
    const created = await tx.faultCase.create({
      data: {
        id: input.id ?? ctx.newId(),
        ...links,
        title: input.title || usualTitle(input, facts),
        authorId,
        state: input.publish ? "published" : "draft",
        outcome: input.outcome,
        lesson: input.lesson,
        symptomText: input.symptomText,
        reproduced: input.reproduced,
        story: await storyForStorage(tx, input.story),
        asksHelp: input.asksHelp,
        openedFromId: await openedFromId(tx, ctx, input.openedFrom),
        openedAt,
        publishedAt: input.publish ? at : null,
        closedAt: isClosed(input.outcome) ? at : null,
        createdAt: at,
        updatedAt: at,
      },
      select: { id: true, number: true, version: true },
    });
    await linkDoubt(tx, created.id);
    await setSymptoms(tx, ctx, created.id, input.symptoms);
    const target = { caseId: created.id, facts, from: 0, path: "checks", author: authorId };
    await writeChecks(tx, ctx, target, input.checks);
    const touched: Touched[] = [];
    for (const [index, cause] of input.causes.entries()) {
      touched.push(await writeCause(tx, ctx, { caseId: created.id, facts, authorId, at }, cause, `causes.${index}.`));
    }
    await demandProofFor(tx, created.id, input.outcome);
    await writeFeatures(tx, created.id, facts);
    const value = { id: created.id, number: created.number, version: created.version, made: true };
    return { value, did: "case.create", touched: [await touchedCase(tx, created.id), ...touched] };
  });
}

/** The same id again is the same request again: a phone that lost the answer. Another case under that id is refused. */
async function sameCase(ctx: Ctx, id: string, input: CreateCase): Promise<CreatedCase | null> {
  const found = await ctx.db.faultCase.findUnique({
    where: { id },
    select: {
      id: true,
      number: true,
      version: true,
      authorId: true,
      symptomText: true,
      checks: { select: { id: true } },
    },
  });
  if (!found) return null;
  const own = ctx.actor.kind === "club" || found.authorId === memberId(ctx.actor);
  const same = own && found.symptomText === input.symptomText && found.checks.length >= input.checks.length;
  if (!same) throw new ServiceError("conflict", "Another case has this id.");
  return { id: found.id, number: found.number, version: found.version, made: false };
}

/** "Did not help mine" led to this case: the word of doubt points to it. */
async function linkDoubt(tx: Tx, caseId: string): Promise<void> {
  const { openedFromId: from, authorId } = await tx.faultCase.findUniqueOrThrow({
    where: { id: caseId },
    select: { openedFromId: true, authorId: true },
  });
  if (!from) return;
  await tx.confirmation.updateMany({
    where: { caseId: from, memberId: authorId, helped: false, linkedCaseId: null },
    data: { linkedCaseId: caseId },
  });
}

async function openedFromId(tx: Tx, ctx: Ctx, number: number | undefined): Promise<string | null> {
  if (number === undefined) return null;
  const found = await tx.faultCase.findFirst({ where: { number, ...visibleCases(ctx.actor) }, select: { id: true } });
  if (!found) throw invalid("openedFrom", `There is no case ${number}.`);
  return found.id;
}

export function isClosed(outcome: string): boolean {
  return outcome !== "open" && outcome !== "waiting";
}

function usualTitle(input: CreateCase, facts: BoardFacts | null): string {
  const symptom = input.symptoms[0] ?? input.symptomText.split(/[.\n]/)[0] ?? "";
  return `${facts ? `${facts.name}: ` : ""}${symptom}`.slice(0, 160);
}
