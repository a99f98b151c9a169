export { advise, adviseCase, type Advice, type SimilarView } from "./advise.ts";
export { judgeReading } from "./judge.ts";
