import { readFile } from "node:fs/promises";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createChip, readChip, updateChip } from "#lib/services/chips/index.ts";
import type { Ctx, MemberActor } from "#lib/services/context.ts";
import { commitImport, listImports, planImport, readImport } from "#lib/services/imports/index.ts";
import { library, pin, property, symbol, unit } from "#tests/core/pinout/library.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let ctx: Ctx;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  ctx = club.ctx(ada);
});
afterAll(() => club.close());

const plan = (fileName: string, text: string, by = ctx) =>
  planImport(by, { format: "symbols", fileName, bytes: new TextEncoder().encode(text) });

/** An inverter with a name for its output, so that a file can come again with another one. */
const inverter = (name: string, output: string) =>
  symbol(
    name,
    property("Reference", "U"),
    property("ki_description", "Single inverter"),
    property("ki_fp_filters", "DIP*W7.62mm*"),
    unit(
      `${name}_1_1`,
      pin("input", "line", "A", "1"),
      pin("output", "inverted", output, "2"),
      pin("power_in", "line", "VCC", "4"),
      pin("power_in", "line", "GND", "3"),
    ),
  );

describe("a symbol library", () => {
  test("is shown first, written when committed, and changes nothing once more", async () => {
    const first = await plan("small.kicad_sym", library(inverter("INV1", "Y"), symbol("EMPTY")));
    expect(first).toMatchObject({
      format: "symbols",
      library: "small",
      state: "planned",
      by: { handle: "ada" },
      counts: { new: 1, changed: 0, same: 0, refused: 1 },
      symbols: [
        { name: "INV1", state: "new", chip: "inv1", changes: [], why: "", line: null },
        { name: "EMPTY", state: "refused", chip: null, why: "no pins", line: 25 },
      ],
    });
    await expect(readChip(ctx, "inv1")).rejects.toMatchObject({ code: "not-found" });

    const done = await commitImport(ctx, first.id);
    expect(done.state).toBe("committed");
    const chip = await readChip(ctx, "inv1");
    expect(chip).toMatchObject({
      name: "INV1",
      function: "Single inverter",
      source: "small:INV1",
      contents: "unknown",
      version: 1,
      packages: [
        {
          style: "DIP",
          pinCount: 4,
          pins: [
            { number: "1", name: "A", type: "input", activeLow: false, unit: 1 },
            { number: "2", name: "Y", type: "output", activeLow: true, unit: 1 },
            { number: "3", name: "GND", role: "ground", supply: null },
            { number: "4", name: "VCC", role: "supply" },
          ],
        },
      ],
    });
    // The history row has the shape that recording a chip by hand writes.
    const { boards: _boards, codes: _codes, ...snapshot } = chip;
    expect(
      await club.database.db.recordRevision.findMany({
        where: { recordId: chip.id },
        select: { did: true, version: true, memberId: true, snapshot: true },
      }),
    ).toEqual([{ did: "chip.import", version: 1, memberId: ada.id, snapshot }]);

    expect(await commitImport(ctx, first.id)).toEqual(done);
    expect(await readChip(ctx, "inv1")).toEqual(chip);
    const again = await plan("small.kicad_sym", library(inverter("INV1", "Y")));
    expect(again.counts).toEqual({ new: 0, changed: 0, same: 1, refused: 0 });
    await commitImport(ctx, again.id);
    expect(await readChip(ctx, "inv1")).toEqual(chip);
  });

  test("a chip that came from it follows the file; what members added stays", async () => {
    await commitImport(ctx, (await plan("follow.kicad_sym", library(inverter("INV2", "Y")))).id);
    await updateChip(ctx, "inv2", 1, { notes: "Runs hot." });
    const next = await plan("follow.kicad_sym", library(inverter("INV2", "Z")));
    expect(next.symbols).toMatchObject([
      {
        name: "INV2",
        state: "changed",
        changes: ["pin 2 was Y (output, output, active low), is Z (output, output, active low)"],
      },
    ]);
    await commitImport(ctx, next.id);
    expect(await readChip(ctx, "inv2")).toMatchObject({
      notes: "Runs hot.",
      version: 3,
      packages: [{ pins: [{ name: "A" }, { name: "Z" }, { name: "GND" }, { name: "VCC" }] }],
    });
  });

  test("a chip that changed since the dry run refuses the commit, and nothing is written", async () => {
    await commitImport(ctx, (await plan("race.kicad_sym", library(inverter("INV3", "Y")))).id);
    const planned = await plan("race.kicad_sym", library(inverter("INV3", "Z"), inverter("INV4", "Y")));
    await updateChip(ctx, "inv3", 1, { notes: "Meanwhile." });
    await expect(commitImport(ctx, planned.id)).rejects.toMatchObject({
      code: "conflict",
      message: expect.stringContaining("inv3"),
    });
    await expect(readChip(ctx, "inv4")).rejects.toMatchObject({ code: "not-found" });
    expect(await readChip(ctx, "inv3")).toMatchObject({ version: 2, notes: "Meanwhile." });
  });

  test("a chip that was recorded since the dry run refuses the commit", async () => {
    const planned = await plan("late.kicad_sym", library(inverter("INV5", "Y")));
    await createChip(ctx, { name: "INV5" });
    await expect(commitImport(ctx, planned.id)).rejects.toMatchObject({ code: "conflict" });
  });

  const byHand = (name: string, second: string) => ({
    name,
    function: "inverter, written by hand",
    packages: [
      {
        name: "DIP-4",
        style: "DIP",
        pins: [
          { number: "1", name: "A", type: "input", role: "data" },
          { number: "2", name: second, type: "output", activeLow: true },
          { number: "3", name: "GND", role: "ground" },
          { number: "4", name: "VCC", role: "supply", supply: 5 },
        ],
      },
    ],
  });

  test("a record written by hand keeps every word and pin, and a contradiction is named", async () => {
    const [table] = byHand("INV7", "Y").packages;
    const contradicted = {
      ...table,
      pins: table?.pins.map((one) => (one.number === "2" ? { ...one, type: "input" } : one)),
    };
    const [free] = byHand("INV6", "OUT").packages;
    const withFreePin = { ...free, pins: [...(free?.pins ?? []), { number: "5", name: "NC", type: "no-connect" }] };
    await createChip(ctx, { ...byHand("INV6", "OUT"), packages: [withFreePin] });
    await createChip(ctx, { ...byHand("INV7", "Y"), packages: [contradicted] });
    const planned = await plan("hand.kicad_sym", library(inverter("INV6", "Y"), inverter("INV7", "Y")));
    expect(planned.symbols).toMatchObject([
      {
        name: "INV6",
        state: "same",
        why: "the record written here by hand stays as it is; it names 1 of its pins otherwise",
      },
      {
        name: "INV7",
        state: "refused",
        why: "the record written here by hand stays as it is; 1 pin contradicts the file: pin 2 is “/Y”, an input, here and “/Y”, an output, in the file",
      },
    ]);
    await commitImport(ctx, planned.id);
    expect(await readChip(ctx, "inv6")).toMatchObject({
      version: 1,
      source: "",
      packages: [{ pins: [{ role: "data" }, {}, {}, { supply: 5 }, { name: "NC" }] }],
    });
  });

  test("a record written by hand gains a package that it does not have", async () => {
    await createChip(ctx, { name: "INV8", function: "inverter in a can", technology: "TTL" });
    const planned = await plan("add.kicad_sym", library(inverter("INV8", "Y")));
    expect(planned.symbols).toMatchObject([
      { state: "changed", changes: ["package DIP-4 is added to the record written here by hand"] },
    ]);
    await commitImport(ctx, planned.id);
    expect(await readChip(ctx, "inv8")).toMatchObject({
      function: "inverter in a can",
      technology: "TTL",
      source: "",
      version: 2,
      packages: [{ name: "DIP-4", pinCount: 4 }],
    });
  });

  test("two parts whose names differ in signs only get addresses of their own, the same ones every time", async () => {
    const text = library(inverter("INV9+", "Y"), inverter("INV9", "Y"));
    const planned = await plan("signs.kicad_sym", text);
    expect(planned.symbols.map((one) => one.chip)).toEqual(["inv9", "inv9-2"]);
    await commitImport(ctx, planned.id);
    expect((await plan("signs.kicad_sym", text)).counts).toEqual({ new: 0, changed: 0, same: 2, refused: 0 });
  });
});

