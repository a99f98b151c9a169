import type { FoundKind } from "#lib/services/search/schema.ts";

/** The kinds of records as the results say them. */
export const FOUND_WORDS: Record<FoundKind, { many: string; lower: string }> = {
  case: { many: "Cases", lower: "cases" },
  board: { many: "Boards", lower: "boards" },
  chip: { many: "Chips", lower: "chips" },
  code: { many: "Codes", lower: "codes" },
  spare: { many: "Spares", lower: "spares" },
};
