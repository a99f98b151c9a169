// The one door to search. Two engines stand behind it, so it promises only what both can keep.

export const SEARCH_KINDS = ["case", "board", "chip", "code", "spare"] as const;
export type SearchKind = (typeof SEARCH_KINDS)[number];

/** Who may see a document: everybody, members, or only the member who wrote it (a draft). */
export type DocVisibility = "public" | "members" | { memberId: string };

/** Who asks: a visitor, a member of whom only the membership counts, or a certain member. */
export type ViewerVisibility = "public" | "members" | { memberId: string };

/** What is known of one record for search. Codes, signals and places are as written: the engine makes the keys. */
export interface SearchDocument {
  /** Letters, digits, `_` and `-`; the same id replaces the document. */
  id: string;
  kind: SearchKind;
  title: string;
  url: string;
  /** Prose, plain text. Only the first `LONGEST_BODY` characters are searched. */
  body: string;
  codes: readonly string[];
  signals: readonly string[];
  refs: readonly string[];
  symptoms: readonly string[];
  board?: { slug: string; name: string };
  boardKind?: string;
  outcome?: string;
  year?: number;
  visibility: DocVisibility;
  /** Lifts a document among equal ones, for instance confirmations of a cure; 0 is ordinary. */
  boost: number;
  /** Epoch milliseconds. The newer of two equal hits comes first. */
  updatedAt: number;
}

export interface SearchQuery {
  /** As typed. Empty lists everything the filters leave, the newest first. No space at the end: the last word is unfinished. */
  q: string;
  /** Left out or empty: every kind. */
  kinds?: readonly SearchKind[];
  /** Slug of a board. */
  board?: string;
  outcome?: string;
  /** Hits of one answer, 1 to 50. */
  limit: number;
  /** From an earlier answer to the same query. */
  cursor?: string;
  visibility: ViewerVisibility;
}

/** Texts with U+E000 before and U+E001 behind each match. Plain text, never HTML: split at the marks and draw. */
export interface Highlights {
  title: string;
  snippet: string;
  /** Only the document's codes that match; the same for its places, signals and symptoms. */
  codes: string[];
  refs: string[];
  signals: string[];
  symptoms: string[];
}

export interface SearchHit {
  kind: SearchKind;
  id: string;
  title: string;
  url: string;
  /** The part of the body around the matches, without marks. */
  snippet: string;
  highlights: Highlights;
  board?: { slug: string; name: string };
  outcome?: string;
  year?: number;
  /** Above 0, at most 1, falling through the answer. Comparable within one answer only. */
  score: number;
}

/** Counts of the hits by value. Each leaves its own filter out (the others apply), so that a page can offer the rest. */
export interface Facets {
  kind: Partial<Record<SearchKind, number>>;
  board: Record<string, { name: string; count: number }>;
  outcome: Record<string, number>;
}

export interface SearchAnswer {
  hits: SearchHit[];
  facets: Facets;
  /** Exact up to 200. */
  total: number;
  /** True when there are more than `total`: shown as "200+". */
  more: boolean;
  /** For the next hits of the same query; left out at the end and beyond 200. */
  cursor?: string;
  /** Codes that exist and look like the ones asked for on a worn print. Only when those were not found. */
  didYouMean: string[];
  tookMs: number;
  engine: string;
}

export interface SearchHealth {
  ok: boolean;
  engine: string;
  /** For the steward: what is wrong, or what is being done. */
  detail: string;
}

export interface SearchStats {
  engine: string;
  documents: number;
  byKind: Record<SearchKind, number>;
  rebuilding: boolean;
}

export interface RebuildProgress {
  documents: number;
}

/** A search index. Every promise rejects with a `SearchError` only. */
export interface SearchEngine {
  readonly name: string;
  /** Adds or replaces. When it resolves, a search finds them. */
  upsert(documents: readonly SearchDocument[]): Promise<void>;
  /** Ids that are not there are passed over. */
  remove(ids: readonly string[]): Promise<void>;
  search(query: SearchQuery): Promise<SearchAnswer>;
  /**
   * Replaces the whole index by these documents. Searches go on in the old one; what is written meanwhile is kept and
   * wins over what the documents say. When the documents fail, the old index stays.
   */
  rebuild(documents: AsyncIterable<SearchDocument>, onProgress?: (progress: RebuildProgress) => void): Promise<void>;
  health(): Promise<SearchHealth>;
  stats(): Promise<SearchStats>;
}

export type SearchProblem = "unavailable" | "misconfigured" | "missing-index" | "bad-query" | "overloaded";

/** Why a search or an update was refused. `problem` decides what a caller does. */
export class SearchError extends Error {
  override readonly name = "SearchError";
  readonly problem: SearchProblem;
  constructor(problem: SearchProblem, message: string, options?: ErrorOptions) {
    super(message, options);
    this.problem = problem;
  }
}

/** Totals are counted to here; more is said as "200+". */
export const COUNTED_TO = 200;

/** Hits of one answer. */
export const MOST_HITS = 50;

/** Characters of a body that are searched: the longest one still goes into the index within one slice. */
export const LONGEST_BODY = 24_000;
