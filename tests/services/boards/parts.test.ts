import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  createBoard,
  partLineOf,
  placementsOfText,
  planParts,
  readBoard,
  updateBoard,
} from "#lib/services/boards/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  const ctx = club.ctx(ada);
  await createChip(ctx, { name: "74LS244", function: "octal buffer" });
  await createChip(ctx, { name: "27C256", function: "EPROM" });
  await createChip(ctx, { name: "7805", function: "5 V regulator" });
  await createChip(ctx, { name: "VQ4-0061", function: "clock maker" });
  await createChip(ctx, { name: "LM339" });
  await createChip(ctx, { name: "CA339" });
  await createCode(ctx, { code: "VQ4-0061-03", chip: "vq4-0061" });
});
afterAll(() => club.close());

const plan = (text: string, more: object = {}) => planParts(club.ctx(ada), { text, ...more });

describe("each way of writing a part finds its record", () => {
  test.each([
    ["U1 74LS244", { chip: "74ls244", code: null, value: "" }],
    ["U1 SN74LS244N", { chip: "74ls244", code: null, value: "SN74LS244N" }],
    ["u1: 74 ls 244", { chip: "74ls244", code: null, value: "74 ls 244" }],
    ["74LS244 U1", { chip: "74ls244", code: null, value: "" }],
    ["U1 VQ4-0061-03", { chip: "vq4-0061", code: "VQ4-0061-03", value: "VQ4-0061-03" }],
    ["U1 VQ4 0061 03", { chip: "vq4-0061", code: "VQ4-0061-03", value: "VQ4-0061-03" }],
    ["U1 VQ4 0061", { chip: "vq4-0061", code: null, value: "VQ4 0061" }],
    ["VR1 7805", { chip: "7805", code: null, value: "" }],
    ["U1 octal buffer 74LS244 soldered", { chip: "74ls244", code: null, value: "" }],
    ["U1 XYZ123", { chip: null, code: null, value: "XYZ123" }],
    ["R1 7805", { chip: "7805", code: null, value: "" }],
    ["C1 100n", { chip: null, code: null, value: "100n" }],
  ])("%s", async (line, found) => {
    const { parts, problems } = await plan(line);
    const [part] = parts;
    expect({
      chip: part?.chip?.slug ?? null,
      code: part?.code?.code ?? null,
      value: part?.value,
      problems,
    }).toEqual({ ...found, problems: [] });
  });

  test("a regulator is a chip wherever it stands", async () => {
    expect((await plan("VR1 7805")).parts[0]?.kind).toBe("chip");
  });

  test("where two records fit, both are named and none is taken", async () => {
    expect((await plan("U1 339")).parts[0]).toMatchObject({ chip: null, value: "339", choices: ["CA339", "LM339"] });
  });
});

test("a new list is all new; lines that cannot be read and parts that stand twice are named by their line", async () => {
  const read = await plan("U1 74LS244 DIP-20 socketed sheet 2 at 20,40 (bus)\n\nhello\nC1-C3 100n\nU1 27C256");
  expect(read.counts).toEqual({ new: 4, changed: 0, same: 0, gone: 0 });
  expect(read.problems.map(({ line }) => line)).toEqual([3, 5]);
  expect(read.placements).toEqual([
    {
      designator: "U1",
      kind: "chip",
      value: "",
      chip: "74ls244",
      code: null,
      package: "DIP-20",
      socketed: true,
      sheet: "2",
      x: 20,
      y: 40,
      notes: "bus",
    },
    ...["C1", "C2", "C3"].map((designator) => ({
      designator,
      kind: "capacitor",
      value: "100n",
      chip: null,
      code: null,
      package: "",
      socketed: false,
      sheet: "",
      x: null,
      y: null,
      notes: "",
    })),
  ]);
});

describe("against a board that has its list", () => {
  beforeAll(async () => {
    await createBoard(club.ctx(ada), {
      name: "Lark",
      kind: "terminal",
      placements: await placementsOfText(
        club.ctx(ada),
        { text: "U1 74LS244 DIP-20 socketed sheet 2 (bus)\nU2 27C256\nU3 NEW99\nC1 | 10u 16V tantalum" },
        { leaveOut: false },
      ),
    });
  });
  const present = async () => (await readBoard(club.ctx(ada), "lark")).placements.map(partLineOf);

  test("its own list changes nothing", async () => {
    const { counts, problems } = await plan((await present()).join("\n"), { board: "lark" });
    expect({ counts, problems }).toEqual({ counts: { new: 0, changed: 0, same: 4, gone: 0 }, problems: [] });
  });

  test("a whole list says what is new, changed, kept and taken out", async () => {
    const read = await plan("U1 74LS244 DIP-20 sheet 2 (bus)\nU2 27C256\nU3 NEW99\nU9 LM339", { board: "lark" });
    expect(read.parts.map(({ designator, change, before }) => [designator, change, before])).toEqual([
      ["U1", "changed", "U1 74LS244 DIP-20 socketed sheet 2 (bus)"],
      ["U2", "same", null],
      ["U3", "same", null],
      ["U9", "new", null],
      ["C1", "gone", "C1 | 10u 16V tantalum"],
    ]);
    expect(read.placements.map(({ designator }) => designator)).toEqual(["U1", "U2", "U3", "U9"]);
  });

  test("a list that only adds keeps what it does not name, and what its lines leave out", async () => {
    const read = await plan("U1 27C256\nU9 LM339", { board: "lark", whole: false });
    expect(read.counts).toEqual({ new: 1, changed: 1, same: 3, gone: 0 });
    expect(read.placements[0]).toMatchObject({ designator: "U1", chip: "27c256", socketed: true, notes: "bus" });
    expect(read.placements.map(({ designator }) => designator)).toEqual(["U1", "U9", "U2", "U3", "C1"]);
  });

  test("a number that had no record finds it when the list is read again later", async () => {
    await createChip(club.ctx(ada), { name: "NEW99" });
    const read = await plan("U3 NEW99 ", { board: "lark", whole: false });
    expect(read.parts[0]).toMatchObject({ change: "same", chip: null });
    const again = await plan("U3 new99", { board: "lark", whole: false });
    expect(again.parts[0]).toMatchObject({ change: "changed", chip: { slug: "new99" } });
  });

  test("what is saved is what was planned", async () => {
    const { placements } = await plan("U1 74LS244\nU2 VQ4-0061-03 socketed", { board: "lark" });
    const { version } = await readBoard(club.ctx(ada), "lark");
    await updateBoard(club.ctx(ada), "lark", version, { placements });
    expect(await present()).toEqual(["U1 74LS244", "U2 VQ4-0061-03 socketed"]);
  });
});

describe("refusals", () => {
  const text = "U1 74LS244\nhello";
  test("a line that cannot be read stops the saving, unless it is to be left out", async () => {
    await expect(placementsOfText(club.ctx(ada), { text }, { leaveOut: false })).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path: "parts", message: expect.stringMatching(/^Line 2: /) }] },
    });
    expect(await placementsOfText(club.ctx(ada), { text }, { leaveOut: true })).toHaveLength(1);
  });

  test("a visitor plans nothing, and nobody plans for a board that is not there", async () => {
    await expect(planParts(club.ctx({ kind: "visitor" }), { text })).rejects.toMatchObject({ code: "not-signed-in" });
    await expect(plan(text, { board: "none" })).rejects.toMatchObject({ code: "not-found" });
  });
});
