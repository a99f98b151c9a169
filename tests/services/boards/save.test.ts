import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createBoard, listBoards, readBoard, updateBoard } from "#lib/services/boards/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let bo: MemberActor;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  bo = await club.member("bo");
  await createChip(club.ctx(ada), { name: "74LS244", function: "octal buffer" });
});
afterAll(() => club.close());

const kestrel = (name: string) => ({
  name,
  kind: "home-computer",
  rails: [{ name: "+5V", nominal: 5, source: "VR1" }],
  connectors: [
    {
      designator: "J1",
      name: "Power",
      pins: [
        { number: "1", name: "+5V" },
        { number: "2", name: "GND" },
      ],
    },
  ],
  placements: [
    { designator: "u1", kind: "chip", chip: "74ls244", socketed: true, sheet: "2" },
    { designator: "C1", kind: "capacitor", value: "100n" },
  ],
  nets: [{ name: "+5V", role: "power", pins: ["J1.1", "U1.20"] }],
  selfTests: [{ form: "beeps", signal: "1 long", meaning: "ROM", suspects: ["U1"] }],
  cautions: [{ at: "U1", text: "Earth yourself." }],
  revisions: [{ name: "Issue 1" }],
});

describe("a board", () => {
  test("is read back whole, to a visitor too, and its history names who recorded it", async () => {
    const made = await createBoard(club.ctx(ada), kestrel("Kestrel 2 (main board)"));
    expect(made).toMatchObject({ slug: "kestrel-2-main-board", version: 1, made: true });
    expect(await readBoard(club.ctx({ kind: "visitor" }), "kestrel-2-main-board")).toMatchObject({
      name: "Kestrel 2 (main board)",
      rails: [{ name: "+5V", nominal: 5, ac: false, tolerancePercent: null, regulated: true, source: "VR1" }],
      connectors: [{ designator: "J1", pins: [{ number: "1", name: "+5V" }, { number: "2" }] }],
      placements: [
        { designator: "U1", socketed: true, sheet: "2", chip: { slug: "74ls244", function: "octal buffer" } },
        { designator: "C1", value: "100n", chip: null },
      ],
      nets: [{ name: "+5V", role: "power", pins: ["J1.1", "U1.20"] }],
      selfTests: [{ signal: "1 long", suspects: ["U1"] }],
      cautions: [{ at: "U1" }],
      revisions: [{ name: "Issue 1" }],
      version: 1,
    });
    expect(
      await club.database.db.recordRevision.findMany({
        where: { recordId: made.id },
        select: { did: true, version: true, memberId: true },
      }),
    ).toEqual([{ did: "board.create", version: 1, memberId: ada.id }]);
  });

  test("of the same name is refused at its name, and makes nothing", async () => {
    await createBoard(club.ctx(ada), kestrel("Twice"));
    await expect(createBoard(club.ctx(bo), kestrel("Twice"))).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path: "slug", message: expect.stringContaining("twice") }] },
    });
    expect(await club.database.db.board.count({ where: { name: "Twice" } })).toBe(1);
  });

  test("sent twice with its id is made once", async () => {
    const input = { ...kestrel("Sent again"), id: club.ctx().newId() };
    expect(await createBoard(club.ctx(ada), input)).toMatchObject({ made: true });
    expect(await createBoard(club.ctx(ada), input)).toMatchObject({ made: false, version: 1 });
  });

  test("may be corrected by another member; lists that are not given stay", async () => {
    await createBoard(club.ctx(ada), kestrel("Shared"));
    expect(await updateBoard(club.ctx(bo), "shared", 1, { summary: "A small one." })).toMatchObject({ version: 2 });
    expect(await readBoard(club.ctx(bo), "shared")).toMatchObject({
      summary: "A small one.",
      rails: [{ name: "+5V" }],
      placements: [{ designator: "U1" }, { designator: "C1" }],
      version: 2,
    });
  });

  test("that changed meanwhile is shown to the second writer, who overwrites nothing", async () => {
    await createBoard(club.ctx(ada), kestrel("Contested"));
    await updateBoard(club.ctx(bo), "contested", 1, { rails: [{ name: "+12V", nominal: 12 }] });
    await expect(updateBoard(club.ctx(ada), "contested", 1, { rails: [] })).rejects.toMatchObject({
      code: "stale",
      extra: { present: { version: 2, rails: [{ name: "+12V" }] } },
    });
    expect(await readBoard(club.ctx(ada), "contested")).toMatchObject({ version: 2, rails: [{ name: "+12V" }] });
  });

  test("keeps the revisions that cases point to when others are added", async () => {
    await createBoard(club.ctx(ada), kestrel("Issues"));
    const [before] = (await readBoard(club.ctx(ada), "issues")).revisions;
    await updateBoard(club.ctx(ada), "issues", 1, { revisions: [{ name: "Issue 2" }, { name: "Issue 1" }] });
    expect((await readBoard(club.ctx(ada), "issues")).revisions).toEqual([
      { id: expect.any(String), name: "Issue 2", notes: "" },
      { ...before, notes: "" },
    ]);
  });
});

