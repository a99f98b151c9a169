export { readCheckRun } from "./check-run.ts";
export type { CheckEntry } from "./check-run.ts";
export { readPartsList } from "./parts-list.ts";
export type { PartsList, PartsListProblem, PartsListRow } from "./parts-list.ts";
export { LONGEST_RUN, readPlaceRun } from "./place-run.ts";
export { placeKey, printPlace, readPlace } from "./place.ts";
export type { BoardNames, Place } from "./place.ts";
export { placementKindOf } from "./placement-kind.ts";
