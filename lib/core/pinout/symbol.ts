import type { PackageStyle, PinRole, PinType } from "../shared/index.ts";

export interface SymbolPin {
  /** As printed in the data sheet: `14`, `A12`. Text, because ball grids have letters. */
  number: string;
  /** Without a bar: `CE`. Two pins of a part may share a name and differ in `activeLow` (`Q` and its inverse). */
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
  /** The gate or section the pin belongs to, from 1; 0 is common to all (supplies mostly). */
  unit: number;
}

export interface PackageGuess {
  /** As people say it: `DIP-20`, `TSSOP-14`, `TO-220`. */
  name: string;
  style: PackageStyle;
  pinCount: number;
  /** What the guess rests on: the footprint named in the file, its footprint filter, or only the number of pins. */
  basis: "footprint" | "filter" | "pin-count";
}

/** One part of a symbol library with its pin table, derived symbols resolved. */
export interface ChipSymbol {
  library: string;
  name: string;
  /** Letters of the designator: `U`, `Q`, `J`. */
  reference: string;
  description: string;
  keywords: string;
  datasheet?: string;
  /** In the order of their numbers. Derived parts share the table of their parent. */
  pins: readonly SymbolPin[];
  packageGuess: PackageGuess;
}
