import type { ChipSymbol, SymbolPin } from "./symbol.ts";

export interface SymbolDifference {
  state: "new" | "changed" | "same";
  /** In words for the dry run, most telling first; empty unless `changed`. */
  changes: string[];
}

/**
 * What importing `read` would do to `known`, the record of the same library and name (null when there is none).
 * Order of pins, and the gate a pin is drawn in, do not count as changes.
 */
export function symbolDifference(known: ChipSymbol | null, read: ChipSymbol): SymbolDifference {
  if (known === null) return { state: "new", changes: [] };
  const changes = [...pinChanges(known.pins, read.pins), ...textChanges(known, read)];
  return { state: changes.length === 0 ? "same" : "changed", changes };
}

function pinChanges(before: readonly SymbolPin[], after: readonly SymbolPin[]): string[] {
  const known = new Map(before.map((pin) => [pin.number, pin]));
  const read = new Map(after.map((pin) => [pin.number, pin]));
  const changes: string[] = [];
  for (const pin of after) {
    const old = known.get(pin.number);
    if (old === undefined) changes.push(`pin ${pin.number} ${pinText(pin)} is added`);
    else if (pinText(old) !== pinText(pin)) changes.push(`pin ${pin.number} was ${pinText(old)}, is ${pinText(pin)}`);
  }
  for (const pin of before) if (!read.has(pin.number)) changes.push(`pin ${pin.number} ${pinText(pin)} is gone`);
  return changes;
}

function pinText(pin: SymbolPin): string {
  return `${pin.name || "(no name)"} (${pin.type}, ${pin.role}${pin.activeLow ? ", active low" : ""})`;
}

function textChanges(before: ChipSymbol, after: ChipSymbol): string[] {
  const pairs: [string, string, string][] = [
    ["package", before.packageGuess.name, after.packageGuess.name],
    ["description", before.description, after.description],
    ["keywords", before.keywords, after.keywords],
    ["data sheet", before.datasheet ?? "", after.datasheet ?? ""],
  ];
  return pairs.filter(([, was, is]) => was !== is).map(([what, was, is]) => `${what} was “${was}”, is “${is}”`);
}
