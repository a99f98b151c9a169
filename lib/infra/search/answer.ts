import { codeKeys, lookAlikes } from "#lib/core/marking/index.ts";
import { highlight, snippet } from "./highlight.ts";
import { byRank } from "./index-store.ts";
import type { IndexStore, Match } from "./index-store.ts";
import { allOf, isAnswered, planQuery, someOf } from "./query-plan.ts";
import type { QueryPlan, Wanted } from "./query-plan.ts";
import { COUNTED_TO, MOST_HITS, SEARCH_KINDS, SearchError } from "./types.ts";
import type { Facets, SearchAnswer, SearchDocument, SearchHit, SearchQuery, ViewerVisibility } from "./types.ts";

/** Fewer strict hits than this, and the query is tried relaxed. */
const TOO_FEW = 10;

/** Suggestions for a code that is not there. */
const MOST_SUGGESTIONS = 3;

function maySee({ visibility }: SearchDocument, viewer: ViewerVisibility): boolean {
  if (visibility === "public") return true;
  if (viewer === "public") return false;
  if (visibility === "members") return true;
  return viewer !== "members" && visibility.memberId === viewer.memberId;
}

/** Which filters of the query a document passes. */
interface Passed {
  kind: boolean;
  board: boolean;
  outcome: boolean;
}

function passed(document: SearchDocument, { kinds, board, outcome }: SearchQuery): Passed {
  return {
    kind: kinds === undefined || kinds.length === 0 || kinds.includes(document.kind),
    board: board === undefined || document.board?.slug === board,
    outcome: outcome === undefined || document.outcome === outcome,
  };
}

function passesAll({ document }: Match, query: SearchQuery): boolean {
  const { kind, board, outcome } = passed(document, query);
  return kind && board && outcome;
}

/** Everything in sight of the one who asks, the most fitting first; a document that fits better comes once. */
function matches(store: IndexStore, query: SearchQuery, plan: QueryPlan): Match[] {
  const inSight = (found: Match[]): Match[] => found.filter(({ document }) => maySee(document, query.visibility));
  const all = allOf(plan.strict);
  const strict = all ? scaled(inSight(store.find(all)), 0.5, 1) : [];
  if (strict.filter((match) => passesAll(match, query)).length >= TOO_FEW) return strict;
  const some = someOf(plan.relaxed);
  if (!some) return strict;
  const taken = new Set(strict.map(({ document }) => document.id));
  const loose = inSight(store.find(some)).filter(({ document }) => !taken.has(document.id));
  return [...strict, ...scaled(worthShowing(loose, plan.relaxed, strict.length > 0), 0, 0.5)];
}

/**
 * Of the hits that miss something: those that have every code, place and signal asked for and half of the rest. When
 * nothing is left of them and nothing fitted strictly either, those with half, then all.
 */
function worthShowing(found: readonly Match[], wanted: readonly Wanted[], enough: boolean): Match[] {
  const known = wanted.filter(({ terms }) => terms.size > 0);
  const required = known.filter(({ isWord }) => !isWord);
  const half = Math.ceil(known.length / 2);
  const counted = found.map((match) => {
    const terms = new Set(match.terms);
    const answers = (one: Wanted): boolean => isAnswered(one, terms);
    return { match, hasRequired: required.every(answers), count: known.filter(answers).length };
  });
  const best = counted.filter(({ hasRequired, count }) => hasRequired && count >= half);
  if (best.length > 0 || enough) return best.map(({ match }) => match);
  const fair = counted.filter(({ count }) => count >= half);
  return (fair.length > 0 ? fair : counted).map(({ match }) => match);
}

/** Scores brought between two bounds in the same order; the upper bound is reached by the best. */
function scaled(found: readonly Match[], above: number, most: number): Match[] {
  const top = found[0]?.score ?? 1;
  return found.map((match) => ({ ...match, score: above + (most - above) * (match.score / top) }));
}

