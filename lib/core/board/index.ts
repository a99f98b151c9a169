export { boardCautions, checkCautions, DANGEROUS_VOLTS, type Caution } from "./cautions.ts";
export { feedsOf } from "./feeds.ts";
export {
  boardNames,
  expectationAt,
  expectationFor,
  placeFacts,
  type BoardFacts,
  type ChipFacts,
  type FoundExpectation,
  type PinFacts,
  type PlaceFacts,
  type PlacementFacts,
  type RailFacts,
} from "./facts.ts";
