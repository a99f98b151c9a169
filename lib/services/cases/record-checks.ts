import { boardFacts } from "../boards/index.ts";
import { change } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { workableCase } from "./access.ts";
import { checkView, type CheckView } from "./check-view.ts";
import { writeFeatures } from "./features.ts";
import { RecordChecks } from "./schema.ts";
import { nextPosition, writeChecks } from "./write-checks.ts";

export interface RecordedChecks {
  checks: CheckView[];
  /** False where all of them were there already: a phone asked twice. */
  made: boolean;
}

/** Adds checks to a case: all or nothing. Those whose id is there already, with the same reading, are not added twice. */
export async function recordChecks(ctx: Ctx, number: number, raw: unknown): Promise<RecordedChecks> {
  const inputs = RecordChecks.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    // Two people enter checks at once: the order of the list is settled here, and neither locks the other's words out.
    await tx.$executeRaw`select 1 from "FaultCase" where "id" = ${found.id}::uuid for no key update`;
    const there = await tx.check.findMany({
      where: { id: { in: inputs.flatMap((input) => input.id ?? []) } },
      select: { id: true, caseId: true, measured: true, memberId: true },
    });
    const known = new Map(there.map((check) => [check.id, check]));
    for (const input of inputs) {
      const before = input.id ? known.get(input.id) : undefined;
      if (!before) continue;
      if (before.caseId === found.id && before.measured === input.measured && before.memberId === memberId(ctx.actor))
        continue;
      throw new ServiceError("conflict", `Another check has the id ${before.id}.`);
    }
    const fresh = inputs.filter((input) => !input.id || !known.has(input.id));
    const facts = found.boardId ? await boardFacts(tx, found.boardId) : null;
    const target = { caseId: found.id, facts, from: await nextPosition(tx, found.id), path: "" };
    const ids = fresh.length > 0 ? await writeChecks(tx, ctx, target, fresh) : [];
    if (ids.length > 0) await writeFeatures(tx, found.id, facts);
    const wanted = [...ids, ...known.keys()];
    const rows = await tx.check.findMany({
      where: { id: { in: wanted } },
      select: checkView.select,
      orderBy: { position: "asc" },
    });
    const checks = rows.map(checkView.of);
    const added = checks.filter((check) => ids.includes(check.id));
    return {
      value: { checks, made: ids.length > 0 },
      did: "check.record",
      touched:
        ids.length === 0
          ? []
          : [
              { kind: "case", id: found.id },
              ...added.map((check) => ({ kind: "check" as const, id: check.id, version: 1, snapshot: check })),
            ],
    };
  });
}
