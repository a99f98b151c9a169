import { boardFacts } from "../boards/index.ts";
import { change, lockRecord } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { notFound } from "../errors.ts";
import { workableCase } from "./access.ts";
import { checkView, type CheckView } from "./check-view.ts";
import { writeFeatures } from "./features.ts";
import { instrumentOfCheck } from "./instrument.ts";
import { judgedCheck } from "./judged-check.ts";
import { CheckInput, UpdateCheck } from "./schema.ts";

/** Corrects a check; it is judged anew. Throws `stale` where someone was first. */
export async function updateCheck(
  ctx: Ctx,
  number: number,
  checkId: string,
  version: number,
  raw: unknown,
): Promise<CheckView> {
  const input = UpdateCheck.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    const before = await checkOf(found.id);
    await lockRecord(tx, "Check", checkId, version, async () => checkView.of(await checkOf(found.id)));
    const facts = found.boardId ? await boardFacts(tx, found.boardId) : null;
    const merged = CheckInput.parse(mergedInput(checkView.of(before), input));
    const { id: _id, takenAt: _takenAt, repeats: _repeats, instrument: _instrument, ...given } = merged;
    const instrument = await instrumentOfCheck(tx, checkId);
    const row = await tx.check.update({
      where: { id: checkId },
      data: {
        ...judgedCheck(facts, given, "", instrument ?? undefined),
        outdated: false,
        version: { increment: 1 },
        updatedAt: ctx.now(),
      },
      select: checkView.select,
    });
    await writeFeatures(tx, found.id, facts);
    const view = checkView.of(row);
    return {
      value: view,
      did: "check.update",
      touched: [
        { kind: "case", id: found.id },
        { kind: "check", id: checkId, version: view.version, snapshot: view },
      ],
    };

    async function checkOf(caseId: string) {
      const check = await tx.check.findFirst({ where: { id: checkId, caseId }, select: checkView.select });
      if (!check) throw notFound("check with this id in this case");
      return check;
    }
  });
}

/** Takes a check out of a case. Its last state stays in the history, so that it can be entered again. */
export async function deleteCheck(ctx: Ctx, number: number, checkId: string, version: number): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    const row = await tx.check.findFirst({ where: { id: checkId, caseId: found.id }, select: checkView.select });
    if (!row) throw notFound("check with this id in this case");
    const last = checkView.of(row);
    await lockRecord(tx, "Check", checkId, version, async () => last);
    await tx.check.delete({ where: { id: checkId }, select: { id: true } });
    await writeFeatures(tx, found.id, found.boardId ? await boardFacts(tx, found.boardId) : null);
    return {
      value: undefined,
      did: "check.delete",
      touched: [
        { kind: "case", id: found.id },
        { kind: "check", id: checkId, version: version + 1, snapshot: last },
      ],
    };
  });
}

/** What a check's input would be with some of its fields replaced; null takes a field away. */
function mergedInput(before: CheckView, input: UpdateCheck): Record<string, unknown> {
  const kind = input.kind ?? before.kind;
  const moved = kind !== before.kind || (input.at !== undefined && input.at !== before.at);
  // An expectation that came from a record belongs to its place and kind; one that a person gave stays.
  const kept = before.expectedFrom === "the person" || (!moved && before.expected !== "") ? before.expected : undefined;
  const fields: Record<string, unknown> = {
    kind,
    at: input.at ?? before.at,
    to: input.to ?? before.to,
    lead: input.lead === undefined ? before.lead : input.lead,
    when: input.when ?? before.when,
    power: input.power ?? (moved ? undefined : before.power),
    expected: input.expected ?? (before.expectedFrom === "the person" ? kept : undefined),
    measured: input.measured ?? before.measured,
    what: input.what === undefined ? before.what : input.what,
    outcome: input.outcome === undefined ? before.outcome : input.outcome,
    verdict: input.verdict === undefined ? before.chosenVerdict : input.verdict,
    reason: input.verdict === null ? undefined : (input.reason ?? before.chosenReason),
    note: input.note ?? before.note,
  };
  return Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== null && value !== undefined && value !== ""),
  );
}
