import { z } from "zod";
import { normalForm } from "#lib/core/marking/index.ts";
import { EVIDENCE_KINDS, INTERCHANGE_GRADES } from "#lib/core/shared/vocabulary.ts";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);
const text = (most: number) => z.string().max(most, `At most ${most} characters.`);
const slug = z
  .string()
  .trim()
  .max(80, "At most 80 characters.")
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "An address is lower-case letters, digits and single hyphens.");

/** What a code is addressed by: its id, or its text however it is written. */
const codeText = line(120).min(1, "Name a code.");

const code = line(80)
  .min(1, "A code needs the print that is on the package.")
  .refine((value) => normalForm(value) !== "", "A code needs a letter or a digit.");

export const CreateHouse = z.strictObject({
  id: z.uuidv7().optional(),
  slug: slug.optional(),
  name: line(80).min(1, "A house needs a name."),
  notes: text(5_000).default(""),
});
export type CreateHouse = z.infer<typeof CreateHouse>;

export const UpdateHouse = z.strictObject({ name: CreateHouse.shape.name, notes: text(5_000) }).partial();
export type UpdateHouse = z.infer<typeof UpdateHouse>;

export const SightingInput = z.strictObject({
  id: z.uuidv7().optional(),
  /** Slug of the board it was seen on. */
  board: slug.nullable().default(null),
  /** Designator. */
  at: line(40).default(""),
  /** As printed beside the code: `8712`. */
  dateCode: line(20).default(""),
  note: text(2_000).default(""),
  seenAt: z.iso.datetime({ offset: true }).optional(),
});
export type SightingInput = z.infer<typeof SightingInput>;

export const CreateCode = z.strictObject({
  id: z.uuidv7().optional(),
  /** As printed on the package. */
  code,
  /** Slug of the house that prints it; null: unknown, or an industry number. */
  house: slug.nullable().default(null),
  /** Slug of the chip that it is known to be; null while unknown. */
  chip: slug.nullable().default(null),
  notes: text(20_000).default(""),
  /** Where it was seen, recorded with it. */
  sighting: SightingInput.optional(),
});
export type CreateCode = z.infer<typeof CreateCode>;

export const UpdateCode = z
  .strictObject({ code, house: slug.nullable(), chip: slug.nullable(), notes: text(20_000) })
  .partial();
export type UpdateCode = z.infer<typeof UpdateCode>;

export const PROVED_ELSEWHERE = ["yes", "not-known", "found-bad"] as const;
export type ProvedElsewhere = (typeof PROVED_ELSEWHERE)[number];

export const EvidenceInput = z.strictObject({
  id: z.uuidv7().optional(),
  kind: z.enum(EVIDENCE_KINDS),
  /** Number of the case in which it showed. */
  case: z.int32().positive().nullable().default(null),
  /** For a fitted part that failed: was it proved good elsewhere? */
  provedElsewhere: z.enum(PROVED_ELSEWHERE).nullable().default(null),
  note: text(5_000).default(""),
});
export type EvidenceInput = z.infer<typeof EvidenceInput>;

/** Takes evidence back, or lets it count again. */
export const RetractEvidence = z.strictObject({ retracted: z.boolean() });

const claim = {
  grade: z.enum(INTERCHANGE_GRADES),
  /** Whether each can stand in for the other. */
  bothWays: z.boolean(),
  conditions: z.array(line(200).min(1, "An empty condition says nothing.")).max(20),
  note: text(5_000),
};

/** `to` can stand in for `from`. */
export const CreateClaim = z.strictObject({
  id: z.uuidv7().optional(),
  from: codeText,
  to: codeText,
  grade: claim.grade,
  bothWays: claim.bothWays.default(false),
  conditions: claim.conditions.default([]),
  note: claim.note.default(""),
  /** What it rests on, recorded with it. */
  evidence: EvidenceInput.optional(),
});
export type CreateClaim = z.infer<typeof CreateClaim>;

export const UpdateClaim = z.strictObject(claim).partial();
export type UpdateClaim = z.infer<typeof UpdateClaim>;

export const ListCodes = z.strictObject({
  q: line(120).default(""),
  house: slug.optional(),
  chip: slug.optional(),
  /** Codes that no chip record is known for. */
  unknown: z.stringbool().optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  /** Id of the last code of the page before. */
  cursor: z.uuid().optional(),
});
export type ListCodes = z.infer<typeof ListCodes>;
