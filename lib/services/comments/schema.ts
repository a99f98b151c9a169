import { z } from "zod";

export const COMMENTED = ["case", "board", "chip", "code"] as const;
export type Commented = (typeof COMMENTED)[number];

const body = z.string().trim().min(1, "Write something first.").max(20_000, "At most 20,000 characters.");

export const CreateComment = z.strictObject({
  id: z.uuidv7().optional(),
  kind: z.enum(COMMENTED),
  /** Id of the record. */
  record: z.uuid(),
  /** Id of one check of a case. */
  check: z.uuid().optional(),
  body,
});
export const UpdateComment = z.strictObject({ body });
