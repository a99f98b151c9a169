import { afterAll, beforeAll, expect, test } from "vitest";
import { LIMITS } from "#lib/infra/limits.ts";
import { SCOPES, type Ctx, type MemberActor } from "#lib/services/context.ts";
import {
  changeMember,
  createInvitation,
  invitationOf,
  join,
  listInvitations,
  makeSignInLink,
  revokeInvitation,
  signInByPassword,
} from "#lib/services/members/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";
import { auditOf, expectNoSecrets, PASSWORD, refusalOf, visitorOf } from "./deeds.ts";

let club: TestClub;
let stella: MemberActor;
let steward: Ctx;
beforeAll(async () => {
  club = await testClub();
  stella = await club.member("stella", "steward");
  steward = club.ctx(stella);
});
afterAll(() => club.close());

const comer = (handle: string, token: string) => ({
  token,
  handle,
  name: `${handle} of the bench`,
  email: `${handle}@example.net`,
  password: PASSWORD,
});
const SHUT = "This invitation is used up, revoked or too old. Ask the steward who sent it for another.";

test("a steward's invitation says who invites and as what, and makes one member with its role who can sign in", async () => {
  const { id, token } = await createInvitation(steward, { role: "reviewer", note: "For the open evening", uses: 2 });
  const visitor = visitorOf(club);
  expect(await invitationOf(visitor, token)).toEqual({ role: "reviewer", note: "For the open evening", by: "stella" });
  const joined = await join(visitor, { ...comer("anna", token), handle: " Anna ", email: "ANNA@example.net" });
  expect(joined).toEqual({ id: expect.any(String), email: "anna@example.net" });
  const member = await club.database.db.member.findUniqueOrThrow({ where: { id: joined.id } });
  expect(member).toMatchObject({ handle: "anna", role: "reviewer", invitationId: id, version: 1, disabledAt: null });
  expect(
    await signInByPassword(visitor, { email: "anna@example.net", password: PASSWORD, device: "test" }),
  ).toMatchObject({ memberId: joined.id });
  expect((await listInvitations(steward)).find((one) => one.id === id)).toEqual({
    id,
    role: "reviewer",
    note: "For the open evening",
    usesLeft: 1,
    expiresAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
    by: "stella",
    revoked: false,
    joined: [{ handle: "anna", name: "anna of the bench" }],
  });
});

test("members, reviewers, visitors and the program itself make no invitation, and see and revoke none", async () => {
  const { id } = await createInvitation(steward, {});
  const others: [Ctx, string][] = [
    [club.ctx(await club.member("mona")), "forbidden"],
    [club.ctx(await club.member("rita", "reviewer")), "forbidden"],
    [visitorOf(club), "not-signed-in"],
  ];
  for (const [ctx, code] of others) {
    for (const deed of [createInvitation(ctx, {}), listInvitations(ctx), revokeInvitation(ctx, id)]) {
      expect(await refusalOf(deed)).toMatchObject({ code });
    }
  }
  expect(await refusalOf(createInvitation(club.ctx(), {}))).toMatchObject({ code: "forbidden" });
});

test("a steward's token, whatever its scopes, opens the door to nobody", async () => {
  const { id } = await createInvitation(steward, {});
  const token = club.ctx({ ...stella, scopes: SCOPES });
  const deeds = [
    createInvitation(token, {}),
    revokeInvitation(token, id),
    makeSignInLink(token, "stella"),
    changeMember(token, "stella", { role: "steward" }),
  ];
  for (const deed of deeds) expect(await refusalOf(deed)).toMatchObject({ code: "forbidden" });
});

const OUT_OF_RANGE: [string, object][] = [
  ["no use at all", { uses: 0 }],
  ["half a use", { uses: 1.5 }],
  ["more uses than a club has members", { uses: 501 }],
  ["no day", { days: 0 }],
  ["more than a year", { days: 366 }],
  ["a role that there is not", { role: "owner" }],
  ["a field that there is not", { handle: "anna" }],
];
test.each(OUT_OF_RANGE)("an invitation with %s is refused", async (_what, input) => {
  await expect(createInvitation(steward, input)).rejects.toMatchObject({ name: "ZodError" });
});

test("one use lets one in; the next is told that it is used up", async () => {
  const { token } = await createInvitation(steward, {});
  await join(visitorOf(club), comer("berta", token));
  expect(await invitationOf(visitorOf(club), token)).toBeNull();
  expect(await refusalOf(join(visitorOf(club), comer("carl", token)))).toEqual({
    code: "not-found",
    message: SHUT,
    problems: [],
  });
});

test("a revoked one lets nobody in, and is revoked once", async () => {
  const { id, token } = await createInvitation(steward, { uses: 5 });
  await revokeInvitation(steward, id);
  expect(await invitationOf(visitorOf(club), token)).toBeNull();
  expect(await refusalOf(join(visitorOf(club), comer("dirk", token)))).toMatchObject({ message: SHUT });
  expect(await refusalOf(revokeInvitation(steward, id))).toMatchObject({ code: "not-found" });
});

test("after its days it lets nobody in; until then it does", async () => {
  const { token } = await createInvitation(steward, { days: 3 });
  const after = (hours: number) => ({ ...visitorOf(club), now: () => new Date(Date.now() + hours * 3_600_000) });
  expect(await invitationOf(after(71), token)).not.toBeNull();
  expect(await invitationOf(after(72), token)).toBeNull();
  expect(await refusalOf(join(after(72), comer("ede", token)))).toMatchObject({ message: SHUT });
});

