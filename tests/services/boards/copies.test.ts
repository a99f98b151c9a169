import { afterAll, beforeAll, expect, test } from "vitest";
import { createBoard, createCopy, readBoard, updateCopy } from "#lib/services/boards/index.ts";
import type { MemberActor } from "#lib/services/context.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
let ada: MemberActor;
let bo: MemberActor;
beforeAll(async () => {
  club = await testClub();
  ada = await club.member("ada");
  bo = await club.member("bo");
  await createBoard(club.ctx(ada), { name: "Lark", kind: "terminal", revisions: [{ name: "Issue 1" }] });
});
afterAll(() => club.close());

const copy = (tag: string, more: object = {}) => ({ board: "lark", tag, ...more });

test("a copy belongs to whoever adds it, unless it is said whose it is; its history names who added it", async () => {
  const { id } = await createCopy(club.ctx(ada), copy("L-1", { serial: "0042", revision: "Issue 1", works: true }));
  await createCopy(club.ctx(ada), copy("L-2", { owner: "bo", works: false, contents: "two patches" }));
  await createCopy(club.ctx(ada), copy("L-3", { owner: null }));
  expect((await readBoard(club.ctx({ kind: "visitor" }), "lark")).copies).toMatchObject([
    { tag: "L-1", serial: "0042", works: true, owner: { handle: "ada" }, revision: { name: "Issue 1" }, version: 1 },
    { tag: "L-2", works: false, contents: "two patches", owner: { handle: "bo" }, revision: null },
    { tag: "L-3", works: null, owner: null },
  ]);
  expect(
    await club.database.db.recordRevision.findMany({ where: { recordId: id }, select: { did: true, memberId: true } }),
  ).toEqual([{ did: "copy.create", memberId: ada.id }]);
});

test("a tag stands on one bag only, whether a copy is added or changed", async () => {
  await createCopy(club.ctx(ada), copy("SAME"));
  const other = await createCopy(club.ctx(ada), copy("OTHER"));
  const refused = { code: "invalid", extra: { problems: [{ path: "tag", message: expect.stringContaining("SAME") }] } };
  await expect(createCopy(club.ctx(bo), copy("SAME"))).rejects.toMatchObject(refused);
  await expect(updateCopy(club.ctx(ada), other.id, 1, copy("SAME"))).rejects.toMatchObject(refused);
});

test("whoever read the older version is shown the present one", async () => {
  const { id } = await createCopy(club.ctx(ada), copy("STALE"));
  await updateCopy(club.ctx(bo), id, 1, copy("STALE", { owner: "bo", jumpers: "JP1 open" }));
  await expect(updateCopy(club.ctx(ada), id, 1, copy("STALE", { owner: "ada" }))).rejects.toMatchObject({
    code: "stale",
    extra: { present: { version: 2, jumpers: "JP1 open", owner: { handle: "bo" } } },
  });
});

test.each([
  ["a board that is not there", copy("X", { board: "none" }), { code: "not-found" }],
  [
    "a revision that the board lacks",
    copy("X", { revision: "Issue 9" }),
    { extra: { problems: [{ path: "revision" }] } },
  ],
  ["an owner who is no member", copy("X", { owner: "nobody" }), { extra: { problems: [{ path: "owner" }] } }],
])("%s is refused", async (_, input, refused) => {
  await expect(createCopy(club.ctx(ada), input)).rejects.toMatchObject(refused);
});

test.each([
  ["a visitor", { kind: "visitor" } as const, "not-signed-in"],
  [
    "a token that may only read",
    { kind: "member", id: "x", handle: "x", name: "x", role: "member", scopes: ["read"] } as const,
    "forbidden",
  ],
])("%s adds and changes no copy", async (_, actor, code) => {
  await expect(createCopy(club.ctx(actor), copy("X"))).rejects.toMatchObject({ code });
  await expect(updateCopy(club.ctx(actor), club.ctx().newId(), 1, copy("X"))).rejects.toMatchObject({ code });
});
