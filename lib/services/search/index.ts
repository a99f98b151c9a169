export { askedCode } from "./asked-code.ts";
export { search } from "./find.ts";
export { indexState, searchPage, type FacetValue, type HitGroup, type IndexState, type SearchPage } from "./page.ts";
