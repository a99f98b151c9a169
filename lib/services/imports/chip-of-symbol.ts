import { functionNumber, supplyVolts, technologyOf, type ChipSymbol } from "#lib/core/pinout/index.ts";
import {
  done,
  failed,
  type ContentsKind,
  type PackageStyle,
  type Result,
  type Technology,
} from "#lib/core/shared/index.ts";
import type { PinView } from "../chips/index.ts";
import { IMPORT_LIMITS } from "./schema.ts";

/** A chip record as a symbol gives it. */
export interface ImportedChip {
  name: string;
  function: string;
  technology: Technology;
  contents: ContentsKind;
  dataSheet: string;
  /** `library:name`. */
  source: string;
  package: { name: string; style: PackageStyle; pins: PinView[] };
}

/** What a symbol says of a chip, or why it cannot be a record here. */
export function chipOfSymbol(symbol: ChipSymbol): Result<ImportedChip, string> {
  if (symbol.name.length > IMPORT_LIMITS.nameLength) {
    return failed(`the name is longer than ${IMPORT_LIMITS.nameLength} characters`);
  }
  const long = symbol.pins.find((pin) => pin.number.length > IMPORT_LIMITS.pinNumberLength);
  if (long) return failed(`pin number ${long.number} is longer than ${IMPORT_LIMITS.pinNumberLength} characters`);
  const dataSheet = symbol.datasheet ?? "";
  return done({
    name: symbol.name,
    function: symbol.description.slice(0, IMPORT_LIMITS.functionLength),
    technology: technologyOf(symbol.name),
    // Logic of the numbered families holds nothing; of another part a drawing does not say.
    contents: functionNumber(symbol.name) === null ? "unknown" : "none",
    dataSheet: dataSheet.length > IMPORT_LIMITS.dataSheetLength ? "" : dataSheet,
    source: sourceOf(symbol),
    package: {
      name: symbol.packageGuess.name,
      style: symbol.packageGuess.style,
      pins: symbol.pins.map((pin) => ({ ...pin, supply: pin.role === "supply" ? supplyVolts(pin.name) : null })),
    },
  });
}

export function sourceOf(symbol: { library: string; name: string }): string {
  return `${symbol.library}:${symbol.name}`;
}
