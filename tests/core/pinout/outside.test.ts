// Checked against Debian's kicad-symbols 6.0.10 (CC-BY-SA) and pcb-common 4.2.2 (GPL), fetched when they are wanted.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { functionNumber, readSymbolLibrary, type ChipSymbol, type SymbolLibrary } from "#lib/core/pinout/index.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";

const SYMBOLS = "usr/share/kicad/symbols";

function readLibrary(file: string): SymbolLibrary {
  const result = readSymbolLibrary(readFileSync(file, "utf8"), { libraryName: path.basename(file, ".kicad_sym") });
  if (!result.ok) throw new Error(`${file} line ${result.problem.line}: ${result.problem.reason}`);
  return result.value;
}

function partNamed(parts: readonly ChipSymbol[], name: string): ChipSymbol {
  const part = parts.find((one) => one.name === name);
  if (part === undefined) throw new Error(`${name} is missing`);
  return part;
}

/** `define(`PinList_7400_dil', ``1A',`1B',…'')` → 7400 and the names of pins 1, 2, … */
function pinLists(m4: string): Map<string, string[]> {
  const lists = new Map<string, string[]>();
  for (const found of m4.matchAll(/define\(`PinList_(\w+)_dil', ``(.*)''\)/g))
    lists.set(found[1] ?? "", (found[2] ?? "").split("',`"));
  return lists;
}

describe("kicad-symbols", () => {
  test("all 239 parts of 74xx are read, none is refused", async (ctx) => {
    const root = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const { symbols, refused } = readLibrary(path.join(root, SYMBOLS, "74xx.kicad_sym"));
    expect({ read: symbols.length, refused }).toEqual({ read: 239, refused: [] });
  });

  test("all 209 libraries are read: 17,569 parts, of which the refused have a reason", async (ctx) => {
    const root = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const files = readdirSync(path.join(root, SYMBOLS)).filter((file) => file.endsWith(".kicad_sym"));
    const reasons: Record<string, number> = {};
    let read = 0;
    for (const file of files) {
      const { symbols, refused } = readLibrary(path.join(root, SYMBOLS, file));
      read += symbols.length;
      for (const { reason } of refused) {
        const kind = reason.replace(/^pin .* stands twice: .*$/s, "a pin stands twice");
        reasons[kind] = (reasons[kind] ?? 0) + 1;
      }
    }
    expect({ files: files.length, read, reasons }).toEqual({
      files: 209,
      read: 17_415,
      reasons: {
        "a power symbol for drawings, not a part": 102,
        "no pins": 34,
        "a pin stands twice": 16,
        "a pin has no number": 2,
      },
    });
    expect(17_415 + 102 + 34 + 16 + 2).toBe(17_569);
  });

  test("in 74xx no two pins of a part share both name and sense, except where the data sheet names none apart", async (ctx) => {
    const root = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const { symbols } = readLibrary(path.join(root, SYMBOLS, "74xx.kicad_sym"));
    // One section at a time: the gates of one package have the same names.
    const clashes = symbols.filter(({ pins }) => {
      const told = pins.filter((pin) => pin.name !== "" && !["supply", "ground", "unused"].includes(pin.role));
      return new Set(told.map((pin) => `${pin.unit} ${pin.name} ${pin.activeLow} ${pin.type}`)).size < told.length;
    });
    expect(clashes.map((one) => one.name)).toEqual([]);
  });
});

describe("kicad-symbols against pcb-common", () => {
  test("the supply pins of all 149 function numbers that stand in both agree", async (ctx) => {
    const kicad = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const pcb = await needsDebianPackage(ctx, "pcb-common", "kicad");
    const lists = pinLists(readFileSync(path.join(pcb, "usr/share/pcb/m4/TTL_74xx_DIL.m4"), "utf8"));
    const compared = new Set<string>();
    const differing: string[] = [];
    for (const part of readLibrary(path.join(kicad, SYMBOLS, "74xx.kicad_sym")).symbols) {
      const number = functionNumber(part.name) ?? "";
      const names = lists.get(`74${number}`);
      if (names === undefined) continue;
      compared.add(number);
      const ours = part.pins.flatMap((pin) =>
        pin.role === "supply" || pin.role === "ground" ? [`${pin.role} ${pin.number}`] : [],
      );
      const theirs = names.flatMap((name, i) =>
        /^vcc$/i.test(name) ? [`supply ${i + 1}`] : /^gnd$/i.test(name) ? [`ground ${i + 1}`] : [],
      );
      if (ours.toSorted().join() !== theirs.toSorted().join() || part.packageGuess.pinCount !== names.length)
        differing.push(`${part.name}: ${ours.join()} against ${theirs.join()}, ${part.packageGuess.name}`);
    }
    expect({ lists: lists.size, compared: compared.size, differing }).toEqual({
      lists: 291,
      compared: 149,
      differing: [],
    });
  });
});

/** TI SDLS144 (74LS244), SDLS025 (74LS00), SDLS940 (74LS90), pin tables; pin names as the library spells them. */
const BY_HAND: Record<string, Record<string, string>> = {
  "74LS244": {
    1: "OEa low enable",
    2: "I0a input",
    3: "O3b output",
    4: "I1a input",
    9: "O0b output",
    10: "GND ground",
    11: "I0b input",
    18: "O0a output",
    19: "OEb low enable",
    20: "VCC supply",
  },
  "74LS00": {
    1: " input",
    2: " input",
    3: " low output",
    6: " low output",
    7: "GND ground",
    8: " low output",
    11: " low output",
    14: "VCC supply",
  },
  "74LS90": {
    1: "CP1..3 low clock",
    2: "R0(1) reset",
    3: "R0(2) reset",
    5: "VCC supply",
    10: "GND ground",
    12: "Q0 data",
    14: "CP0 low clock",
  },
};

test("pins of the 74LS244, 74LS00 and 74LS90 are those of the data sheets", async (ctx) => {
  const root = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
  const { symbols } = readLibrary(path.join(root, SYMBOLS, "74xx.kicad_sym"));
  const told = Object.entries(BY_HAND).map(([name, expected]) => {
    const pins = partNamed(symbols, name).pins.filter((pin) => pin.number in expected);
    return [
      name,
      Object.fromEntries(pins.map((pin) => [pin.number, `${pin.name}${pin.activeLow ? " low" : ""} ${pin.role}`])),
    ];
  });
  expect(Object.fromEntries(told)).toEqual(BY_HAND);
});
