import { BOARD_KINDS, type BoardKind, type CaseOutcome, type Failure } from "#lib/core/shared/vocabulary.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import { isMember, type Ctx } from "../context.ts";

/** How much of each list the first page shows: it must be taken in at one look. */
const SHOWN = { asking: 6, codes: 8, cured: 6, symptoms: 12, mine: 6, boardsOfKind: 5 } as const;
/** Boards that are read to be counted by kind. A club with more sees the rest on the boards' own page. */
const MOST_BOARDS = 500;

const PUBLISHED = { state: "published" } as const satisfies Prisma.FaultCaseWhereInput;
const UNFINISHED: CaseOutcome[] = ["open", "waiting"];
const CURED: CaseOutcome[] = ["cured", "cured-cause-unknown"];
const BOARD = { select: { slug: true, name: true } } as const;

export interface ClubOverview {
  /** Published cases. */
  cases: number;
  /** Nothing is recorded yet: neither a case nor a board. */
  isEmpty: boolean;
  asking: { number: number; title: string; asks: string; board: BoardName | null; by: string; openedAt: string }[];
  askingInAll: number;
  unknownCodes: { id: string; code: string; board: BoardName | null; at: string }[];
  unknownCodesInAll: number;
  cured: {
    number: number;
    title: string;
    lesson: string;
    /** The first one that was recorded. */
    cause: { at: string; failure: Failure; chip: string } | null;
    board: BoardName | null;
    when: string;
  }[];
  symptoms: { slug: string; label: string; cases: number }[];
  boards: { kind: BoardKind; count: number; most: (BoardName & { cases: number })[] }[];
  /** A member's drafts and unfinished cases; empty for a visitor. */
  mine: { number: number; title: string; isDraft: boolean; outcome: CaseOutcome; board: BoardName | null }[];
}
interface BoardName {
  slug: string;
  name: string;
}

/** What the first page shows: what waits for somebody, what was cured lately, and where to begin looking. */
export async function clubOverview(ctx: Ctx): Promise<ClubOverview> {
  const [cases, { asking, askingInAll }, { unknownCodes, unknownCodesInAll }, cured, symptoms, boards, mine] =
    await Promise.all([
      ctx.db.faultCase.count({ where: PUBLISHED }),
      askingCases(ctx),
      codesWithoutName(ctx),
      curedLately(ctx),
      mostMetSymptoms(ctx),
      boardsByKind(ctx),
      ownUnfinished(ctx),
    ]);
  const isEmpty = cases === 0 && boards.length === 0;
  return { cases, isEmpty, asking, askingInAll, unknownCodes, unknownCodesInAll, cured, symptoms, boards, mine };
}

async function askingCases(ctx: Ctx): Promise<Pick<ClubOverview, "asking" | "askingInAll">> {
  const where = { ...PUBLISHED, outcome: { in: UNFINISHED }, asksHelp: { not: "" } };
  const [rows, askingInAll] = await Promise.all([
    ctx.db.faultCase.findMany({
      where,
      select: {
        number: true,
        title: true,
        asksHelp: true,
        openedAt: true,
        board: BOARD,
        author: { select: { name: true } },
      },
      orderBy: { openedAt: "desc" },
      take: SHOWN.asking,
    }),
    ctx.db.faultCase.count({ where }),
  ]);
  const asking = rows.map(({ author, asksHelp, openedAt, ...row }) => ({
    ...row,
    asks: asksHelp,
    by: author.name,
    openedAt: openedAt.toISOString(),
  }));
  return { asking, askingInAll };
}

