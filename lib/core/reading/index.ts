export * from "./judge.ts";
export {
  JUDGE_VERSION,
  printLimits,
  type Direction,
  type JudgeInput,
  type Judgement,
  type Limits,
  type Size,
} from "./judgement.ts";
export { DECISION_LEVEL, SHORT, SIZES } from "./against-limits.ts";
export { OPEN_OHMS } from "./connection.ts";
export { DEFAULT_TOLERANCES, limitsOf, type KnownLimits } from "./limits.ts";
export * from "./instrument.ts";
export * from "./levels.ts";
export * from "./normal.ts";
export * from "./expect.ts";
