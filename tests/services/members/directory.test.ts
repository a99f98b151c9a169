import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { createBoard, createCopy } from "#lib/services/boards/index.ts";
import { createCase } from "#lib/services/cases/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import {
  actorOfSession,
  changeMember,
  listMembers,
  makeSignInLink,
  openSession,
  readMember,
  signInByLink,
  signInByPassword,
} from "#lib/services/members/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";
import { auditOf, expectNoSecrets, memberWithPassword, PASSWORD, refusalOf, visitorOf } from "./deeds.ts";

let club: TestClub;
beforeAll(async () => {
  club = await testClub();
});
afterAll(() => club.close());
// Each test has its own stewards: who counts as the last one depends on all of them.
beforeEach(async () => {
  await club.database.db.member.updateMany({ where: { role: "steward" }, data: { role: "member" } });
});

const steward = async (handle: string): Promise<Ctx> => club.ctx(await club.member(handle, "steward"));
const stateOf = (handle: string) =>
  club.database.db.member.findUniqueOrThrow({
    where: { handle },
    select: { role: true, disabledAt: true, version: true },
  });

test("members are listed by name with what they did, and without their addresses", async () => {
  await createCase(club.ctx(await club.member("zora")), { symptoms: ["no sound"], publish: true });
  await club.member("aaron");
  const listed = await listMembers(visitorOf(club));
  expect(listed.map(({ handle }) => handle)).toEqual(["aaron", "zora"]);
  expect(listed[1]).toEqual({
    handle: "zora",
    name: "zora",
    role: "member",
    about: "",
    since: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
    cases: 1,
    disabled: false,
  });
});

test("a draft counts for its author only", async () => {
  const bea = await club.member("bea");
  await createCase(club.ctx(bea), { symptoms: ["no sound"] });
  expect((await readMember(club.ctx(bea), "bea")).cases).toBe(1);
  expect((await readMember(visitorOf(club), "bea")).cases).toBe(0);
  expect((await listMembers(visitorOf(club))).find(({ handle }) => handle === "bea")?.cases).toBe(0);
});

test("a member's page shows their copies, but none of a hidden board", async () => {
  const carla = await club.member("carla");
  for (const slug of ["open-board", "hidden-board"]) {
    await createBoard(club.ctx(), { slug, name: slug, kind: "terminal" });
    await createCopy(club.ctx(carla), { board: slug, tag: `of ${slug}` });
  }
  await club.database.db.board.update({ where: { slug: "hidden-board" }, data: { hiddenAt: new Date() } });
  expect((await readMember(visitorOf(club), "carla")).copies).toEqual([
    { tag: "of open-board", board: { slug: "open-board", name: "open-board" }, works: null },
  ]);
});

test("there is no page of a member who is not there", async () => {
  expect(await refusalOf(readMember(visitorOf(club), "nobody"))).toMatchObject({ code: "not-found" });
});

test("a steward changes a role; the member acts with it at once", async () => {
  const ctx = await steward("dina");
  const emma = await club.member("emma");
  const { sessionId } = await openSession(club.ctx(), emma, "test");
  await changeMember(ctx, "emma", { role: "reviewer" });
  expect(await actorOfSession(club.ctx(), sessionId)).toMatchObject({ handle: "emma", role: "reviewer" });
  expect(await stateOf("emma")).toEqual({ role: "reviewer", disabledAt: null, version: 2 });
});

test("members, reviewers and visitors change nobody, themselves included, and make no links", async () => {
  await steward("fina");
  const others: [string, Ctx][] = [
    ["forbidden", club.ctx(await club.member("gert"))],
    ["forbidden", club.ctx(await club.member("gina", "reviewer"))],
    ["not-signed-in", visitorOf(club)],
  ];
  for (const [code, ctx] of others) {
    const deeds = [
      changeMember(ctx, "gert", { role: "steward" }),
      changeMember(ctx, "fina", { disabled: true }),
      makeSignInLink(ctx, "fina"),
    ];
    for (const deed of deeds) expect(await refusalOf(deed)).toMatchObject({ code });
  }
  expect(await stateOf("fina")).toEqual({ role: "steward", disabledAt: null, version: 1 });
});

