import { expect, test } from "vitest";
import type { EvidenceKind, InterchangeGrade } from "#lib/core/shared/index.ts";
import { evidenceSummary } from "#lib/services/codes/index.ts";

type Given = EvidenceKind | "found-bad" | "retracted";
const evidence = (given: Given) => ({
  kind: given === "found-bad" || given === "retracted" ? ("fitted-failed" as const) : given,
  provedElsewhere: given === "found-bad" ? ("found-bad" as const) : null,
  retracted: given === "retracted",
});

test.each<[InterchangeGrade, Given[], boolean]>([
  ["drop-in", [], false],
  ["drop-in", ["fitted-worked", "told"], false],
  ["drop-in", ["fitted-failed"], false],
  ["drop-in", ["fitted-worked", "fitted-failed"], true],
  ["drop-in", ["pin-table", "fitted-failed"], true],
  ["drop-in", ["fitted-worked", "found-bad"], false],
  ["drop-in", ["fitted-worked", "retracted"], false],
  ["not-a-fit", ["fitted-failed", "electrical"], false],
  ["not-a-fit", ["fitted-failed", "fitted-worked"], true],
])("%s with %j is contested: %s", (grade, given, contested) => {
  expect(evidenceSummary(grade, given.map(evidence)).contested).toBe(contested);
});
