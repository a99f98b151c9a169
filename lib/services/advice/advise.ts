import {
  likelyCauses,
  nextChecks,
  similarCases,
  type CauseEstimate,
  type KnownCase,
  type NextCheck,
  type PastCause,
  type SimilarCase,
} from "#lib/core/advice/index.ts";
import { feedsOf, type BoardFacts } from "#lib/core/board/index.ts";
import type { Failure } from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import {
  CASE_FACTS,
  checkContext,
  checkFacts,
  judgedCheck,
  knownCase,
  tellingWords,
  visibleCases,
} from "../cases/index.ts";
import type { Ctx } from "../context.ts";
import { invalid, notFound } from "../errors.ts";
import { slugOfText } from "../slug.ts";
import { AdviceInput } from "./schema.ts";

/** Cases that weigh in on the causes; those shown are the first ten. */
const WEIGHED = 25;
const SHOWN = 10;

const PAST = {
  ...CASE_FACTS,
  id: true,
  title: true,
  outcome: true,
  boardId: true,
  board: { select: { slug: true, name: true } },
  causes: {
    select: {
      id: true,
      at: true,
      failure: true,
      description: true,
      chip: { select: { slug: true, name: true } },
      cure: { select: { action: true, description: true, fittedText: true } },
      _count: { select: { proofs: true } },
    },
    orderBy: { position: "asc" },
  },
  confirmations: { select: { helped: true, causeId: true } },
} as const satisfies Prisma.FaultCaseSelect;
type PastRow = Prisma.FaultCaseGetPayload<{ select: typeof PAST }>;

export interface SimilarView extends SimilarCase {
  title: string;
  board: string | null;
  outcome: string;
  cause: string;
  cure: string;
  helped: number;
  didNotHelp: number;
}

export interface Advice {
  similar: SimilarView[];
  causes: CauseEstimate["causes"];
  /** Probability of a cause that is not in the list. */
  somethingElse: number;
  next: NextCheck[];
  basis: CauseEstimate["basis"];
}

/** Advice for a repair that is described whole in the request. Nothing is stored. */
export async function advise(ctx: Ctx, raw: unknown): Promise<Advice> {
  const input = AdviceInput.parse(raw);
  const board = input.board
    ? await ctx.db.board.findFirst({ where: { slug: input.board, hiddenAt: null }, select: { id: true } })
    : null;
  if (input.board && !board)
    throw invalid("board", `There is no board "${input.board}". Send null for a board without a record.`);
  const facts = board ? await ctx.boards.get(board.id) : null;
  return adviceFor(ctx, describedCase(input, facts), facts, input.except);
}

/** Advice for a case as it stands. */
export async function adviseCase(ctx: Ctx, number: number): Promise<Advice> {
  const row = await ctx.db.faultCase.findFirst({
    where: { number, AND: [visibleCases(ctx.actor)] },
    select: { ...CASE_FACTS, boardId: true },
  });
  if (!row) throw notFound(`case ${number}`);
  const facts = row.boardId ? await ctx.boards.get(row.boardId) : null;
  const known = knownCase(row, facts);
  // Its own cause, once it is named, must not answer for it.
  return adviceFor(ctx, { ...known, facts: { ...known.facts, parts: [] } }, facts, number);
}

function describedCase(input: AdviceInput, facts: BoardFacts | null): KnownCase {
  const checks = input.checks.map(({ verdict, ...check }, index) => {
    const judged = judgedCheck(facts, { ...check, ...(verdict && { verdict, reason: "as sent" }) }, `checks.${index}.`);
    return checkFacts(judged);
  });
  return {
    facts: { symptoms: input.symptoms.map(slugOfText), words: tellingWords(input.symptoms.join(" ")), checks },
    context: checkContext(facts),
  };
}

async function adviceFor(ctx: Ctx, query: KnownCase, facts: BoardFacts | null, except?: number): Promise<Advice> {
  const options = { limit: WEIGHED, ...(except !== undefined && { exclude: except }) };
  const numbers: number[] = [];
  similarCases(
    query,
    ctx.cases,
    (number) => {
      numbers.push(number);
      return null;
    },
    options,
  );
  const rows = await ctx.db.faultCase.findMany({
    where: { number: { in: numbers }, AND: [visibleCases(ctx.actor)] },
    select: PAST,
  });
  const past = new Map<number, { row: PastRow; known: KnownCase }>();
  for (const row of rows) {
    const boardFacts = row.boardId ? await ctx.boards.get(row.boardId) : null;
    past.set(row.number, { row, known: knownCase(row, boardFacts) });
  }
  const similar = similarCases(query, ctx.cases, (number) => past.get(number)?.known ?? null, options);
  const causesOfPast = rows.flatMap(pastCauses);
  const structure = {
    placements: facts?.placements ?? [],
    feeds: (at: string) => (facts ? feedsOf(facts, at) : []),
  };
  const estimate = likelyCauses(query, similar, causesOfPast, structure);
  const solved = similar.flatMap(({ case: number }) => {
    const found = past.get(number);
    return found ? [{ known: found.known, causes: pastCauses(found.row) }] : [];
  });
  return {
    similar: similar.slice(0, SHOWN).flatMap((one) => {
      const found = past.get(one.case);
      return found ? [similarView(one, found.row)] : [];
    }),
    causes: estimate.causes,
    somethingElse: estimate.somethingElse,
    next: nextChecks(query, estimate, solved),
    basis: estimate.basis,
  };
}

function pastCauses(row: PastRow): (PastCause & { board: string | null })[] {
  return row.causes.map((cause) => {
    const about = row.confirmations.filter((one) => one.causeId === null || one.causeId === cause.id);
    return {
      case: row.number,
      board: row.board?.slug ?? null,
      at: cause.at,
      chip: cause.chip?.slug ?? null,
      failure: cause.failure as Failure,
      proved: cause._count.proofs > 0,
      helped: about.filter((one) => one.helped).length,
      didNotHelp: about.filter((one) => !one.helped).length,
    };
  });
}

function similarView(one: SimilarCase, row: PastRow): SimilarView {
  return {
    ...one,
    title: row.title,
    board: row.board?.name ?? null,
    outcome: row.outcome,
    cause: row.causes
      .map((cause) => [cause.at, cause.chip?.name, cause.description || cause.failure].filter(Boolean).join(" "))
      .join("; "),
    cure: row.causes
      .flatMap((cause) =>
        cause.cure
          ? [cause.cure.description || [cause.cure.action, cause.cure.fittedText].filter(Boolean).join(" ")]
          : [],
      )
      .join("; "),
    helped: row.confirmations.filter((confirmation) => confirmation.helped).length,
    didNotHelp: row.confirmations.filter((confirmation) => !confirmation.helped).length,
  };
}