test.each([
  ["a role that there is not", { role: "owner" }],
  ["a mail address", { email: "x@example.org" }],
])("%s is not changed this way", async (_what, input) => {
  await expect(changeMember(club.ctx(), "emma", input)).rejects.toMatchObject({ name: "ZodError" });
});

test("shutting an account ends its sign-ins; neither password nor link opens it, until it is opened again", async () => {
  const ctx = await steward("hedi");
  const igor = await memberWithPassword(club, "igor");
  const { token } = await makeSignInLink(ctx, "igor");
  const signIn = () =>
    signInByPassword(visitorOf(club), { email: "igor@example.org", password: PASSWORD, device: "test" });
  const before = await signIn();
  await changeMember(ctx, "igor", { disabled: true });
  expect(await actorOfSession(club.ctx(), before?.sessionId ?? "")).toEqual({ kind: "visitor" });
  expect(await signIn()).toBeNull();
  expect(await signInByLink(visitorOf(club), { token, device: "test" })).toBeNull();
  expect(await refusalOf(makeSignInLink(ctx, "igor"))).toMatchObject({ code: "not-found" });
  await changeMember(ctx, "igor", { disabled: false });
  expect(await actorOfSession(club.ctx(), before?.sessionId ?? "")).toEqual({ kind: "visitor" });
  expect(await signIn()).toMatchObject({ memberId: igor.id });
});

test("nobody shuts their own account, also where there is another steward", async () => {
  const ctx = await steward("jana");
  await steward("jens");
  expect((await refusalOf(changeMember(ctx, "jana", { disabled: true }))).problems).toEqual([
    { path: "disabled", message: "You cannot shut your own account." },
  ]);
});

const LAST: [string, object, string][] = [
  ["made a member", { role: "member" }, "role"],
  ["shut out", { disabled: true }, "disabled"],
];
test.each(LAST)("the last steward is not %s, by the command line either", async (what, input, path) => {
  const handle = `last-${what.replaceAll(" ", "-")}`;
  await steward(handle);
  expect((await refusalOf(changeMember(club.ctx(), handle, input))).problems).toEqual([
    { path, message: "The club needs a steward: make another one first." },
  ]);
  expect(await stateOf(handle)).toEqual({ role: "steward", disabledAt: null, version: 1 });
});

test("a steward who is shut out does not count as one", async () => {
  const ctx = await steward("kara");
  await steward("kurt");
  await changeMember(ctx, "kurt", { disabled: true });
  expect((await refusalOf(changeMember(ctx, "kara", { role: "member" }))).code).toBe("invalid");
});

test("two stewards who step down at the same time: one of them stays", async () => {
  const [lara, lutz] = [await steward("lara"), await steward("lutz")];
  const tries = await Promise.allSettled([
    changeMember(lara, "lara", { role: "member" }),
    changeMember(lutz, "lutz", { role: "member" }),
  ]);
  expect(tries.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected"]);
  expect(await club.database.db.member.count({ where: { role: "steward", disabledAt: null } })).toBe(1);
});

test("the audit trail tells who changed whom into what, and who made a link; no link stands in it", async () => {
  const mara = await club.member("mara", "steward");
  const nora = await club.member("nora");
  await changeMember(club.ctx(mara), "nora", { role: "reviewer" });
  await changeMember(club.ctx(mara), "nora", { disabled: true });
  await changeMember(club.ctx(mara), "nora", { disabled: false });
  const { token } = await makeSignInLink(club.ctx(mara), "nora");
  const of = (detail: object) => ({
    action: "member.change",
    recordKind: "member",
    recordId: nora.id,
    address: "192.0.2.1",
    detail: { member: "nora", role: null, disabled: null, ...detail },
  });
  expect(await auditOf(club, mara.id)).toEqual([
    of({ role: "reviewer" }),
    of({ disabled: true }),
    of({ disabled: false }),
    { action: "member.link", recordKind: null, recordId: null, address: "192.0.2.1", detail: { member: "nora" } },
  ]);
  await expectNoSecrets(club, [token]);
});
