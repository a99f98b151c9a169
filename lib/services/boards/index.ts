export { createCopy, updateCopy } from "./copies.ts";
export { boardFacts } from "./facts.ts";
export { readBoard, type BoardView } from "./read.ts";
export { createBoard, slugOf, updateBoard, type SavedBoard } from "./save.ts";
