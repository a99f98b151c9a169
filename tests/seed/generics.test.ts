import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { readSymbolLibrary, type ChipSymbol } from "#lib/core/pinout/index.ts";
import type { PinType } from "#lib/core/shared/index.ts";
import { chips } from "#seed/chips/index.ts";
import type { SeedChip, SeedPackage } from "#seed/shapes.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";

function chip(slug: string): SeedChip {
  const found = chips.find((one) => one.slug === slug);
  if (found === undefined) throw new Error(`No chip ${slug}`);
  return found;
}

function packageNamed(slug: string, name: string): SeedPackage {
  const found = chip(slug).packages.find((one) => one.name === name);
  if (found === undefined) throw new Error(`No ${name} of ${slug}`);
  return found;
}

/** Legs that a package name promises. */
function legs(name: string): number {
  return name === "TO-220" || name === "TO-92" ? 3 : Number(/-(\d+)$/.exec(name)?.[1]);
}

function supplies(slug: string, packageName: string): Record<string, number> {
  const pins = packageNamed(slug, packageName).pins;
  return Object.fromEntries(
    pins.flatMap((pin) =>
      pin.role === "ground" ? [[pin.number, 0]] : pin.supply === undefined ? [] : [[pin.number, pin.supply]],
    ),
  );
}

describe("generic chips", () => {
  test("are at least 64, with slugs of their own in the address's spelling", () => {
    expect(chips.length).toBeGreaterThanOrEqual(64);
    expect(new Set(chips.map(({ slug }) => slug)).size).toBe(chips.length);
    expect(chips.filter(({ slug }) => !/^[a-z0-9]+$/.test(slug))).toEqual([]);
  });

  test("have as many pins as the package has legs, numbered 1 to the last", () => {
    const packages = chips.flatMap((one) => one.packages.map((pack) => ({ slug: one.slug, pack })));
    const wrong = packages.filter(({ pack }) => {
      const numbers = pack.pins.map((pin) => pin.number);
      return JSON.stringify(numbers) !== JSON.stringify(Array.from({ length: legs(pack.name) }, (_, n) => `${n + 1}`));
    });
    expect(wrong.map(({ slug, pack }) => `${slug} ${pack.name}`)).toEqual([]);
  });

  test("give no two pins of a package one name, but for supplies and free pins", () => {
    const doubled = chips.flatMap(({ slug, packages }) =>
      packages.flatMap(({ pins }) => {
        const names = pins
          .filter(({ role }) => role !== "supply" && role !== "ground" && role !== "unused")
          .map((pin) => `${pin.activeLow === true ? "/" : ""}${pin.name}`);
        return names.filter((name, n) => names.indexOf(name) !== n).map((name) => `${slug} ${name}`);
      }),
    );
    expect(doubled).toEqual([]);
  });

  test("have several with more than one package", () => {
    const several = chips.filter(({ packages }) => packages.length > 1).map(({ slug }) => slug);
    expect(several).toEqual(expect.arrayContaining(["27c512", "27c256", "74ls244"]));
  });
});

describe("supplies that are not where the habit looks for them", () => {
  // references.md, "Chip symbols": 4116 / 4164 and the 7490 group.
  test.each([
    ["4116", "DIP-16", { "1": -5, "8": 12, "9": 5, "16": 0 }],
    ["4164", "DIP-16", { "8": 5, "16": 0 }],
    ["7490", "DIP-14", { "5": 5, "10": 0 }],
    ["74ls93", "DIP-14", { "5": 5, "10": 0 }],
    ["74ls75", "DIP-16", { "5": 5, "12": 0 }],
    ["mc1488", "DIP-14", { "1": -12, "7": 0, "14": 12 }],
  ])("%s in %s", (slug, packageName, wanted) => {
    expect(supplies(slug, packageName)).toEqual(wanted);
  });

  test("regulators: 7805, 78L05 and 7905 each have their own order", () => {
    const order = (slug: string, name: string) => packageNamed(slug, name).pins.map((pin) => pin.name);
    expect([order("7805", "TO-220"), order("78l05", "TO-92"), order("7905", "TO-220")]).toEqual([
      ["IN", "GND", "OUT"],
      ["OUT", "GND", "IN"],
      ["GND", "IN", "OUT"],
    ]);
  });
});

describe("one die in two packages", () => {
  // references.md: n → n+1 for 1–10; 11–14 → 13–16; 15–22 → 18–25; 23–28 → 27–32; 1 and 17 of a 27C256 are never free.
  test("27C512 and 27C256 on PLCC-32", () => {
    const places = (slug: string) => {
      const plcc = packageNamed(slug, "PLCC-32").pins;
      return packageNamed(slug, "DIP-28").pins.map((pin) => Number(plcc.find((one) => one.name === pin.name)?.number));
    };
    const wanted = [
      2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 13, 14, 15, 16, 18, 19, 20, 21, 22, 23, 24, 25, 27, 28, 29, 30, 31, 32,
    ];
    expect([places("27c512"), places("27c256")]).toEqual([wanted, wanted]);
    const left = packageNamed("27c256", "PLCC-32").pins.filter(({ role }) => role === "unused");
    expect(left.map(({ number, type }) => `${number} ${type}`)).toEqual([
      "1 do-not-connect",
      "12 no-connect",
      "17 do-not-connect",
      "26 no-connect",
    ]);
  });
});

