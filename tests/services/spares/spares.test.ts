import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createBoard } from "#lib/services/boards/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { closeSpare, createSpare, listSpares, readSpare, spareLists, updateSpare } from "#lib/services/spares/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: Ctx;
let bo: Ctx;
let stella: Ctx;
let visitor: Ctx;

beforeAll(async () => {
  club = await testClub();
  ada = club.ctx(await club.member("ada"));
  bo = club.ctx(await club.member("bo"));
  stella = club.ctx(await club.member("stella", "steward"));
  visitor = club.ctx({ kind: "visitor" });
  await createChip(ada, { name: "74LS244" });
  await createChip(ada, { name: "74LS245" });
  await createCode(ada, { code: "SN74LS244N", chip: "74ls244" });
  await createCode(ada, { code: "VQ4-0061-03" });
  await createBoard(ada, { slug: "finch", name: "Finch CPU", kind: "other" });
});
afterAll(() => club.close());

const history = (id: string) =>
  club.database.db.recordRevision.findMany({
    where: { recordKind: "spare", recordId: id },
    select: { did: true, version: true, member: { select: { handle: true } } },
    orderBy: { version: "asc" },
  });

describe("offering and asking", () => {
  test("an offer is read back, changed and closed; its history keeps every step", async () => {
    const { id } = await createSpare(ada, { direction: "offer", code: "sn74ls244n", quantity: 3, note: "pulled" });
    expect(await readSpare(bo, id)).toMatchObject({
      direction: "offer",
      code: { code: "SN74LS244N" },
      quantity: 3,
      visibility: "members",
      mine: false,
      version: 1,
    });
    await updateSpare(ada, id, 1, { direction: "offer", code: "SN74LS244N", quantity: 2 });
    await closeSpare(ada, id, 2);
    await expect(readSpare(ada, id)).rejects.toMatchObject({ code: "not-found" });
    const by = { handle: "ada" };
    expect(await history(id)).toEqual([
      { did: "spare.create", version: 1, member: by },
      { did: "spare.update", version: 2, member: by },
      { did: "spare.close", version: 3, member: by },
    ]);
  });

  test("the second writer is shown the present version, and nothing is overwritten", async () => {
    const { id } = await createSpare(ada, { direction: "want", chip: "74ls244" });
    await updateSpare(ada, id, 1, { direction: "want", chip: "74ls244", note: "first" });
    await expect(updateSpare(ada, id, 1, { direction: "want", chip: "74ls244", note: "second" })).rejects.toMatchObject(
      {
        code: "stale",
        extra: { present: { note: "first", version: 2 } },
      },
    );
    await expect(closeSpare(ada, id, 1)).rejects.toMatchObject({ code: "stale" });
    await closeSpare(ada, id, 2);
  });

  test("the same request again makes no second spare; another member's id is refused", async () => {
    const id = ada.newId();
    const input = { id, direction: "offer", note: "once" };
    expect(await createSpare(ada, input)).toEqual({ id, made: true });
    expect(await createSpare(ada, input)).toEqual({ id, made: false });
    await expect(createSpare(bo, input)).rejects.toMatchObject({ code: "conflict" });
    await closeSpare(ada, id, 1);
  });

  test("another member may not change it, a steward may", async () => {
    const { id } = await createSpare(ada, { direction: "offer", note: "mine" });
    await expect(updateSpare(bo, id, 1, { direction: "offer", note: "his" })).rejects.toMatchObject({
      code: "forbidden",
    });
    await expect(closeSpare(bo, id, 1)).rejects.toMatchObject({ code: "forbidden" });
    await closeSpare(stella, id, 1);
  });

  test("a visitor and a token that only reads offer nothing", async () => {
    await expect(createSpare(visitor, { direction: "offer", note: "x" })).rejects.toMatchObject({
      code: "not-signed-in",
    });
    const actor = {
      kind: "member",
      id: ada.newId(),
      handle: "t",
      name: "t",
      role: "member",
      scopes: ["read"],
    } as const;
    await expect(createSpare({ ...ada, actor }, { direction: "offer", note: "x" })).rejects.toMatchObject({
      code: "forbidden",
    });
  });

  test.each([
    ["nothing said of what it is", { direction: "offer" }, "code"],
    ["an unknown code", { direction: "offer", code: "NOSUCH-1" }, "code"],
    ["an unknown chip", { direction: "offer", chip: "nosuch" }, "chip"],
    ["an unknown board", { direction: "offer", board: "nosuch" }, "board"],
    ["no piece", { direction: "offer", note: "x", quantity: 0 }, "quantity"],
  ])("%s is refused at its field", async (_, input, path) => {
    const error: unknown = await createSpare(ada, input).catch((reason: unknown) => reason);
    const { issues, extra } = error as { issues?: { path: string[] }[]; extra?: { problems: { path: string }[] } };
    expect(issues?.[0]?.path[0] ?? extra?.problems[0]?.path).toBe(path);
  });
});

