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
