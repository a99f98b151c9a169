import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createBoard } from "#lib/services/boards/index.ts";
import { createCase } from "#lib/services/cases/index.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { createCode } from "#lib/services/codes/index.ts";
import type { Actor, MemberActor } from "#lib/services/context.ts";
import { search } from "#lib/services/search/index.ts";
import { closeSpare, createSpare } from "#lib/services/spares/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let bo: MemberActor;
let steward: MemberActor;
const visitor: Actor = { kind: "visitor" };

beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  bo = await club.member("bo");
  steward = await club.member("stella", "steward");
});
afterAll(() => club.close());

async function found(actor: Actor, q: string): Promise<string[]> {
  await club.settled();
  return (await search(club.ctx(actor), { q })).hits.map((hit) => hit.title);
}

/** Who of these finds something for the words. */
async function finders(q: string): Promise<string[]> {
  const who: [string, Actor][] = [
    ["visitor", visitor],
    ["author", ada],
    ["member", bo],
    ["steward", steward],
  ];
  const seen: string[] = [];
  for (const [name, actor] of who) if ((await found(actor, q)).length > 0) seen.push(name);
  return seen;
}

describe("who finds what", () => {
  test("a draft is found by its author alone", async () => {
    await createCase(club.ctx(ada), { symptomText: "draftword" });
    expect(await finders("draftword")).toEqual(["author"]);
  });

  test("a published case is found by everybody", async () => {
    await createCase(club.ctx(ada), { symptomText: "publicword", publish: true });
    expect(await finders("publicword")).toEqual(["visitor", "author", "member", "steward"]);
  });

  test("a spare for members is not found by visitors", async () => {
    await createSpare(club.ctx(ada), { direction: "offer", note: "memberword" });
    expect(await finders("memberword")).toEqual(["author", "member", "steward"]);
  });

  test("a spare shown to everybody is, until it is gone", async () => {
    const { id } = await createSpare(club.ctx(ada), { direction: "offer", note: "everyword", visibility: "public" });
    expect(await finders("everyword")).toEqual(["visitor", "author", "member", "steward"]);
    await closeSpare(club.ctx(ada), id, 1);
    expect(await finders("everyword")).toEqual([]);
  });

  test("a hidden case, board, chip and code are found by nobody", async () => {
    const { db } = club.database;
    const ctx = club.ctx(ada);
    const hiddenAt = new Date();
    const made = await createCase(ctx, { symptomText: "hiddenword", publish: true });
    const board = await createBoard(ctx, { name: "Hiddenword", kind: "other" });
    const chip = await createChip(ctx, { name: "Hiddenword" });
    const code = await createCode(ctx, { code: "HW-1001", notes: "hiddenword" });
    expect(await finders("hiddenword")).toEqual(["visitor", "author", "member", "steward"]);
    await db.faultCase.update({ where: { id: made.id }, data: { state: "hidden" } });
    await db.board.update({ where: { id: board.id }, data: { hiddenAt } });
    await db.chip.update({ where: { id: chip.id }, data: { hiddenAt } });
    await db.partCode.update({ where: { id: code.id }, data: { hiddenAt } });
    // No verb hides a record yet, so the change log is written here as `change()` writes it.
    await db.changeLog.createMany({
      data: [
        { recordKind: "case", recordId: made.id, at: hiddenAt },
        { recordKind: "board", recordId: board.id, at: hiddenAt },
        { recordKind: "chip", recordId: chip.id, at: hiddenAt },
        { recordKind: "code", recordId: code.id, at: hiddenAt },
      ],
    });
    expect(await finders("hiddenword")).toEqual([]);
  });

  test("facets count only what the one who asks may see", async () => {
    const ctx = club.ctx(ada);
    await createCase(ctx, { symptomText: "facetword", publish: true });
    await createCase(ctx, { symptomText: "facetword too" });
    await createSpare(ctx, { direction: "offer", note: "facetword" });
    await club.settled();
    const kinds = async (actor: Actor) => (await search(club.ctx(actor), { q: "facetword " })).facets.kind;
    expect(await kinds(visitor)).toEqual({ case: 1 });
    expect(await kinds(bo)).toEqual({ case: 1, spare: 1 });
    expect(await kinds(ada)).toEqual({ case: 2, spare: 1 });
  });
});