describe("who may not", () => {
  test.each([
    ["a visitor", { kind: "visitor" } as const, "not-signed-in"],
    [
      "a token that may only read",
      { kind: "member", id: "x", handle: "x", name: "x", role: "member", scopes: ["read"] } as const,
      "forbidden",
    ],
  ])("%s records or changes no board", async (_, actor, code) => {
    await expect(createBoard(club.ctx(actor), kestrel("Nobody's"))).rejects.toMatchObject({ code });
    await expect(updateBoard(club.ctx(actor), "kestrel-2-main-board", 1, { summary: "x" })).rejects.toMatchObject({
      code,
    });
  });

  test("a board that does not exist is not found", async () => {
    await expect(readBoard(club.ctx(ada), "none")).rejects.toMatchObject({ code: "not-found" });
    await expect(updateBoard(club.ctx(ada), "none", 1, {})).rejects.toMatchObject({ code: "not-found" });
  });
});

describe("a board that contradicts itself is refused, each point by its place", () => {
  test.each([
    [
      "a designator twice",
      {
        placements: [
          { designator: "U1", kind: "chip" },
          { designator: "u1", kind: "chip" },
        ],
      },
      "placements.1",
      "u1",
    ],
    [
      "a pin on two nets",
      {
        nets: [
          { name: "A", pins: ["U1.1", "U1.2"] },
          { name: "B", pins: ["u1.2"] },
        ],
      },
      "nets.2",
      "u1.2",
    ],
    [
      "a net twice",
      {
        nets: [
          { name: "CLK", pins: [] },
          { name: "clk", pins: [] },
        ],
      },
      "nets.1",
      "clk",
    ],
    [
      "a rail twice",
      {
        rails: [
          { name: "+5V", nominal: 5 },
          { name: "+5v", nominal: 5 },
        ],
      },
      "rails.1",
      "+5v",
    ],
    [
      "a pin of a connector twice",
      { connectors: [{ designator: "J1", pins: [{ number: "1" }, { number: "1" }] }] },
      "connectors.0.pins.1",
      "1",
    ],
    [
      "a chip without a record",
      { placements: [{ designator: "U9", kind: "chip", chip: "nosuch" }] },
      "placements.0.chip",
      "nosuch",
    ],
  ])("%s", async (name, lists, path, named) => {
    await expect(createBoard(club.ctx(ada), { name, kind: "other", ...lists })).rejects.toMatchObject({
      code: "invalid",
      extra: { problems: [{ path, message: expect.stringContaining(named) }] },
    });
    expect(await club.database.db.board.count({ where: { name } })).toBe(0);
  });
});

describe("the list", () => {
  test("counts parts, and narrows by kind and by part of a name", async () => {
    await createBoard(club.ctx(ada), { name: "Ember counter", kind: "bench-instrument", maker: "Ember" });
    const { boards, next } = await listBoards(club.ctx({ kind: "visitor" }), { kind: "bench-instrument", q: "emb" });
    expect({ boards, next }).toEqual({
      boards: [
        {
          slug: "ember-counter",
          name: "Ember counter",
          kind: "bench-instrument",
          maker: "Ember",
          machine: "",
          year: null,
          summary: "",
          cases: 0,
          cured: 0,
          placements: 0,
          copies: 0,
        },
      ],
      next: null,
    });
  });

  test("goes on after the last board of the page before", async () => {
    const ctx = club.ctx(ada);
    const first = await listBoards(ctx, { limit: 2 });
    const second = await listBoards(ctx, { limit: 200, cursor: first.next ?? "" });
    const all = await listBoards(ctx, { limit: 200 });
    expect([...first.boards, ...second.boards]).toEqual(all.boards);
  });
});

describe("the database itself refuses", () => {
  const at = new Date("2024-01-01T00:00:00Z");
  const plain = (slug: string) => ({ id: club.ctx().newId(), slug, name: "x", createdAt: at, updatedAt: at });

  test.each([
    ["a kind that nobody knows", { kind: "toaster" }, "Board_kind_known"],
    ["a hazard that nobody knows", { kind: "other", hazards: ["dragons"] }, "Board_hazards_known"],
    ["an address with spaces", { kind: "other", slug: "not an address" }, "Board_slug_form"],
  ])("%s", async (_, data, constraint) => {
    const create = club.database.db.board.create({ data: { ...plain("forced"), ...data }, select: { id: true } });
    await expect(create).rejects.toThrow(constraint);
  });

  test("a rail whose tolerance is nothing, and a pin on two nets", async () => {
    const { db } = club.database;
    const { id: boardId } = await db.board.findUniqueOrThrow({
      where: { slug: "kestrel-2-main-board" },
      select: { id: true },
    });
    const rail = { id: club.ctx().newId(), boardId, name: "-5V", nominal: -5, tolerancePercent: 0, position: 9 };
    await expect(db.rail.create({ data: rail, select: { id: true } })).rejects.toThrow("Rail_tolerance_positive");
    const net = { id: club.ctx().newId(), boardId, name: "OTHER", role: "signal", position: 9 };
    await db.net.create({ data: net, select: { id: true } });
    const pin = { id: club.ctx().newId(), netId: net.id, boardId, designator: "U1", pin: "20" };
    await expect(db.netPin.create({ data: pin, select: { id: true } })).rejects.toMatchObject({ code: "P2002" });
  });
});
