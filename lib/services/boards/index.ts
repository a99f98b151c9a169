export { createCopy, updateCopy } from "./copies.ts";
export { boardFacts } from "./facts.ts";
export { createFactsCache, type FactsCache } from "./facts-cache.ts";
export { readBoard, type BoardView } from "./read.ts";
export { createBoard, slugOf, updateBoard, type SavedBoard } from "./save.ts";
export { listBoards, type BoardLine } from "./list.ts";
