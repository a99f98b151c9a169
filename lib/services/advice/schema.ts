import { z } from "zod";
import { CHECK_KINDS, LEADS, TECHNOLOGIES, TRIALS, TRIAL_OUTCOMES, VERDICTS } from "#lib/core/shared/vocabulary.ts";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);

/** The repair in hand, as the bench page or a script describes it. Nothing of it is stored. */
export const AdviceInput = z.strictObject({
  board: line(120).nullable().default(null),
  symptoms: z.array(line(300)).max(20).default([]),
  checks: z
    .array(
      z.strictObject({
        kind: z.enum(CHECK_KINDS),
        at: line(100).min(1, "Say where."),
        to: line(100).optional(),
        lead: z.enum(LEADS).optional(),
        when: line(40).optional(),
        expected: line(200).optional(),
        measured: line(2000).default(""),
        what: z.enum(TRIALS).optional(),
        outcome: z.enum(TRIAL_OUTCOMES).optional(),
        verdict: z.enum(VERDICTS).optional(),
      }),
    )
    .max(500)
    .default([]),
  /** Number of a case that is not to answer: the one in hand. */
  except: z.int32().positive().optional(),
});
export type AdviceInput = z.infer<typeof AdviceInput>;

/** One reading to judge. */
export const JudgeInput = z.strictObject({
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
