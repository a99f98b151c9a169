export { createCopy, updateCopy } from "./copies.ts";
export { boardCulprits, type Culprit, type CulpritCase } from "./culprits.ts";
export { boardFacts } from "./facts.ts";
export { createFactsCache, type FactsCache } from "./facts-cache.ts";
export { listBoards, type BoardLine } from "./list.ts";
export { partLineOf, placementsOfText, planParts, type PartsPlan, type PlannedPart } from "./plan-parts.ts";
export { readBoard, type BoardView } from "./read.ts";
export { createBoard, slugOf, updateBoard, type SavedBoard } from "./save.ts";
export { listOfTyped, netsOfText, TYPED_LISTS, type TypedList } from "./typed.ts";
