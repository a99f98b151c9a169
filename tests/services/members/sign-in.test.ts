import { afterAll, beforeAll, expect, test } from "vitest";
import {
  addMember,
  actorOfSession,
  makeSignInLink,
  signInByLink,
  signInByPassword,
} from "#lib/services/members/index.ts";
import { testClub, type TestClub } from "#tests/support/test-club.ts";

let club: TestClub;
beforeAll(async () => {
  club = await testClub();
});
afterAll(() => club.close());

async function memberWithPassword(handle: string): Promise<string> {
  const member = await club.member(handle);
  const passwordHash = await club.ctx().secrets.hashPassword("a long enough password");
  await club.database.db.member.update({ where: { id: member.id }, data: { passwordHash } });
  return member.id;
}

const sign = (email: string, password: string) =>
  signInByPassword(club.ctx({ kind: "visitor" }), { email, password, device: "test" });

test("the right password opens a session that speaks for the member", async () => {
  const id = await memberWithPassword("anna");
  const signedIn = await sign(" Anna@Example.org ", "a long enough password");
  expect(signedIn).toMatchObject({ memberId: id });
  expect(await actorOfSession(club.ctx(), signedIn?.sessionId ?? "")).toMatchObject({ kind: "member", handle: "anna" });
});

test("a wrong password, an unknown address and a member without a password are refused alike", async () => {
  await memberWithPassword("bert");
  await club.member("cora");
  expect(await sign("bert@example.org", "another password")).toBeNull();
  expect(await sign("nobody@example.org", "a long enough password")).toBeNull();
  expect(await sign("cora@example.org", "nobody has this password")).toBeNull();
});

test("after ten wrong passwords the account waits, with the time to wait", async () => {
  await memberWithPassword("dora");
  for (let n = 0; n < 10; n++) await sign("dora@example.org", "wrong");
  await expect(sign("dora@example.org", "a long enough password")).rejects.toMatchObject({
    code: "too-many",
    extra: { retryAfter: expect.any(Number) },
  });
});

test("revoked, expired and disabled sessions are visitors", async () => {
  const id = await memberWithPassword("emil");
  const { db } = club.database;
  const open = async () => (await sign("emil@example.org", "a long enough password"))?.sessionId ?? "";
  const revoked = await open();
  await db.session.update({ where: { id: revoked }, data: { revokedAt: new Date() } });
  const expired = await open();
  await db.session.update({ where: { id: expired }, data: { expiresAt: new Date(0) } });
  const disabled = await open();
  for (const session of [revoked, expired]) {
    expect(await actorOfSession(club.ctx(), session)).toEqual({ kind: "visitor" });
  }
  expect(await actorOfSession(club.ctx(), disabled)).toMatchObject({ kind: "member" });
  await db.member.update({ where: { id }, data: { disabledAt: new Date() } });
  expect(await actorOfSession(club.ctx(), disabled)).toEqual({ kind: "visitor" });
});

test("a one-time link works once, also when two try at once", async () => {
  await addMember(club.ctx(), { handle: "first", name: "First", role: "steward" });
  const { token } = await makeSignInLink(club.ctx(), "first");
  const visitor = club.ctx({ kind: "visitor" });
  const tries = await Promise.all([1, 2, 3].map(() => signInByLink(visitor, { token, device: "test" })));
  expect(tries.filter((one) => one !== null)).toHaveLength(1);
  expect(await signInByLink(visitor, { token, device: "test" })).toBeNull();
});

test("a link that is too old opens nothing", async () => {
  await addMember(club.ctx(), { handle: "late", name: "Late" });
  const { token } = await makeSignInLink(club.ctx(), "late");
  const later = { ...club.ctx({ kind: "visitor" }), now: () => new Date(Date.now() + 25 * 3_600_000) };
  expect(await signInByLink(later, { token, device: "test" })).toBeNull();
});
