import { z } from "zod";
import { CONTENTS_KINDS, PACKAGE_STYLES, PIN_ROLES, PIN_TYPES, TECHNOLOGIES } from "#lib/core/shared/vocabulary.ts";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);
const text = (most: number) => z.string().max(most, `At most ${most} characters.`);

export const PinInput = z.strictObject({
  number: line(10).min(1, "A pin needs its number."),
  name: line(200).default(""),
  type: z.enum(PIN_TYPES).default("unspecified"),
  role: z.enum(PIN_ROLES).default("unknown"),
  activeLow: z.boolean().default(false),
  /** Volts, for supply pins, where known. */
  supply: z.number().min(-1000).max(1000).nullable().default(null),
  unit: z.number().int().min(0).max(200).default(1),
});
export type PinInput = z.infer<typeof PinInput>;

export const PackageInput = z.strictObject({
  name: line(40).min(1, "A package needs a name, such as DIP-20."),
  style: z.enum(PACKAGE_STYLES),
  pins: z.array(PinInput).min(1, "A pin table needs pins.").max(4000),
});
export type PackageInput = z.infer<typeof PackageInput>;

const fields = {
  name: line(80).min(1, "A chip needs a name."),
  function: line(300),
  technology: z.enum(TECHNOLOGIES),
  contents: z.enum(CONTENTS_KINDS),
  contentsRef: line(120),
  notes: text(50_000),
  dataSheet: line(500).refine((value) => value === "" || /^https?:\/\//.test(value), "An address begins with https://"),
  packages: z.array(PackageInput).max(20),
};

export const CreateChip = z.strictObject({
  id: z.uuidv7().optional(),
  slug: z
    .string()
    .max(80)
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "An address is lower-case letters, digits and single hyphens.")
    .optional(),
  name: fields.name,
  function: fields.function.default(""),
  technology: fields.technology.default("unknown"),
  contents: fields.contents.default("none"),
  contentsRef: fields.contentsRef.default(""),
  notes: fields.notes.default(""),
  dataSheet: fields.dataSheet.default(""),
  packages: fields.packages.default([]),
});
export type CreateChip = z.infer<typeof CreateChip>;

/** Parts of a chip that are edited together; packages that are given replace them all. */
export const UpdateChip = z.strictObject(fields).partial();
export type UpdateChip = z.infer<typeof UpdateChip>;

export const ListChips = z.strictObject({
  q: line(120).default(""),
  technology: z.enum(TECHNOLOGIES).optional(),
  contents: z.enum(CONTENTS_KINDS).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  /** Id of the last chip of the page before. */
  cursor: z.uuid().optional(),
});
export type ListChips = z.infer<typeof ListChips>;
