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
  const wrong = contradictions(table.pins, pins);
  const [first] = wrong;
  if (first) {
    const count = wrong.length === 1 ? "1 pin contradicts" : `${wrong.length} pins contradict`;
    return { state: "refused", why: `the record ${whose} stays as it is; ${count} the file: ${first}` };
  }
  const named = namedOtherwise(table.pins, pins);
  return {
    state: "same",
    why: `the record ${whose} stays as it is${named === 0 ? "" : `; it names ${named} of its pins otherwise`}`,
  };
}

/** Pins that cannot be both, in words: one table has no such pin, or says that another thing drives it. */
function contradictions(here: readonly KnownPin[], file: readonly KnownPin[]): string[] {
  const inFile = new Map(file.map((pin) => [pin.number, pin]));
  const known = new Set(here.map((pin) => pin.number));
  const differing = here.flatMap((pin) => {
    const other = inFile.get(pin.number);
    if (!other) return isFree(pin) ? [] : [`pin ${pin.number} (${printed(pin)}) is missing in the file`];
    const [mine, theirs] = [directionOf(pin), directionOf(other)];
    if (mine === null || theirs === null || mine === theirs) return [];
    return [`pin ${pin.number} is ${printed(pin)}, ${mine}, here and ${printed(other)}, ${theirs}, in the file`];
  });
  const more = file.filter((pin) => !known.has(pin.number) && !isFree(pin));
  return [...differing, ...more.map((pin) => `pin ${pin.number} (${printed(pin)}) is missing here`)];
}

/** Drawings often leave out the pins that are not connected. */
function isFree({ type }: KnownPin): boolean {
  return type === "no-connect";
}

/** What a pin does to the line it is on, as far as its type tells: kinds of output are one, no type contradicts nothing. */
function directionOf({ type, role }: KnownPin): string | null {
  if (role === "ground") return "a ground";
  switch (type) {
    case "input":
      return "an input";
    case "output":
    case "open-collector":
    case "open-emitter":
      return "an output";
    case "bidirectional":
      return "both ways";
    case "power-in":
    case "power-out":
      return "a supply";
    case "no-connect":
    case "do-not-connect":
      return "not connected";
    // Drawn for lines that go one way and for lines that go both.
    case "three-state":
    case "passive":
    case "unspecified":
      return null;
  }
}

function namedOtherwise(here: readonly KnownPin[], file: readonly KnownPin[]): number {
  const inFile = new Map(file.map((pin) => [pin.number, pin]));
  return here.filter((pin) => {
    const other = inFile.get(pin.number);
    return other && other.name.toLowerCase() !== pin.name.toLowerCase();
  }).length;
}

function printed(pin: KnownPin): string {
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
