import type { CaseOutcome, Failure } from "#lib/core/shared/index.ts";
import type { Ctx } from "../context.ts";
import { visibleCases } from "../visible-cases.ts";

/** Causes that are counted: far above what a club has on one board. */
const MOST_CAUSES = 5_000;

export interface CulpritCase {
  number: number;
  title: string;
  outcome: CaseOutcome;
  failure: Failure;
}

/** What failed on a board, and in which cases. */
export interface Culprit {
  /** Designator or net; empty: the cases do not say where. */
  at: string;
  chip: { slug: string; name: string } | null;
  /** Newest first. */
  cases: CulpritCase[];
}

/** What failed on a board in the cases that the actor may see, the most frequent first. */
export async function boardCulprits(ctx: Ctx, slug: string): Promise<Culprit[]> {
  const rows = await ctx.db.cause.findMany({
    where: { case: { AND: [visibleCases(ctx.actor), { board: { slug } }] } },
    select: {
      at: true,
      failure: true,
      chip: { select: { slug: true, name: true } },
      case: { select: { number: true, title: true, outcome: true } },
    },
    orderBy: [{ case: { number: "desc" } }, { position: "asc" }],
    take: MOST_CAUSES,
  });
  const culprits = new Map<string, Culprit>();
  for (const { at, failure, chip, case: of } of rows) {
    // A pin belongs to its part: U7.14 counts for U7.
    const place = (at.split(".")[0] ?? "").toUpperCase();
    const culprit = culprits.get(place) ?? { at: place, chip, cases: [] };
    culprit.chip ??= chip;
    culprit.cases.push({ ...of, outcome: of.outcome as CaseOutcome, failure: failure as Failure });
    culprits.set(place, culprit);
  }
  return [...culprits.values()].toSorted((a, b) => b.cases.length - a.cases.length || (a.at < b.at ? -1 : 1));
}