describe("refused", () => {
  test.each([
    ["a file with a lost bracket", "bad.kicad_sym", '(kicad_symbol_lib\n  (symbol "A"\n', /^Line 2: /],
    ["another kind of text", "bad.kicad_sym", "U1 74LS244\nU2 27C256\n", /^Line 1: /],
    ["a picture under a false name", "bad.kicad_sym", "\u0000\u0001PNG", /^Line 1: not text/],
    ["an empty file", "bad.kicad_sym", "", /empty/],
  ])("%s, with the line", async (_, name, text, message) => {
    await expect(plan(name, text)).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path: "file", message: expect.stringMatching(message) }] },
    });
  });

  test.each(["netlist", "capture", "bundle", ""])("the format %j, which is not taken yet", async (format) => {
    await expect(planImport(ctx, { format, fileName: "a", bytes: new Uint8Array(1) })).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path: "format" }] },
    });
  });

  test("a file over the limit, before it is read", async () => {
    const bytes = new Uint8Array(60_000_001);
    await expect(planImport(ctx, { format: "symbols", fileName: "big.kicad_sym", bytes })).rejects.toMatchObject({
      code: "too-large",
    });
  });

  test("visitors, and tokens without the scope", async () => {
    const text = library(inverter("NO1", "Y"));
    await expect(plan("no.kicad_sym", text, club.ctx({ kind: "visitor" }))).rejects.toMatchObject({
      code: "not-signed-in",
    });
    await expect(plan("no.kicad_sym", text, club.ctx({ ...ada, scopes: ["write"] }))).rejects.toMatchObject({
      code: "forbidden",
    });
  });

  test("another member's import is not there for one, and is for a steward", async () => {
    const bo = await club.member("bo");
    const steward = await club.member("sten", "steward");
    const mine = await plan("mine.kicad_sym", library(inverter("MINE1", "Y")));
    await expect(readImport(club.ctx(bo), mine.id)).rejects.toMatchObject({ code: "not-found" });
    await expect(commitImport(club.ctx(bo), mine.id)).rejects.toMatchObject({ code: "not-found" });
    expect(await listImports(club.ctx(bo))).toEqual([]);
    expect(await readImport(club.ctx(steward), mine.id)).toEqual(mine);
  });
});

