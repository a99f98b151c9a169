import { z } from "zod";

/** How the club is run. */
export const ClubSettings = z.strictObject({
  name: z.string().trim().min(1, "A club needs a name.").max(80),
  /** Only members read. */
  membersOnly: z.boolean(),
  /** Place of the next meeting, in words. */
  meeting: z.string().max(200),
});
export type ClubSettings = z.infer<typeof ClubSettings>;

export const DEFAULT_SETTINGS: ClubSettings = { name: "Benchlore", membersOnly: false, meeting: "" };
