import { symbolDifference, type ChipSymbol } from "#lib/core/pinout/index.ts";
import type { ImportedChip } from "./chip-of-symbol.ts";
import type { KnownChip, KnownPin } from "./known-chips.ts";

export type Decision =
  | { state: "new" }
  /** `replace`: the record came from this symbol and follows it. `add`: it came from elsewhere and gains a package. */
  | { state: "changed"; how: "replace" | "add"; changes: string[] }
  | { state: "same"; why: string }
  | { state: "refused"; why: string };

/**
 * What importing a symbol does to the record that is known under its source or its address. A record that came from
 * this symbol follows the file; one that a member wrote, or that came from another library, keeps every word and pin.
 */
export function decide(read: ImportedChip, known: KnownChip | null): Decision {
  if (known === null) return { state: "new" };
  return known.source === read.source ? follow(read, known) : keep(read, known);
}

function follow(read: ImportedChip, known: KnownChip): Decision {
  const table = tableOf(known.packages, read.package.name);
  const { state, changes } = symbolDifference(
    asSymbol({
      name: read.name,
      function: known.function,
      dataSheet: known.dataSheet,
      package: { name: table?.name ?? "", style: table?.style ?? "other", pins: table?.pins ?? [] },
    }),
    asSymbol(read),
  );
  return state === "changed" ? { state, how: "replace", changes } : { state: "same", why: "" };
}

/** The pin table of a record that the file speaks of: that of the package, else the first, which the import made. */
export function tableOf<T extends { name: string }>(packages: readonly T[], name: string): T | undefined {
  return packages.find((one) => one.name === name) ?? packages[0];
}

function keep(read: ImportedChip, known: KnownChip): Decision {
  const whose = known.source === "" ? "written here by hand" : `imported from ${known.source}`;
  const { name, style, pins } = read.package;
  const table = known.packages.find(
    (one) => one.name === name || (one.style === style && one.pinCount === pins.length),
  );
  if (!table) return { state: "changed", how: "add", changes: [`package ${name} is added to the record ${whose}`] };
  const other = differingPins(table.pins, pins);
  const [first] = other;
  if (!first) return { state: "same", why: `the record ${whose} has these pins; it stays as it is` };
  const count = other.length === 1 ? "1 pin differs" : `${other.length} pins differ`;
  return { state: "refused", why: `the record ${whose} stays as it is; ${count}: ${first}` };
}

type NamedPin = Pick<KnownPin, "number" | "name" | "activeLow">;

/** Each pin that two tables name differently, in words. Names in another spelling (`1A`, `1a`) are the same name. */
function differingPins(here: readonly NamedPin[], file: readonly NamedPin[]): string[] {
  const inFile = new Map(file.map((pin) => [pin.number, pin]));
  const known = new Set(here.map((pin) => pin.number));
  const differing = here.flatMap((pin) => {
    const other = inFile.get(pin.number);
    if (other && nameKey(other) === nameKey(pin)) return [];
    return [`pin ${pin.number} is ${printed(pin)} here, ${other ? printed(other) : "missing"} in the file`];
  });
  const more = file.filter((pin) => !known.has(pin.number));
  return [...differing, ...more.map((pin) => `pin ${pin.number} is missing here, ${printed(pin)} in the file`)];
}

function nameKey({ name, activeLow }: NamedPin): string {
  return `${activeLow ? "/" : ""}${name.toLowerCase()}`;
}

function printed(pin: NamedPin): string {
  return `“${pin.activeLow ? "/" : ""}${pin.name}”`;
}

type Comparable = Pick<ImportedChip, "name" | "function" | "dataSheet"> & {
  package: { name: string; style: ImportedChip["package"]["style"]; pins: KnownPin[] };
};

/** The shape that the pin tables are compared in; what a record does not keep is left empty on both sides. */
function asSymbol({ name, function: description, dataSheet, package: one }: Comparable): ChipSymbol {
  return {
    library: "",
    name,
    reference: "",
    description,
    keywords: "",
    datasheet: dataSheet,
    pins: one.pins.map((pin) => ({ ...pin, unit: 0 })),
    packageGuess: { name: one.name, style: one.style, pinCount: one.pins.length, basis: "pin-count" },
  };
}