/** Everything in sight, for a query without words. */
function listing(store: IndexStore, query: SearchQuery): Match[] {
  return [...store.documents()]
    .filter((document) => maySee(document, query.visibility))
    .toSorted((a, b) => b.updatedAt - a.updatedAt || byRank(a, b))
    .map((document) => ({ document, score: 1, terms: [] }));
}

function countFacets(found: readonly Match[], query: SearchQuery): Facets {
  const facets: Facets = { kind: {}, board: {}, outcome: {} };
  for (const { document } of found) {
    const { kind, board, outcome } = passed(document, query);
    if (board && outcome) facets.kind[document.kind] = (facets.kind[document.kind] ?? 0) + 1;
    if (kind && outcome && document.board) {
      const { slug, name } = document.board;
      facets.board[slug] = { name, count: (facets.board[slug]?.count ?? 0) + 1 };
    }
    if (kind && board && document.outcome !== undefined) {
      facets.outcome[document.outcome] = (facets.outcome[document.outcome] ?? 0) + 1;
    }
  }
  return facets;
}

function hit({ document, score, terms }: Match): SearchHit {
  const matched = new Set(terms);
  const { plain, marked } = snippet(document.body, matched);
  const { kind, id, title, url, board, outcome, year } = document;
  return {
    kind,
    id,
    title,
    url,
    snippet: plain,
    highlights: {
      title: highlight(title, matched),
      snippet: marked,
      codes: document.codes
        .filter((code) => codeKeys(code).some((key) => matched.has(key)))
        .map((code) => highlight(code, matched)),
    },
    ...(board && { board }),
    ...(outcome !== undefined && { outcome }),
    ...(year !== undefined && { year }),
    score: Math.max(Math.round(score * 10_000) / 10_000, 0.0001),
  };
}

/** Codes in sight that a worn print could be, for codes that nothing answers. */
function suggestions(store: IndexStore, { visibility }: SearchQuery, plan: QueryPlan): string[] {
  const missing = plan.strict.filter(({ isWord, terms }) => !isWord && terms.size === 0);
  const found = new Set<string>();
  for (const form of missing.flatMap(({ key }) => lookAlikes(key))) {
    if (found.size >= MOST_SUGGESTIONS) break;
    if (!store.keys.has(form)) continue;
    const seen = store.find(form).find(({ document }) => maySee(document, visibility))?.document;
    if (seen) found.add(seen.codes.find((code) => codeKeys(code).includes(form)) ?? form);
  }
  return [...found];
}

const CURSOR = /^o([1-9]\d{0,2})$/;

function startOf(cursor: string | undefined): number {
  if (cursor === undefined) return 0;
  const start = Number(CURSOR.exec(cursor)?.[1] ?? NaN);
  if (!(start < COUNTED_TO)) throw new SearchError("bad-query", "The cursor is not one that this search gave out.");
  return start;
}

function checkQuery({ limit, kinds }: SearchQuery): void {
  if (!Number.isInteger(limit) || limit < 1 || limit > MOST_HITS) {
    throw new SearchError("bad-query", `limit must be a whole number from 1 to ${MOST_HITS}.`);
  }
  const unknown = kinds?.find((kind) => !SEARCH_KINDS.includes(kind));
  if (unknown !== undefined) throw new SearchError("bad-query", `“${String(unknown)}” is no kind of record.`);
}

/** Answers a query from an index; throws a `SearchError` for a query that cannot be meant. */
export function answer(store: IndexStore, query: SearchQuery): Omit<SearchAnswer, "tookMs" | "engine"> {
  checkQuery(query);
  const start = startOf(query.cursor);
  const plan = planQuery(store, query.q);
  const found = plan.strict.length === 0 ? listing(store, query) : matches(store, query, plan);
  const passing = found.filter((match) => passesAll(match, query));
  const total = Math.min(passing.length, COUNTED_TO);
  const end = Math.min(start + query.limit, total);
  return {
    hits: passing.slice(start, end).map(hit),
    facets: countFacets(found, query),
    total,
    more: passing.length > COUNTED_TO,
    ...(end < total && { cursor: `o${end}` }),
    didYouMean: suggestions(store, query, plan),
  };
}
