import { z } from "zod";
import { ROLES } from "#lib/core/shared/vocabulary.ts";

export const handle = z
  .string()
  .trim()
  .toLowerCase()
  .min(2, "At least two characters.")
  .max(40)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "Lower-case letters, digits and single hyphens.");
export const email = z.email("This is not an address that mail could reach.").max(200).toLowerCase();
/** NIST SP 800-63B: length counts, composition rules do not; the upper bound keeps hashing cheap. */
export const password = z.string().min(10, "At least 10 characters.").max(200, "At most 200 characters.");

export const NewMember = z.strictObject({
  id: z.uuidv7().optional(),
  handle,
  name: z.string().trim().min(1, "A name, as others will see it.").max(80),
  email: email.nullable().default(null),
  role: z.enum(ROLES).default("member"),
  about: z.string().trim().max(2000).default(""),
});
export type NewMember = z.infer<typeof NewMember>;

export const InvitationInput = z.strictObject({
  role: z.enum(ROLES).default("member"),
  note: z.string().trim().max(200).default(""),
  uses: z.coerce.number().int("Whole uses.").min(1, "At least one use.").max(500).default(1),
  days: z.coerce.number().int().min(1, "At least a day.").max(365).default(14),
});

export const JoinInput = z.strictObject({
  token: z.string().min(20).max(200),
  name: NewMember.shape.name,
  handle,
  email,
  password,
});

export const ProfileInput = z.strictObject({
  name: NewMember.shape.name,
  about: NewMember.shape.about,
  email: email.nullable().default(null),
});

export const PasswordInput = z.strictObject({ present: z.string().max(200).default(""), password });

export const TokenInput = z.strictObject({
  name: z.string().trim().min(1, "What is it for?").max(80),
  scopes: z.array(z.enum(["read", "write", "review", "import"])).min(1, "Choose at least one scope."),
  /** Days until it expires; null: never. */
  days: z.coerce.number().int().min(1).max(3650).nullable().default(null),
});