/** Our slug in a library, where its part has another name there. */
const LIBRARIES: Record<string, Record<string, string>> = {
  "74xx": {},
  "4xxx": {},
  Memory_EPROM: { "27c256": "27C256", "27c512": "27C512", "2764": "2764", "27128": "27128" },
  Memory_RAM: { "62256": "HM62256BLP" },
  CPU: { z80cpu: "Z80CPU" },
  CPU_NXP_6800: { "6809": "MC6809", "6809e": "MC6809E" },
  Interface: { "8255": "8255" },
  Interface_UART: { "6850": "MC6850", max232: "MAX232" },
  Amplifier_Operational: { lm324: "LM324", lm358: "LM358", tl072: "TL072", tl074: "TL074", ca3080: "CA3080" },
  Comparator: { lm339: "LM339" },
  Transistor_Array: { uln2003: "ULN2003" },
  Timer: { ne555: "NE555P" },
};

/** Ways in which the two describe one pin; `kind` is what a repairer must not get wrong. */
function kindOf(type: PinType): string {
  const kinds: Partial<Record<PinType, string>> = {
    "three-state": "drives",
    output: "drives",
    bidirectional: "drives",
    "open-collector": "open collector",
    "no-connect": "free",
    "do-not-connect": "free",
    "power-in": "supply",
    "power-out": "supply",
    input: "input",
  };
  return kinds[type] ?? "passive";
}

/** Pins on which the library is known to be loose: it calls analog pins inputs, or ports of ours passive. */
const LOOSE = new Set(["passive", "free"]);

function differences(ours: SeedChip, theirs: ChipSymbol): string[] {
  const table = ours.packages[0]?.pins ?? [];
  return table.flatMap((pin) => {
    const other = theirs.pins.find((one) => one.number === pin.number);
    const [mine, their] = [kindOf(pin.type), other === undefined ? "free" : kindOf(other.type)];
    if (mine === their || (LOOSE.has(mine) && LOOSE.has(their))) return [];
    return [`${ours.slug}.${pin.number} ${pin.name}: ${mine}, library ${other?.name ?? "-"}: ${their}`];
  });
}

function otherNames(ours: SeedChip, theirs: ChipSymbol): string[] {
  const table = ours.packages[0]?.pins ?? [];
  return table.flatMap((pin) => {
    const name = theirs.pins.find((one) => one.number === pin.number)?.name ?? "";
    return plainName(name) === plainName(pin.name) ? [] : [`${ours.slug}.${pin.number} ${pin.name}, library ${name}`];
  });
}

/** Where the library and the data sheets part, and we follow the data sheets. */
const KNOWN_DIFFERENCES = [
  // In reading VPP is a supply at +5 V; the library calls it an input.
  "2764.1 VPP: supply, library VPP: input",
  "27128.1 VPP: supply, library VPP: input",
  "27c256.1 VPP: supply, library VPP: input",
  // Discharge is a transistor to ground, and the control voltage is a divider's middle.
  "ne555.5 CV: passive, library CV: input",
  "ne555.7 DIS: open collector, library DIS: input",
  "ne556.1 1DIS: open collector, library DIS: input",
  "ne556.3 1CV: passive, library CV: input",
  "ne556.11 2CV: passive, library CV: input",
  "ne556.13 2DIS: open collector, library DIS: input",
  // The interrupt line of a peripheral pulls down only, so that several can share it.
  "6850.7 IRQ: open collector, library IRQ: drives",
  // The crystal's far end, which the chip drives; and three-state control, an input of the 6809E.
  "6809.39 XTAL: drives, library XTAL: input",
  "6809e.39 TSC: input, library TSC: drives",
  // Pins for outside parts, not for signals.
  "74ls123.6 2CEXT: passive, library Cext: input",
  "74ls123.7 2REXT: passive, library RCext: input",
  "74ls123.14 1CEXT: passive, library Cext: input",
  "74ls123.15 1REXT: passive, library RCext: input",
  "lm311.5 BAL: passive, library BAL: input",
  "lm311.6 STRB: passive, library STRB: input",
];

/** Libraries whose pins are named as the data sheets name them; data lines are D, Q or O. */
const NAMED = new Set(["Memory_EPROM", "Memory_RAM", "CPU", "CPU_NXP_6800", "Interface"]);

function plainName(name: string): string {
  const plain = name.toUpperCase().replaceAll(/[~{}/]/g, "");
  return plain
    .replace(/^[QO](\d)$/, "D$1")
    .replace(/^(CE|CS)$/, "CE")
    .replace("DMABREQ", "DMA")
    .replace("ENABLE", "E");
}

describe("pins compared with Debian's kicad-symbols 6.0.10", () => {
  const parts = Object.entries(LIBRARIES);

  test.for(parts)("%s: supplies, inputs and outputs are on the same pins", async ([library, renamed], ctx) => {
    const folder = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const file = path.join(folder, "usr/share/kicad/symbols", `${library}.kicad_sym`);
    const read = readSymbolLibrary(readFileSync(file, "utf8"), { libraryName: library });
    if (!read.ok) throw new Error(read.problem.reason);
    const byName = new Map(read.value.symbols.map((symbol) => [symbol.name, symbol]));
    const pairs = chips.flatMap((one) => {
      const symbol = byName.get(renamed[one.slug] ?? one.name);
      return symbol === undefined ? [] : [[one, symbol] as const];
    });
    expect(pairs.length).toBeGreaterThanOrEqual(Math.max(1, Object.keys(renamed).length));
    const found = pairs.flatMap(([ours, theirs]) => differences(ours, theirs));
    expect(found.filter((text) => !KNOWN_DIFFERENCES.includes(text))).toEqual([]);
    const named = NAMED.has(library) ? pairs.flatMap(([ours, theirs]) => otherNames(ours, theirs)) : [];
    expect(named).toEqual([]);
  });
});
