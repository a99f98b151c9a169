import { z } from "zod";

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);

const fields = {
  direction: z.enum(["offer", "want"]),
  /** As printed. */
  code: line(80).nullable().default(null),
  /** Slug. */
  chip: line(80).nullable().default(null),
  /** Slug of a board, for a donor. */
  board: line(120).nullable().default(null),
  quantity: z.coerce.number().int("Whole pieces.").min(1, "At least one.").max(100_000).default(1),
  condition: line(200).default(""),
  note: line(2000).default(""),
  visibility: z.enum(["public", "members"]).default("members"),
};

export const SpareInput = z.strictObject({ id: z.uuidv7().optional(), ...fields }).check(({ value, issues }) => {
  if (!value.code && !value.chip && !value.board && value.note === "") {
    issues.push({
      code: "custom",
      input: value,
      path: ["code"],
      message: "Say what it is: a code, a chip, a board, or a note.",
    });
  }
});
export type SpareInput = z.infer<typeof SpareInput>;

export const ListSpares = z.strictObject({
  /** A code however it is written, or words of a name, a note, a member. */
  q: line(120).optional(),
  direction: z.enum(["offer", "want"]).optional(),
  code: z.uuid().optional(),
  chip: line(80).optional(),
  board: line(120).optional(),
  member: line(80).optional(),
});
export type ListSpares = z.infer<typeof ListSpares>;