describe("who has one", () => {
  let ids: Record<"offer" | "want" | "sameChip" | "other" | "donor" | "donorWant" | "own", string>;
  beforeAll(async () => {
    const add = async (ctx: Ctx, input: object) => (await createSpare(ctx, input)).id;
    ids = {
      offer: await add(ada, { direction: "offer", code: "SN74LS244N", quantity: 5 }),
      want: await add(bo, { direction: "want", chip: "74ls244", visibility: "public" }),
      sameChip: await add(stella, { direction: "offer", chip: "74ls244", visibility: "public" }),
      other: await add(ada, { direction: "offer", chip: "74ls245", visibility: "public" }),
      donor: await add(ada, { direction: "offer", board: "finch", visibility: "public" }),
      donorWant: await add(bo, { direction: "want", board: "finch", note: "for its plug", visibility: "public" }),
      own: await add(bo, { direction: "offer", chip: "74ls244" }),
    };
  });

  const answersOf = async (ctx: Ctx, id: string) => {
    const { offers, wants } = await spareLists(ctx, {});
    return [...offers, ...wants].find((spare) => spare.id === id)?.counterparts.map((one) => one.id);
  };

  test("a want stands beside the offers of the same chip by whatever code, but not its owner's own", async () => {
    expect(await answersOf(ada, ids.want)).toEqual([ids.offer, ids.sameChip]);
    expect(await answersOf(ada, ids.offer)).toEqual([ids.want]);
    expect(await answersOf(ada, ids.other)).toEqual([]);
    expect(await answersOf(ada, ids.donorWant)).toEqual([ids.donor]);
  });

  test("a visitor sees only what is for everybody, also beside a want", async () => {
    const seen = (await listSpares(visitor, {})).map((spare) => spare.id);
    expect(seen.toSorted()).toEqual([ids.want, ids.sameChip, ids.other, ids.donor, ids.donorWant].toSorted());
    expect(await answersOf(visitor, ids.want)).toEqual([ids.sameChip]);
    await expect(readSpare(visitor, ids.offer)).rejects.toMatchObject({ code: "not-found" });
  });

  test.each([
    ["a code however it is written", "74 ls 244", ["offer", "want", "sameChip", "own"]],
    ["another maker's code", "SN74LS244N", ["offer", "want", "sameChip", "own"]],
    ["a board's name", "finch", ["donor", "donorWant"]],
    ["words of a note", "PLUG", ["donorWant"]],
    ["a member", "stella", ["sameChip"]],
    ["nothing of the kind", "zzz", []],
  ] as const)("%s", async (_, q, expected) => {
    const { offers, wants } = await spareLists(ada, { q });
    expect([...offers, ...wants].map((spare) => spare.id).toSorted()).toEqual(
      expected.map((name) => ids[name]).toSorted(),
    );
  });
});
