import { z } from "zod";

export const IMPORT_STATES = ["new", "changed", "same", "refused"] as const;
export type ImportLineState = (typeof IMPORT_STATES)[number];

export const IMPORT_LIMITS = {
  /** Bytes of a symbol library. Debian's largest has 9.5 MB. */
  fileBytes: 60_000_000,
  /** Pins that one import writes; more would hold the database too long. Debian's largest library has 54,498. */
  pins: 100_000,
  /** Characters of a chip's name: what its page and its address have room for. */
  nameLength: 80,
  /** Characters of a pin's number: `AF24`. */
  pinNumberLength: 10,
  /** Characters of what a chip does. */
  functionLength: 300,
  dataSheetLength: 500,
  /** Changes told of one chip; the rest are counted. */
  changesTold: 12,
} as const;

export const MOST_IMPORT_BYTES = IMPORT_LIMITS.fileBytes;

export const PlanSymbolImport = z.object({
  fileName: z.string().trim().min(1, "The file has no name.").max(200, "The file's name is too long."),
  bytes: z.instanceof(Uint8Array),
});

const PlanLine = z.object({
  /** Of the symbol, as in the file. */
  name: z.string(),
  state: z.enum(IMPORT_STATES),
  /** Address of the chip record. */
  slug: z.string().nullable(),
  /** Version of the record that the plan was made against; null: there was none. */
  version: z.number().nullable(),
  changes: z.array(z.string()),
  /** Why it is refused, or why a record stays as it is. */
  why: z.string(),
  line: z.number().nullable(),
});
export type PlanLine = z.infer<typeof PlanLine>;

/** The dry run as it is kept. The file itself lies in the file store, so that committing reads what was shown. */
export const SymbolPlan = z.object({ library: z.string(), hash: z.string(), lines: z.array(PlanLine) });
export type SymbolPlan = z.infer<typeof SymbolPlan>;
