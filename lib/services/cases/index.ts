export { visibleCases } from "../visible-cases.ts";
export type { CheckView } from "./check-view.ts";
export { confirmCase } from "./confirm.ts";
export { createCase, type CreatedCase, type Provenance } from "./create.ts";
export { deleteCheck, updateCheck } from "./edit-check.ts";
export { listCases, type CaseLine } from "./list.ts";
export { publishCase, withdrawCase } from "./publish.ts";
export { checksToRepeat, lastRepeat, repeatChecks, type Repeated } from "./prove.ts";
export { recordQuickCase } from "./quick.ts";
export { readCase, type CaseOwnFields, type CaseView, type CauseView, type Person } from "./read.ts";
export { deleteCause, recordCause, recordProof, updateCause } from "./record-cause.ts";
export { recordChecks, type RecordedChecks } from "./record-checks.ts";
export { symptomVocabulary } from "./symptoms.ts";
export { tickCaution, tickedCautions } from "./tick-caution.ts";
export { updateCase } from "./update.ts";
export { writeFeatures } from "./features.ts";
export {
  CASE_FACTS,
  CHECK_FACTS,
  checkContext,
  checkFacts,
  knownCase,
  STORED_FEATURES,
  tellingWords,
  type CaseFactsRow,
} from "./known-case.ts";
export { judgedCheck } from "./judged-check.ts";