// Source: Debian's package kicad-symbols 6.0, file 74xx.kicad_sym: 239 parts, 3,952 pins counted with grep.
test("the whole 74xx library goes in, and a second time finds nothing to do", async (task) => {
  const folder = await needsDebianPackage(task, "kicad-symbols", "kicad");
  const bytes = await readFile(path.join(folder, "usr/share/kicad/symbols/74xx.kicad_sym"));
  const own = await testClub();
  try {
    const by = own.ctx(await own.member("ada"));
    const planned = await planImport(by, { format: "symbols", fileName: "74xx.kicad_sym", bytes });
    expect(planned.counts).toEqual({ new: 239, changed: 0, same: 0, refused: 0 });
    await commitImport(by, planned.id);
    expect(await own.database.db.chip.count()).toBe(239);
    expect(await own.database.db.chipPin.count()).toBe(3952);
    expect(await own.database.db.recordRevision.count({ where: { did: "chip.import" } })).toBe(239);
    expect(await readChip(by, "74ls244")).toMatchObject({
      source: "74xx:74LS244",
      technology: "LS",
      contents: "none",
      packages: [{ name: "DIP-20", style: "DIP", pinCount: 20 }],
    });
    const again = await planImport(by, { format: "symbols", fileName: "74xx.kicad_sym", bytes });
    expect(again.counts).toEqual({ new: 0, changed: 0, same: 239, refused: 0 });
  } finally {
    await own.close();
  }
});