test("a token that nobody was given lets nobody in", async () => {
  const token = club.ctx().secrets.newToken();
  expect(await refusalOf(join(visitorOf(club), comer("fake", token)))).toMatchObject({ message: SHUT });
});

test("of several who use the last place at once, one comes in", async () => {
  const { id, token } = await createInvitation(steward, {});
  const tries = await Promise.allSettled(
    ["gustav", "gerda", "gina"].map((handle) => join(visitorOf(club), comer(handle, token))),
  );
  expect(tries.map(({ status }) => status).toSorted()).toEqual(["fulfilled", "rejected", "rejected"]);
  const kept = await club.database.db.invitation.findUniqueOrThrow({
    where: { id },
    select: { usesLeft: true, members: { select: { handle: true } } },
  });
  expect(kept).toEqual({ usesLeft: 0, members: [{ handle: expect.stringMatching(/^g/) }] });
});

test("a taken short name is named as taken; the place on the invitation is not used up by the try", async () => {
  const { token } = await createInvitation(steward, {});
  await club.member("hanna");
  const taken = await refusalOf(join(visitorOf(club), { ...comer("hanna", token), email: "other@example.net" }));
  expect(taken.problems).toEqual([{ path: "handle", message: '"hanna" is taken. Choose another short name.' }]);
  expect(await invitationOf(visitorOf(club), token)).not.toBeNull();
  await join(visitorOf(club), comer("hanna-2", token));
});

test("a taken address is refused without saying who has it, or that a member has it", async () => {
  const { token } = await createInvitation(steward, {});
  await club.member("ida");
  const taken = await refusalOf(join(visitorOf(club), { ...comer("ines", token), email: "Ida@example.org" }));
  expect(taken).toEqual({
    code: "invalid",
    message: "This address cannot be used here. If it is yours, sign in, or ask a steward for a link.",
    problems: [
      {
        path: "email",
        message: "This address cannot be used here. If it is yours, sign in, or ask a steward for a link.",
      },
    ],
  });
  expect(await invitationOf(visitorOf(club), token)).not.toBeNull();
});

test("without an invitation that opens, nothing is said of names and addresses", async () => {
  await club.member("jan");
  const stranger = { ...comer("jan", club.ctx().secrets.newToken()), email: "jan@example.org" };
  expect(await refusalOf(join(visitorOf(club), stranger))).toEqual({ code: "not-found", message: SHUT, problems: [] });
});

test("tries from one address are limited, with the time to wait", async () => {
  const visitor = visitorOf(club);
  const guess = () => refusalOf(join(visitor, comer("karl", club.ctx().secrets.newToken())));
  for (let n = 0; n < LIMITS.linkAddress.points; n++) expect((await guess()).code).toBe("not-found");
  expect((await guess()).code).toBe("too-many");
  const { token } = await createInvitation(steward, {});
  await expect(join(visitor, comer("karl", token))).rejects.toMatchObject({
    code: "too-many",
    extra: { retryAfter: expect.any(Number) },
  });
  await join(visitorOf(club), comer("karl", token));
});

test("who is no steward any more has no open invitation: the former steward does not come back by one", async () => {
  const [left, demoted] = [await club.member("lena", "steward"), await club.member("leo", "steward")];
  const tokens = await Promise.all(
    [left, demoted].map(async (actor) => (await createInvitation(club.ctx(actor), { role: "steward", uses: 9 })).token),
  );
  const { token: stays } = await createInvitation(steward, {});
  await changeMember(steward, "lena", { disabled: true });
  await changeMember(steward, "leo", { role: "reviewer" });
  for (const token of tokens) expect(await invitationOf(visitorOf(club), token)).toBeNull();
  expect(await invitationOf(visitorOf(club), stays)).not.toBeNull();
});

const POOR: [string, object, string][] = [
  ["a short password", { password: "too short" }, "password"],
  ["a short name with spaces", { handle: "two words" }, "handle"],
  ["a short name of one letter", { handle: "x" }, "handle"],
  ["no name", { name: "  " }, "name"],
  ["what is no address", { email: "nobody" }, "email"],
  ["a role of one's own choice", { role: "steward" }, ""],
];
test.each(POOR)("joining with %s is refused at that field", async (_what, change, field) => {
  const given = { ...comer("poor", club.ctx().secrets.newToken()), ...change };
  await expect(join(visitorOf(club), given)).rejects.toMatchObject({
    issues: [{ path: field === "" ? [] : [field] }],
  });
});

test("the audit trail tells who invited, revoked and joined, from where, and holds no secret", async () => {
  const mia = await club.member("mia", "steward");
  const { id, token } = await createInvitation(club.ctx(mia), { role: "member", uses: 2 });
  const visitor = visitorOf(club);
  const joined = await join(visitor, comer("nils", token));
  await revokeInvitation(club.ctx(mia), id);
  expect(await auditOf(club, mia.id)).toEqual([
    {
      action: "invitation.create",
      recordKind: null,
      recordId: null,
      address: "192.0.2.1",
      detail: { role: "member", uses: 2 },
    },
    { action: "invitation.revoke", recordKind: null, recordId: null, address: "192.0.2.1", detail: {} },
  ]);
  expect((await auditOf(club, null)).find((one) => one.recordId === joined.id)).toEqual({
    action: "member.join",
    recordKind: "member",
    recordId: joined.id,
    address: visitor.address,
    detail: {},
  });
  await expectNoSecrets(club, [token, PASSWORD, "nils@example.net"]);
});
