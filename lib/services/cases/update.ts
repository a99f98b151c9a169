import { boardFacts } from "../boards/index.ts";
import { change, lockRecord } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { workableCase } from "./access.ts";
import { boardLinks } from "./board-of-case.ts";
import { isClosed } from "./create.ts";
import { writeFeatures } from "./features.ts";
import { demandProofFor } from "./outcome.ts";
import { caseOwnFields } from "./read.ts";
import { UpdateCase } from "./schema.ts";
import { touchedCase } from "./snapshot.ts";
import { storyForStorage } from "./story.ts";
import { setSymptoms } from "./symptoms.ts";

/**
 * Changes a case's own fields; those left out stay. `version` is the one that the writer read: if someone was first,
 * throws `stale` with the present state and writes nothing.
 */
export async function updateCase(
  ctx: Ctx,
  number: number,
  version: number,
  raw: unknown,
): Promise<{ version: number }> {
  const input = UpdateCase.parse(raw);
  demand(ctx.actor, "member", "write");
  return change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    await lockRecord(tx, "FaultCase", found.id, version, () => caseOwnFields(tx, ctx, found.id));
    const { board, revision, copy, symptoms, story, outcome, ...plain } = input;
    const links = await changedLinks();
    if (symptoms) await setSymptoms(tx, ctx, found.id, symptoms);
    if (outcome) await demandProofFor(tx, found.id, outcome);
    const at = ctx.now();
    const updated = await tx.faultCase.update({
      where: { id: found.id },
      data: {
        ...definedFields(plain),
        ...links,
        ...(story !== undefined && { story: await storyForStorage(tx, story) }),
        ...(outcome && { outcome, closedAt: isClosed(outcome) ? at : null }),
        version: { increment: 1 },
        updatedAt: at,
      },
      select: { version: true, boardId: true },
    });
    await writeFeatures(tx, found.id, updated.boardId ? await boardFacts(tx, updated.boardId) : null);
    return { value: { version: updated.version }, did: "case.update", touched: [await touchedCase(tx, found.id)] };

    async function changedLinks() {
      if (board === undefined && revision === undefined && copy === undefined) return {};
      const before = await caseOwnFields(tx, ctx, found.id);
      const named = {
        board: board === undefined ? before.board : board,
        revision: revision ?? (board === undefined ? before.revision : ""),
        copy: copy ?? (board === undefined ? before.copy : ""),
      };
      return boardLinks(tx, ctx, named);
    }
  });
}

function definedFields<T extends object>(fields: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}
