// Checked against the pin tables of Debian's kicad-symbols 6.0.10 (CC-BY-SA), fetched when they are wanted.
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import type { PinType } from "#lib/core/shared/index.ts";
import { readSymbolLibrary, type ChipSymbol } from "#lib/core/pinout/index.ts";
import { chips as customs } from "#seed/customs/a.ts";
import type { SeedBoard, SeedPlacement } from "#seed/shapes.ts";
import { board as harrow } from "#seed/boards/harrow-80.ts";
import { board as merle } from "#seed/boards/merle-mainboard.ts";
import { board as ploverCounter } from "#seed/boards/plover-counter.ts";
import { board as ploverSupply } from "#seed/boards/plover-supply.ts";
import { board as vetchDeflection } from "#seed/boards/vetch-terminal-deflection.ts";
import { board as vetchLogic } from "#seed/boards/vetch-terminal-logic.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";

const boards: SeedBoard[] = [harrow, merle, vetchLogic, vetchDeflection, ploverCounter, ploverSupply];

/** Library and name of the symbol for a chip of the seed, where the libraries have it. */
const SYMBOL_OF: Record<string, [library: string, name: string]> = {
  z80cpu: ["CPU", "Z80CPU"],
  "8255": ["Interface", "8255"],
  "2764": ["Memory_EPROM", "2764"],
  "27c256": ["Memory_EPROM", "27C256"],
  lm324: ["Amplifier_Operational", "LM324"],
  lm339: ["Comparator", "LM339"],
  ne555: ["Timer", "NE555P"],
  uln2003: ["Transistor_Array", "ULN2003"],
};

interface Leg {
  board: string;
  /** `U7.14 A2`: the place and the pin's name in the outside table. */
  at: string;
  chip: string;
  type: PinType;
  name: string;
  net: string;
  role: string;
}

type PinTable = readonly { number: string; name: string; type: PinType }[];

/** Pin tables by slug of the seed: from the libraries, else from the customs; undefined where neither has the part. */
function pinTables(root: string): (slug: string) => PinTable | undefined {
  const libraries = new Map<string, readonly ChipSymbol[]>();
  const open = (name: string): readonly ChipSymbol[] => {
    const known = libraries.get(name);
    if (known !== undefined) return known;
    const file = path.join(root, "usr/share/kicad/symbols", `${name}.kicad_sym`);
    const read = readSymbolLibrary(readFileSync(file, "utf8"), { libraryName: name });
    if (!read.ok) throw new Error(read.problem.reason);
    libraries.set(name, read.value.symbols);
    return read.value.symbols;
  };
  return (slug) => {
    const custom = customs.find((one) => one.slug === slug)?.packages[0]?.pins;
    const [library, name] = SYMBOL_OF[slug] ?? ["74xx", slug.toUpperCase()];
    return custom ?? open(library).find((one) => one.name === name)?.pins;
  };
}

function legsOf(board: SeedBoard, part: SeedPlacement, table: PinTable): Leg[] {
  return table.map((pin) => {
    const at = `${part.designator}.${pin.number}`;
    const net = board.nets.find((one) => one.pins.includes(at));
    return {
      board: board.slug,
      at: `${at} ${pin.name}`,
      chip: part.chip ?? "",
      type: pin.type,
      name: pin.name,
      net: net?.name ?? "",
      role: net?.role ?? "",
    };
  });
}

function allLegs(root: string): Leg[] {
  const tableOf = pinTables(root);
  return boards.flatMap((board) =>
    board.placements.flatMap((part) => legsOf(board, part, tableOf(part.chip ?? "") ?? [])),
  );
}

function outputsThatMeet(legs: readonly Leg[]): string[] {
  const drivers = legs.filter((leg) => leg.type === "output" && leg.net !== "");
  return drivers
    .filter((leg) => drivers.some((other) => other !== leg && other.board === leg.board && other.net === leg.net))
    .map((leg) => `${leg.board} ${leg.at} on ${leg.net}`);
}

const isFeed = (leg: Leg): boolean => leg.role === "power" || leg.role === "ground";

describe("the nets against pin tables from outside", () => {
  test("reach most chips of these boards", async (ctx) => {
    const legs = allLegs(await needsDebianPackage(ctx, "kicad-symbols", "kicad"));
    expect(new Set(legs.map((leg) => leg.chip)).size).toBeGreaterThanOrEqual(35);
  });

  test("feed every supply pin, and tie no output to a rail", async (ctx) => {
    const legs = allLegs(await needsDebianPackage(ctx, "kicad-symbols", "kicad"));
    expect(legs.filter((leg) => leg.type === "power-in" && !isFeed(leg))).toEqual([]);
    expect(legs.filter((leg) => leg.type === "output" && isFeed(leg))).toEqual([]);
  });

  test("let no two outputs meet", async (ctx) => {
    const legs = allLegs(await needsDebianPackage(ctx, "kicad-symbols", "kicad"));
    expect(outputsThatMeet(legs)).toEqual([]);
  });

  test("leave no input of a logic chip open", async (ctx) => {
    const legs = allLegs(await needsDebianPackage(ctx, "kicad-symbols", "kicad"));
    const open = legs.filter((leg) => leg.chip.startsWith("74") && leg.type === "input" && leg.net === "");
    expect(open).toEqual([]);
  });

  test("bring each address and data pin of processors and EPROMs to the line of its number", async (ctx) => {
    const legs = allLegs(await needsDebianPackage(ctx, "kicad-symbols", "kicad"));
    const lines = legs.filter((leg) => ["z80cpu", "2764", "27c256"].includes(leg.chip) && /^[AD]\d+$/.test(leg.name));
    const astray = lines.filter((leg) => leg.net !== leg.name).map((leg) => `${leg.board} ${leg.at} on ${leg.net}`);
    // The link JP1 chooses the half of the EPROM.
    expect(astray).toEqual(["merle-mainboard U6.27 A14 on U6A14"]);
  });
});
