export { createEmbeddedSearch } from "./embedded.ts";
export { MARK } from "./highlight.ts";
export { COUNTED_TO, LONGEST_BODY, MOST_HITS, SEARCH_KINDS, SearchError } from "./types.ts";
export type {
  DocVisibility,
  Facets,
  Highlights,
  RebuildProgress,
  SearchAnswer,
  SearchDocument,
  SearchEngine,
  SearchHealth,
  SearchHit,
  SearchKind,
  SearchProblem,
  SearchQuery,
  SearchStats,
  ViewerVisibility,
} from "./types.ts";
