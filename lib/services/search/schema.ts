import { z } from "zod";
import { CASE_OUTCOMES } from "#lib/core/shared/vocabulary.ts";

/** The kinds of records that are found, in the order in which a page offers them. */
export const FOUND_KINDS = ["case", "board", "chip", "code", "spare"] as const;
export type FoundKind = (typeof FOUND_KINDS)[number];

export const SearchInput = z.object({
  q: z.string().max(400, "At most 400 characters.").default(""),
  /** One kind, or several with commas. */
  kind: z
    .string()
    .transform((text) => text.split(",").map((kind) => kind.trim()))
    .pipe(z.array(z.enum(FOUND_KINDS)))
    .optional(),
  /** Slug. */
  board: z.string().max(120).optional(),
  outcome: z.enum(CASE_OUTCOMES).optional(),
  limit: z.coerce.number().int().min(1).max(50).default(20),
  cursor: z.string().max(200).optional(),
});
