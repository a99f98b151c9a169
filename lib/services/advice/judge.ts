import { z } from "zod";
import { readExpectation, readReading } from "#lib/core/quantity/index.ts";
import { judge, type Judgement } from "#lib/core/reading/index.ts";
import { CHECK_KINDS, TECHNOLOGIES } from "#lib/core/shared/index.ts";
import { invalid } from "../errors.ts";

const JudgeInput = z.strictObject({
  kind: z.enum(CHECK_KINDS),
  expected: z.string().trim().max(200).default(""),
  measured: z.string().trim().max(2000),
  technology: z.enum(TECHNOLOGIES).optional(),
  /** The meter: ±(percent of reading + digits × resolution), in the base unit of the reading. */
  instrument: z
    .strictObject({
      percent: z.number().min(0).max(100),
      digits: z.number().min(0).max(1e6),
      resolution: z.number().min(0),
    })
    .optional(),
});

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
