import type { Db } from "#lib/infra/db/index.ts";
import type { SearchKind } from "#lib/infra/search/types.ts";

type IdsOf = (db: Db, ids: string[]) => Promise<{ id: string }[]>;
const select = { id: true } as const;

/**
 * Documents that repeat something of another record, by the kind of that record: a case says its board's name, a board
 * the chips on it. When the other one changes, they are made anew.
 */
const DEPENDENTS: Record<SearchKind, Record<string, IdsOf>> = {
  case: {
    board: (db, ids) => db.faultCase.findMany({ where: { boardId: { in: ids } }, select }),
    chip: (db, ids) => db.faultCase.findMany({ where: { causes: { some: { chipId: { in: ids } } } }, select }),
    code: (db, ids) => db.faultCase.findMany({ where: { causes: { some: { codeId: { in: ids } } } }, select }),
  },
  board: {
    copy: (db, ids) => db.board.findMany({ where: { copies: { some: { id: { in: ids } } } }, select }),
    chip: (db, ids) => db.board.findMany({ where: { placements: { some: { chipId: { in: ids } } } }, select }),
    code: (db, ids) => db.board.findMany({ where: { placements: { some: { codeId: { in: ids } } } }, select }),
  },
  chip: {
    code: (db, ids) => db.chip.findMany({ where: { codes: { some: { id: { in: ids } } } }, select }),
  },
  code: {
    house: (db, ids) => db.partCode.findMany({ where: { houseId: { in: ids } }, select }),
    chip: (db, ids) => db.partCode.findMany({ where: { chipId: { in: ids } }, select }),
    board: (db, ids) => db.partCode.findMany({ where: { sightings: { some: { boardId: { in: ids } } } }, select }),
  },
  spare: {
    member: (db, ids) => db.spare.findMany({ where: { memberId: { in: ids } }, select }),
    code: (db, ids) => db.spare.findMany({ where: { codeId: { in: ids } }, select }),
    chip: (db, ids) => db.spare.findMany({ where: { chipId: { in: ids } }, select }),
    board: (db, ids) => db.spare.findMany({ where: { boardId: { in: ids } }, select }),
  },
};

/** The documents of a kind that repeat something of these records, which are given by kind. */
export async function dependentIds(
  db: Db,
  kind: SearchKind,
  changed: ReadonlyMap<string, readonly string[]>,
): Promise<string[]> {
  const found: string[] = [];
  for (const [of, dependents] of Object.entries(DEPENDENTS[kind])) {
    const ids = changed.get(of);
    if (!ids) continue;
    const rows = await dependents(db, [...ids]);
    found.push(...rows.map((row) => row.id));
  }
  return found;
}
