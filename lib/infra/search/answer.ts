import type { Query } from "minisearch";
import { codeKeys, lookAlikes } from "#lib/core/marking/index.ts";
import { highlight, MARK, snippet } from "./highlight.ts";
import { byRank } from "./index-store.ts";
import type { IndexStore, Match } from "./index-store.ts";
import { allOf, isAnswered, one, planQuery, rarest, someOf, telling } from "./query-plan.ts";
import type { QueryPlan, Wanted } from "./query-plan.ts";
import { COUNTED_TO, MOST_HITS, SEARCH_KINDS, SearchError } from "./types.ts";
import type {
  Facets,
  SearchAnswer,
  SearchDocument,
  SearchHit,
  SearchKind,
  SearchQuery,
  ViewerVisibility,
} from "./types.ts";

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

// Which filters of a query a document passes, as bits: thousands of hits are asked at each keystroke.
const KIND = 1;
const BOARD = 2;
const OUTCOME = 4;
const ALL = KIND | BOARD | OUTCOME;

function passed(document: SearchDocument, { kinds, board, outcome }: SearchQuery): number {
  return (
    (kinds === undefined || kinds.length === 0 || kinds.includes(document.kind) ? KIND : 0) |
    (board === undefined || document.board?.slug === board ? BOARD : 0) |
    (outcome === undefined || document.outcome === outcome ? OUTCOME : 0)
  );
}

function passesAll({ document }: Match, query: SearchQuery): boolean {
  return passed(document, query) === ALL;
}

/** Looks up what the one who asks may see. */
type Find = (query: Query, among?: ReadonlySet<string>) => Match[];

/** Everything in sight of the one who asks, the most fitting first; a document that fits better comes once. */
function matches(store: IndexStore, query: SearchQuery, plan: QueryPlan): Match[] {
  const find: Find = (asked, among) =>
    store.find(asked, among).filter(({ document }) => maySee(document, query.visibility));
  const strict = scaled(strictly(store, plan.strict, find), 0.5, 1);
  if (strict.filter((match) => passesAll(match, query)).length >= TOO_FEW) return strict;
  const taken = new Set(strict.map(({ document }) => document.id));
  const loose = loosely(store, telling(plan.relaxed), find, taken);
  return [...strict, ...scaled(loose, 0, 0.5)];
}

/** The ids of what answers the rarest of several, so that the common ones need not be worked out for all documents. */
function candidates(store: IndexStore, wanted: readonly Wanted[], find: Find): Set<string> | undefined {
  const rare = rarest(store, wanted);
  return rare && new Set(find(one(rare)).map(({ document }) => document.id));
}

/** Documents that answer everything. */
function strictly(store: IndexStore, wanted: readonly Wanted[], find: Find): Match[] {
  const all = allOf(wanted);
  if (!all) return [];
  return find(all, wanted.length > 1 ? candidates(store, wanted, find) : undefined);
}

/**
 * Documents that miss something: those that have every code, place and signal asked for, since a person who types one
 * means that one. When no code was asked for, or nothing has them all: those with half of the whole, else anything.
 */
function loosely(store: IndexStore, wanted: readonly Wanted[], find: Find, taken: ReadonlySet<string>): Match[] {
  if (wanted.length === 0) return [];
  const some = someOf(wanted);
  const required = wanted.filter(({ isWord }) => !isWord);
  const isNew = ({ document }: Match): boolean => !taken.has(document.id);
  const hasHalf = ({ terms }: Match): boolean => answered(wanted, terms) >= wanted.length / 2;
  if (required.length > 0) {
    const found = find(some, candidates(store, required, find)).filter(isNew);
    const best = found.filter((match) => answered(required, match.terms) === required.length);
    if (best.length > 0 || taken.size > 0) return best;
  }
  const found = find(some).filter(isNew);
  const fair = found.filter(hasHalf);
  return fair.length > 0 || taken.size > 0 ? fair : found;
}

function answered(wanted: readonly Wanted[], terms: readonly string[]): number {
  const held = new Set(terms);
  return wanted.filter((each) => isAnswered(each, held)).length;
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

function addOne<K>(counts: Map<K, number>, key: K): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

function countFacets(found: readonly Match[], query: SearchQuery): Facets {
  const kinds = new Map<SearchKind, number>();
  const boards = new Map<string, number>();
  const names = new Map<string, string>();
  const outcomes = new Map<string, number>();
  for (const { document } of found) {
    const filters = passed(document, query);
    if ((filters | KIND) === ALL) addOne(kinds, document.kind);
    if ((filters | BOARD) === ALL && document.board) {
      addOne(boards, document.board.slug);
      names.set(document.board.slug, document.board.name);
    }
    if ((filters | OUTCOME) === ALL && document.outcome !== undefined) addOne(outcomes, document.outcome);
  }
  return {
    kind: Object.fromEntries(kinds),
    board: Object.fromEntries([...boards].map(([slug, count]) => [slug, { name: names.get(slug) ?? slug, count }])),
    outcome: Object.fromEntries(outcomes),
  };
}

/** Those of a list that match, with marks, each once, in their order. */
function matching(texts: readonly string[], matched: ReadonlySet<string>): string[] {
  return [...new Set(texts)].map((text) => highlight(text, matched)).filter((text) => text.includes(MARK.before));
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
      codes: [...new Set(document.codes)]
        .filter((code) => codeKeys(code).some((key) => matched.has(key)))
        .map((code) => highlight(code, matched)),
      refs: matching(document.refs, matched),
      signals: matching(document.signals, matched),
      symptoms: matching(document.symptoms, matched),
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
