import { z } from "zod";
import {
  BOARD_KINDS,
  CASE_OUTCOMES,
  CHECK_KINDS,
  CURE_ACTIONS,
  FAILURES,
  LEADS,
  POWER_STATES,
  PROOF_KINDS,
  TRIALS,
  TRIAL_OUTCOMES,
  VERDICTS,
} from "#lib/core/shared/vocabulary.ts";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);
const id = z.uuidv7("Must be a uuid of version 7.");
const when = z.iso.datetime({ offset: true });

/** One check as a person enters it. What is known of the place fills in the rest. */
export const CheckInput = z
  .strictObject({
    id: id.optional(),
    kind: z.enum(CHECK_KINDS),
    at: line(100).min(1, "Say where: a pin such as U7.14, a test point, or a net such as +5V."),
    to: line(100).optional(),
    lead: z.enum(LEADS).optional(),
    when: line(40).optional(),
    power: z.enum(POWER_STATES).optional(),
    /** Left out: filled in from the board's and the chip's record. */
    expected: line(200).optional(),
    measured: line(2000).default(""),
    what: z.enum(TRIALS).optional(),
    outcome: z.enum(TRIAL_OUTCOMES).optional(),
    instrument: id.optional(),
    verdict: z.enum(VERDICTS).optional(),
    reason: line(500).optional(),
    note: line(2000).optional(),
    takenAt: when.optional(),
    /** The failed check that this one repeats. */
    repeats: id.optional(),
  })
  .check(({ value, issues }) => {
    if ((value.kind === "trial") !== (value.what !== undefined)) {
      issues.push({
        code: "custom",
        input: value,
        path: ["what"],
        message: "A trial says what was tried; other checks do not.",
      });
    }
    if (value.verdict !== undefined && !value.reason) {
      issues.push({
        code: "custom",
        input: value,
        path: ["reason"],
        message: "Say why the computed verdict is not right.",
      });
    }
  });
export type CheckInput = z.infer<typeof CheckInput>;

/** One check, or a run of pins as one. */
export const RecordChecks = z
  .array(CheckInput)
  .min(1, "There is no check to record.")
  .max(200, "At most 200 checks at once.");

export const CureInput = z.strictObject({
  action: z.enum(CURE_ACTIONS),
  description: line(2000).default(""),
  /** The code that was fitted, as printed. */
  fittedCode: line(80).optional(),
  /** From where: a donor board, a spare, bought new. */
  from: line(200).optional(),
});
export type CureInput = z.infer<typeof CureInput>;

export const ProofInput = z
  .strictObject({
    kind: z.enum(PROOF_KINDS),
    minutes: z.number().int().min(1, "A soak lasts at least a minute.").max(1_000_000).optional(),
    note: line(2000).default(""),
  })
  .check(({ value, issues }) => {
    if (value.kind === "soak" && value.minutes === undefined) {
      issues.push({ code: "custom", input: value, path: ["minutes"], message: "Say for how many minutes it ran." });
    }
  });
export type ProofInput = z.infer<typeof ProofInput>;

/** A proof of a cause that is recorded already. */
export const RecordProof = z.strictObject({ cause: z.uuid(), ...ProofInput.shape }).check(({ value, issues }) => {
  if (value.kind === "soak" && value.minutes === undefined) {
    issues.push({ code: "custom", input: value, path: ["minutes"], message: "Say for how many minutes it ran." });
  }
});

export const CauseInput = z.strictObject({
  id: id.optional(),
  at: line(100).default(""),
  /** Slug of the chip; left out: the chip that the board's record has at this place. */
  chip: line(80).optional(),
  /** Code printed on the failed part. */
  code: line(80).optional(),
  failure: z.enum(FAILURES),
  description: line(2000).default(""),
  /** Ids of the checks that it explains. */
  explains: z.array(id).max(200).default([]),
  cure: CureInput.optional(),
  proof: ProofInput.optional(),
});
export type CauseInput = z.infer<typeof CauseInput>;

/** Longest label of the vocabulary of symptoms, characters. */
export const LONGEST_SYMPTOM = 80;

const caseFields = {
  title: line(160),
  revision: line(80),
  copy: line(80),
  symptoms: z.array(line(LONGEST_SYMPTOM).min(1)).max(20),
  symptomText: line(4000),
  reproduced: line(4000),
  lesson: line(300),
  story: z.string().max(100_000, "At most 100,000 characters."),
  asksHelp: line(1000),
  outcome: z.enum(CASE_OUTCOMES),
};

