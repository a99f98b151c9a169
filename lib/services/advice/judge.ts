import { readExpectation, readReading } from "#lib/core/quantity/index.ts";
import { judge, type Judgement } from "#lib/core/reading/index.ts";
import { invalid } from "../errors.ts";
import { JudgeInput } from "./schema.ts";

/** Judges one reading. What cannot be read is refused with the reason, since nothing is kept here. */
export function judgeReading(raw: unknown): Judgement & { quantity: unknown } {
  const input = JudgeInput.parse(raw);
  const expected = input.expected === "" ? null : readExpectation(input.expected, input.kind);
  if (expected && !expected.ok) throw invalid("expected", expected.problem.question ?? expected.problem.reason);
  const measured = readReading(input.measured, input.kind);
  if (!measured.ok) throw invalid("measured", measured.problem.question ?? measured.problem.reason);
  const unit = measured.value.form === "value" ? measured.value.quantity.unit : null;
  const judgement = judge({
    kind: input.kind,
    expected: expected?.value ?? null,
    measured: measured.value,
    ...(input.technology && { technology: input.technology }),
    ...(input.instrument && unit && { instrument: { ranges: [{ unit, ...input.instrument }] } }),
  });
  return { ...judgement, quantity: measured.value.form === "value" ? measured.value.quantity : null };
}
