/** The directives that name a record: `:code[27C256]`, `:chip[74LS244]`, `:board[harrow-80]`, `:case[12]`. */
export const RECORD_DIRECTIVES = ["code", "chip", "board", "case"] as const;
export type RecordDirective = (typeof RECORD_DIRECTIVES)[number];

export interface RecordLink {
  href: string;
  /** What the page shows: the code, the board's name, "case 12". */
  text: string;
  /** More, for who points at it. */
  title?: string;
}

/** The records that a text mentions, by `mentionKey`. What is not in it has no record, or none for this reader. */
export type LinkTable = ReadonlyMap<string, RecordLink>;

/** `code` and `27C256` → `code:27C256`. */
export function mentionKey(kind: RecordDirective, name: string): string {
  return `${kind}:${name.trim()}`;
}

export function isRecordDirective(name: string): name is RecordDirective {
  return RECORD_DIRECTIVES.some((known) => known === name);
}