/** A new case. Only a symptom is needed; everything else can come later. */
export const CreateCase = z
  .strictObject({
    id: id.optional(),
    /** Slug; left out for a board without a record. */
    board: line(120).optional(),
    title: caseFields.title.optional(),
    revision: caseFields.revision.optional(),
    copy: caseFields.copy.optional(),
    symptoms: caseFields.symptoms.default([]),
    symptomText: caseFields.symptomText.default(""),
    reproduced: caseFields.reproduced.default(""),
    lesson: caseFields.lesson.default(""),
    story: caseFields.story.default(""),
    asksHelp: caseFields.asksHelp.default(""),
    outcome: caseFields.outcome.default("open"),
    checks: z.array(CheckInput).max(500).default([]),
    causes: z.array(CauseInput).max(20).default([]),
    publish: z.boolean().default(false),
    /** Number of the case whose cure did not help here. */
    openedFrom: z.int32().positive().optional(),
    openedAt: when.optional(),
  })
  .check(({ value, issues }) => {
    if (value.symptoms.length === 0 && value.symptomText === "") {
      issues.push({
        code: "custom",
        input: value,
        path: ["symptoms"],
        message: "Name a symptom, from the list or in your own words.",
      });
    }
  });
export type CreateCase = z.infer<typeof CreateCase>;

/** Fields of a case that are edited together; those left out stay as they are. */
export const UpdateCase = z.strictObject({
  board: line(120).nullable().optional(),
  title: caseFields.title.min(1, "A case needs a title.").optional(),
  revision: caseFields.revision.optional(),
  copy: caseFields.copy.optional(),
  symptoms: caseFields.symptoms.optional(),
  symptomText: caseFields.symptomText.optional(),
  reproduced: caseFields.reproduced.optional(),
  lesson: caseFields.lesson.optional(),
  story: caseFields.story.optional(),
  asksHelp: caseFields.asksHelp.optional(),
  outcome: caseFields.outcome.optional(),
});
export type UpdateCase = z.infer<typeof UpdateCase>;

/** A finished repair in four lines. */
export const QuickCase = z.strictObject({
  id: id.optional(),
  board: line(120).min(1, "Which board?"),
  symptom: line(300).min(1, "What did it do?"),
  wrong: line(500).min(1, "What was wrong?"),
  /** Designator of what was wrong, where there is one. */
  at: line(100).default(""),
  failure: z.enum(FAILURES).default("other"),
  cured: line(500).min(1, "What cured it?"),
  /** How it was proved; empty: it works, not proved. */
  proved: line(500).default(""),
});
export type QuickCase = z.infer<typeof QuickCase>;

export const ConfirmInput = z.strictObject({
  helped: z.boolean(),
  cause: id.optional(),
  note: line(1000).default(""),
  /** Number of one's own case. */
  linkedCase: z.int32().positive().optional(),
});
export type ConfirmInput = z.infer<typeof ConfirmInput>;

export const UpdateCheck = z.strictObject({
  kind: z.enum(CHECK_KINDS).optional(),
  at: line(100).min(1, "Say where.").optional(),
  to: line(100).optional(),
  lead: z.enum(LEADS).nullable().optional(),
  when: line(40).optional(),
  power: z.enum(POWER_STATES).optional(),
  expected: line(200).optional(),
  measured: line(2000).optional(),
  what: z.enum(TRIALS).nullable().optional(),
  outcome: z.enum(TRIAL_OUTCOMES).nullable().optional(),
  /** Null takes a chosen verdict back. */
  verdict: z.enum(VERDICTS).nullable().optional(),
  reason: line(500).optional(),
  note: line(2000).optional(),
});
export type UpdateCheck = z.infer<typeof UpdateCheck>;

/** What a list of cases may be narrowed to. */
export const ListCases = z.strictObject({
  board: z.string().max(120).optional(),
  boardKind: z.enum(BOARD_KINDS).optional(),
  chip: z.string().max(120).optional(),
  /** Id of a code that was found faulty or was fitted. */
  code: z.uuid().optional(),
  author: z.string().max(80).optional(),
  symptom: z.string().max(80).optional(),
  outcome: z.enum(CASE_OUTCOMES).optional(),
  asksHelp: z.stringbool().optional(),
  drafts: z.stringbool().optional(),
  limit: z.coerce.number().int().min(1).max(100).default(50),
  /** Number of the last case of the page before. */
  cursor: z.coerce.number().int().positive().max(2_147_483_647).optional(),
});
