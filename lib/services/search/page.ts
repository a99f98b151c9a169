import { normalForm } from "#lib/core/marking/index.ts";
import { CASE_OUTCOMES, type CaseOutcome } from "#lib/core/shared/vocabulary.ts";
import type { Facets, SearchAnswer, SearchHit } from "#lib/infra/search/types.ts";
import type { Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { askedCode } from "./asked-code.ts";
import { search } from "./find.ts";
import { FOUND_KINDS, SearchInput, type FoundKind } from "./schema.ts";

/** Hits of a kind that the first page of a mixed answer would not show: so that no kind goes unseen. */
const FILLED_IN = 3;
/** Boards offered as filters; the rest is reached by the words of their name. */
const MOST_BOARDS = 12;

export interface HitGroup {
  kind: FoundKind;
  /** All of this kind, as the facets count. */
  total: number;
  hits: SearchHit[];
}

export interface FacetValue<T extends string = string> {
  value: T;
  name: string;
  count: number;
}

/** Whether the answer is whole: `building` finds what is indexed so far, `unavailable` finds nothing. */
export type IndexState = "ready" | "building" | "unavailable";

export interface SearchPage {
  /** By kind; the kind of the best hit first. */
  groups: HitGroup[];
  kinds: FacetValue<FoundKind>[];
  boards: FacetValue[];
  outcomes: FacetValue<CaseOutcome>[];
  /** Exact up to 200; with `more` there are more. */
  total: number;
  more: boolean;
  /** Of the next page. */
  next: string | null;
  /** Codes that exist and look like the one asked for. */
  didYouMean: string[];
  /** The query, where it reads as a part code that nobody has recorded yet. */
  unrecorded: string | null;
  /** The query reads as a part code, recorded or not. */
  isCode: boolean;
  state: IndexState;
}

/** A page of results: hits by kind, filters with their counts, and whether the index can be relied on. */
export async function searchPage(ctx: Ctx, raw: unknown): Promise<SearchPage> {
  const { q, kind: kinds, cursor } = SearchInput.parse(raw);
  const found = await answered(ctx, raw);
  const code = askedCode(q);
  if (!found) return { ...NOTHING, unrecorded: null, isCode: code !== null, state: "unavailable" };
  const [groups, state] = await Promise.all([grouped(ctx, raw, found, !kinds && !cursor), indexState(ctx)]);
  return {
    groups,
    ...facetLists(found.facets),
    total: found.total,
    more: found.more,
    next: found.cursor ?? null,
    didYouMean: found.didYouMean,
    unrecorded: code !== null && !isRecorded(code, found.hits) ? code : null,
    isCode: code !== null,
    state,
  };
}

/** Whether a chip or a code with just this print is among the hits: such a page stands at the top. */
function isRecorded(code: string, hits: readonly SearchHit[]): boolean {
  const form = normalForm(code);
  return hits.some((hit) => (hit.kind === "code" || hit.kind === "chip") && normalForm(hit.title) === form);
}

const NOTHING = { groups: [], kinds: [], boards: [], outcomes: [], total: 0, more: false, next: null, didYouMean: [] };

/** Null where the index does not answer. */
async function answered(ctx: Ctx, raw: unknown): Promise<SearchAnswer | null> {
  try {
    return await search(ctx, raw);
  } catch (error) {
    if (error instanceof ServiceError && error.code === "unavailable") return null;
    throw error;
  }
}

async function grouped(ctx: Ctx, raw: unknown, found: SearchAnswer, fillIn: boolean): Promise<HitGroup[]> {
  const shown = [...new Set(found.hits.map((hit) => hit.kind))];
  const unseen = fillIn ? FOUND_KINDS.filter((kind) => found.facets.kind[kind] && !shown.includes(kind)) : [];
  const filled = await Promise.all(
    unseen.map((kind) => search(ctx, { ...(raw as object), kind, limit: FILLED_IN, cursor: undefined })),
  );
  const hits = [...found.hits, ...filled.flatMap((answer) => answer.hits)];
  return [...shown, ...unseen].map((kind) => ({
    kind,
    total: found.facets.kind[kind] ?? 0,
    hits: hits.filter((hit) => hit.kind === kind),
  }));
}

function facetLists({ kind, board, outcome }: Facets): Pick<SearchPage, "kinds" | "boards" | "outcomes"> {
  return {
    kinds: FOUND_KINDS.flatMap((value) => {
      const count = kind[value];
      return count ? [{ value, name: value, count }] : [];
    }),
    boards: Object.entries(board)
      .map(([value, { name, count }]) => ({ value, name, count }))
      .toSorted((a, b) => b.count - a.count || (a.name < b.name ? -1 : 1))
      .slice(0, MOST_BOARDS),
    outcomes: CASE_OUTCOMES.flatMap((value) => {
      const count = outcome[value];
      return count ? [{ value, name: value, count }] : [];
    }),
  };
}

/** Whether search knows everything that the database holds. */
export async function indexState(ctx: Ctx): Promise<IndexState> {
  try {
    const [{ ok }, { documents, rebuilding }] = await Promise.all([ctx.search.health(), ctx.search.stats()]);
    if (!ok) return "unavailable";
    if (rebuilding) return "building";
    if (documents > 0) return "ready";
    // Right after the start nothing is indexed yet; an empty club has nothing to index.
    const any = await ctx.db.board.findFirst({ select: { id: true } });
    return any ? "building" : "ready";
  } catch {
    return "unavailable";
  }
}
