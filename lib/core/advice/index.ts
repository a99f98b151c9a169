export type {
  CaseFacts,
  CheckContext,
  CheckFacts,
  ChipAtPlace,
  Direction,
  KnownCase,
  PastCause,
  Size,
} from "./facts.ts";
export {
  caseFeatures,
  checkFeatures,
  describeFeature,
  FEATURE_VERSION,
  featureId,
  featuresOf,
  queryFeatures,
  senseOf,
} from "./features.ts";
export type { CheckSense, Feature, FeatureDepth, FeatureGrain, WeightedFeature } from "./features.ts";
export { createCaseIndex } from "./case-index.ts";
export type { CaseIndex, SearchOptions } from "./case-index.ts";
export type { Ranked } from "./top-k.ts";
export { explainMatch, similarCases } from "./similar.ts";
export type { SimilarCase, SimilarOptions } from "./similar.ts";
export { CAUSE_WEIGHTS, confirmationWeight, likelyCauses } from "./causes.ts";
export type { BoardStructure, CauseEstimate, LikelyCause } from "./causes.ts";
export { CHECK_EFFORT, NEXT_CHECK, nextChecks } from "./next.ts";
export type { NextCheck, SolvedCase } from "./next.ts";
export { entropyBits, informationGain, smoothedShare } from "./information.ts";
export { DEPTH_WEIGHTS, MATCH_WEIGHTS, PLACE_GRAINS, rarity, SIMILAR_CASES } from "./weights.ts";
