/** A spare as its form holds it. */
export interface SpareValues {
  direction: string;
  code: string;
  chip: string;
  chipName: string;
  board: string;
  boardName: string;
  quantity: string;
  condition: string;
  note: string;
  visibility: string;
}

/** What of a spare the form needs. */
interface Shown {
  direction: string;
  code: { code: string } | null;
  chip: { slug: string; name: string } | null;
  board: { slug: string; name: string } | null;
  quantity: number;
  condition: string;
  note: string;
  visibility: string;
}

export function spareValues({
  direction,
  code,
  chip,
  board,
  quantity,
  condition,
  note,
  visibility,
}: Shown): SpareValues {
  return {
    direction,
    code: code?.code ?? "",
    chip: chip?.slug ?? "",
    chipName: chip?.name ?? "",
    board: board?.slug ?? "",
    boardName: board?.name ?? "",
    quantity: String(quantity),
    condition,
    note,
    visibility,
  };
}

/** The record as a second writer is shown it. */
export function presentSpare(raw: unknown): { version: number; values: SpareValues } | null {
  if (typeof raw !== "object" || raw === null || !("version" in raw) || typeof raw.version !== "number") return null;
  // The answer of our own action: a spare as lib/services/spares shows it.
  return { version: raw.version, values: spareValues(raw as unknown as Shown) };
}
