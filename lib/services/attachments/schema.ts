import { z } from "zod";

/** Larger photos are refused: 20 MB is more than a phone makes. */
export const MOST_PHOTO_BYTES = 20_000_000;
/** Scanned manuals are large. */
export const MOST_FILE_BYTES = 100_000_000;

export const ATTACHED_TO = ["case", "board", "chip", "code"] as const;
export type AttachedTo = (typeof ATTACHED_TO)[number];

export const AttachInput = z.strictObject({
  kind: z.enum(ATTACHED_TO),
  /** Id of the record. */
  record: z.uuid("Name the record by its id."),
  check: z.uuid().optional(),
  caption: z.string().trim().max(500).default(""),
});

export const DocumentInput = z.strictObject({
  /** Slug of the board. */
  board: z.string().max(120),
  title: z.string().trim().min(1, "A document needs a title.").max(200),
  kind: z.enum(["schematic", "manual", "layout", "other"]).default("schematic"),
  rights: z.enum(["free", "own", "unknown"]).default("unknown"),
  sheets: z
    .array(
      z.strictObject({
        sheet: z.string().trim().min(1).max(20),
        page: z.number().int().min(1).max(10_000),
        title: z.string().trim().max(200).default(""),
      }),
    )
    .max(500)
    .default([]),
});
