import type { CaseIndex } from "#lib/core/advice/index.ts";
import type { BoardFacts } from "#lib/core/board/index.ts";
import type { Db } from "#lib/infra/db/index.ts";
import { boardFacts } from "../boards/index.ts";
import { STORED_FEATURES, writeFeatures } from "../cases/index.ts";

/** Cases loaded in one query. Features are one column, so a slice is small. */
const SLICE = 500;

/** Loads the features of every published case; those that an older version of the program made are made anew first. */
export async function refreshCases(db: Db, index: CaseIndex): Promise<void> {
  await remakeFeatures(db);
  let after = 0;
  for (;;) {
    const rows = await db.faultCase.findMany({
      where: { state: "published", number: { gt: after } },
      select: { number: true, features: true },
      orderBy: { number: "asc" },
      take: SLICE,
    });
    for (const row of rows) index.put(row.number, row.features);
    const last = rows.at(-1);
    if (!last) return;
    after = last.number;
  }
}

/** Brings the index to the present state of these cases. */
export async function putCases(db: Db, index: CaseIndex, ids: readonly string[]): Promise<void> {
  const rows = await db.faultCase.findMany({
    where: { id: { in: [...ids] } },
    select: { number: true, state: true, features: true },
  });
  for (const row of rows) {
    if (row.state === "published") index.put(row.number, row.features);
    else index.remove(row.number);
  }
}

async function remakeFeatures(db: Db): Promise<void> {
  for (;;) {
    const rows = await db.faultCase.findMany({
      where: { featuresVersion: { not: STORED_FEATURES } },
      select: { id: true, boardId: true },
      orderBy: { boardId: "asc" },
      take: SLICE,
    });
    if (rows.length === 0) return;
    const factsOfBoard = new Map<string, BoardFacts | null>();
    for (const { id, boardId } of rows) {
      if (boardId && !factsOfBoard.has(boardId)) factsOfBoard.set(boardId, await boardFacts(db, boardId));
      await writeFeatures(db, id, boardId ? (factsOfBoard.get(boardId) ?? null) : null);
    }
  }
}