async function codesWithoutName(ctx: Ctx): Promise<Pick<ClubOverview, "unknownCodes" | "unknownCodesInAll">> {
  const where = { chipId: null, hiddenAt: null };
  const [rows, unknownCodesInAll] = await Promise.all([
    ctx.db.partCode.findMany({
      where,
      select: {
        id: true,
        code: true,
        sightings: {
          where: { OR: [{ boardId: null }, { board: { hiddenAt: null } }] },
          select: { at: true, board: BOARD },
          orderBy: { seenAt: "desc" },
          take: 1,
        },
      },
      // The ones met most often come first: a name for them helps the most people.
      orderBy: [{ sightings: { _count: "desc" } }, { createdAt: "desc" }, { id: "asc" }],
      take: SHOWN.codes,
    }),
    ctx.db.partCode.count({ where }),
  ]);
  const unknownCodes = rows.map(({ sightings: [last], ...row }) => ({
    ...row,
    board: last?.board ?? null,
    at: last?.at ?? "",
  }));
  return { unknownCodes, unknownCodesInAll };
}

async function curedLately(ctx: Ctx): Promise<ClubOverview["cured"]> {
  const rows = await ctx.db.faultCase.findMany({
    where: { ...PUBLISHED, outcome: { in: CURED } },
    select: {
      number: true,
      title: true,
      lesson: true,
      openedAt: true,
      closedAt: true,
      board: BOARD,
      causes: {
        select: { at: true, failure: true, chip: { select: { name: true } } },
        orderBy: { position: "asc" },
        take: 1,
      },
    },
    orderBy: [{ closedAt: { sort: "desc", nulls: "last" } }, { number: "desc" }],
    take: SHOWN.cured,
  });
  return rows.map(({ closedAt, openedAt, causes: [cause], ...row }) => ({
    ...row,
    cause: cause ? { at: cause.at, failure: cause.failure as Failure, chip: cause.chip?.name ?? "" } : null,
    when: (closedAt ?? openedAt).toISOString(),
  }));
}

async function mostMetSymptoms(ctx: Ctx): Promise<ClubOverview["symptoms"]> {
  const counted = await ctx.db.caseSymptom.groupBy({
    by: ["symptomId"],
    where: { case: PUBLISHED },
    _count: { caseId: true },
    orderBy: [{ _count: { caseId: "desc" } }, { symptomId: "asc" }],
    take: SHOWN.symptoms,
  });
  const rows = await ctx.db.symptom.findMany({
    where: { id: { in: counted.map((one) => one.symptomId) } },
    select: { id: true, slug: true, label: true },
  });
  return counted.flatMap(({ symptomId, _count }) =>
    rows.filter((row) => row.id === symptomId).map(({ slug, label }) => ({ slug, label, cases: _count.caseId })),
  );
}

async function boardsByKind(ctx: Ctx): Promise<ClubOverview["boards"]> {
  const rows = await ctx.db.board.findMany({
    where: { hiddenAt: null },
    select: { slug: true, name: true, kind: true, _count: { select: { cases: { where: PUBLISHED } } } },
    orderBy: { name: "asc" },
    take: MOST_BOARDS,
  });
  return BOARD_KINDS.flatMap((kind) => {
    const ofKind = rows.filter((row) => row.kind === kind);
    const most = ofKind
      .map(({ slug, name, _count }) => ({ slug, name, cases: _count.cases }))
      .toSorted((a, b) => b.cases - a.cases)
      .slice(0, SHOWN.boardsOfKind);
    return ofKind.length === 0 ? [] : [{ kind, count: ofKind.length, most }];
  });
}

async function ownUnfinished(ctx: Ctx): Promise<ClubOverview["mine"]> {
  if (!isMember(ctx.actor)) return [];
  const rows = await ctx.db.faultCase.findMany({
    where: {
      authorId: ctx.actor.id,
      OR: [{ state: "draft" }, { ...PUBLISHED, outcome: { in: UNFINISHED } }],
    },
    select: { number: true, title: true, state: true, outcome: true, board: BOARD },
    orderBy: { updatedAt: "desc" },
    take: SHOWN.mine,
  });
  return rows.map(({ state, outcome, ...row }) => ({
    ...row,
    isDraft: state === "draft",
    outcome: outcome as CaseOutcome,
  }));
}
