import { afterAll, beforeAll, expect, test } from "vitest";
import { LIMITS } from "#lib/infra/limits.ts";
import { createChip } from "#lib/services/chips/index.ts";
import { SCOPES, type MemberActor, type Scope } from "#lib/services/context.ts";
import {
  actorOfSession,
  actorOfToken,
  changeMember,
  createToken,
  endSession,
  endSessions,
  makeSignInLink,
  readAccount,
  revokeToken,
  saveProfile,
  setPassword,
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

const NEXT = "another long enough one";

async function signedIn(handle: string, password = PASSWORD): Promise<string | null> {
  const given = { email: `${handle}@example.org`, password, device: "test" };
  return (await signInByPassword(visitorOf(club), given))?.sessionId ?? null;
}

async function session(handle: string): Promise<string> {
  const id = await signedIn(handle);
  if (!id) throw new Error(`${handle} could not sign in`);
  return id;
}

const opens = async (sessionId: string) => (await actorOfSession(club.ctx(), sessionId)).kind === "member";
const inMinutes = (minutes: number) => () => new Date(Date.now() + minutes * 60_000);

test("one's account shows sign-ins and tokens that hold, and no hash", async () => {
  const anna = await memberWithPassword(club, "anna");
  const ctx = club.ctx(anna);
  const [kept, ended] = [await session("anna"), await session("anna")];
  await endSession(ctx, ended);
  const { id } = await createToken(ctx, { name: "label printer", scopes: ["read"], days: 30 });
  const gone = await createToken(ctx, { name: "old", scopes: ["read"] });
  await revokeToken(ctx, gone.id);
  const time = expect.stringMatching(/^\d{4}-\d\d-\d\dT/);
  expect(await readAccount(ctx, kept)).toEqual({
    handle: "anna",
    name: "anna",
    email: "anna@example.org",
    role: "member",
    about: "",
    hasPassword: true,
    asksPresent: true,
    sessions: [{ id: kept, device: "test", createdAt: time, lastSeenAt: time }],
    tokens: [
      {
        id,
        name: "label printer",
        hint: expect.stringMatching(/^bl_.{4}$/),
        scopes: ["read"],
        createdAt: time,
        expiresAt: time,
        lastUsedAt: null,
      },
    ],
  });
});

test("a new password needs the present one; then the old one opens nothing and the other sign-ins have ended", async () => {
  const bert = await memberWithPassword(club, "bert");
  const ctx = club.ctx(bert);
  const [here, elsewhere] = [await session("bert"), await session("bert")];
  for (const present of [undefined, "", "not this one"]) {
    expect(
      await refusalOf(setPassword(ctx, { password: NEXT, ...(present !== undefined && { present }) }, here)),
    ).toMatchObject({
      code: "invalid",
      problems: [{ path: "present", message: "This is not your present password." }],
    });
  }
  expect(await opens(elsewhere)).toBe(true);
  await setPassword(ctx, { present: PASSWORD, password: NEXT }, here);
  expect([await opens(here), await opens(elsewhere)]).toEqual([true, false]);
  expect(await signedIn("bert")).toBeNull();
  expect(await signedIn("bert", NEXT)).toEqual(expect.any(String));
});

test("where no sign-in is to be kept, all end", async () => {
  const cora = await memberWithPassword(club, "cora");
  const open = await session("cora");
  await setPassword(club.ctx(cora), { present: PASSWORD, password: NEXT }, null);
  expect(await opens(open)).toBe(false);
});

test("the present password is guessed a limited number of times, also by who is signed in", async () => {
  const dora = await memberWithPassword(club, "dora");
  const guess = (present: string) => setPassword(club.ctx(dora), { present, password: NEXT }, null);
  for (let n = 0; n < LIMITS.signInAccount.points; n++) {
    expect((await refusalOf(guess(`guess ${n}`))).code).toBe("invalid");
  }
  await expect(guess(PASSWORD)).rejects.toMatchObject({
    code: "too-many",
    extra: { retryAfter: expect.any(Number) },
  });
  expect(await signedIn("dora")).not.toBeNull();
});

test.each([
  ["a short one", "too short"],
  ["one that would take long to hash", "x".repeat(201)],
])("%s is no password", async (_what, password) => {
  const actor = await club.member(`short-${password.length}`);
  await expect(setPassword(club.ctx(actor), { password }, null)).rejects.toMatchObject({
    issues: [{ path: ["password"] }],
  });
});

test("a member without a password sets a first one without any", async () => {
  const emil = await club.member("emil");
  expect(await readAccount(club.ctx(emil))).toMatchObject({ hasPassword: false, asksPresent: false });
  await setPassword(club.ctx(emil), { password: PASSWORD }, null);
  expect(await signedIn("emil")).not.toBeNull();
});

test("who forgot the password comes in by a link and sets a new one, for an hour, from that sign-in only", async () => {
  const fred = await memberWithPassword(club, "fred");
  const ctx = club.ctx(fred);
  const { token } = await makeSignInLink(club.ctx(), "fred");
  const byPassword = await session("fred");
  const byLink = (await signInByLink(visitorOf(club), { token, device: "test" }))?.sessionId ?? "";
  expect(await readAccount(ctx, byLink)).toMatchObject({ hasPassword: true, asksPresent: false });
  const asks = [
    readAccount(ctx, byPassword),
    readAccount(ctx, null),
    readAccount({ ...ctx, now: inMinutes(61) }, byLink),
  ];
  for (const account of await Promise.all(asks)) expect(account.asksPresent).toBe(true);
  expect((await refusalOf(setPassword(ctx, { password: NEXT }, byPassword))).code).toBe("invalid");
  expect((await refusalOf(setPassword({ ...ctx, now: inMinutes(61) }, { password: NEXT }, byLink))).code).toBe(
    "invalid",
  );
  await setPassword(ctx, { password: NEXT }, byLink);
  expect(await signedIn("fred", NEXT)).not.toBeNull();
  expect(await opens(byPassword)).toBe(false);
});

test("another member's link sign-in does not stand in for one's own password", async () => {
  const [gerd, hugo] = [await memberWithPassword(club, "gerd"), await club.member("hugo")];
  const { token } = await makeSignInLink(club.ctx(), hugo.handle);
  const byLink = (await signInByLink(visitorOf(club), { token, device: "test" }))?.sessionId ?? "";
  expect((await refusalOf(setPassword(club.ctx(gerd), { password: NEXT }, byLink))).code).toBe("invalid");
});

test("a new password shuts links that were not used", async () => {
  const ida = await memberWithPassword(club, "ida");
  const { token } = await makeSignInLink(club.ctx(), "ida");
  await setPassword(club.ctx(ida), { present: PASSWORD, password: NEXT }, null);
  expect(await signInByLink(visitorOf(club), { token, device: "test" })).toBeNull();
});

test("one ends one sign-in or all others, and nobody else's", async () => {
  const [jan, karl] = [await memberWithPassword(club, "jan"), await memberWithPassword(club, "karl")];
  const [first, second, third] = [await session("jan"), await session("jan"), await session("jan")];
  const others = await session("karl");
  const holding = async () => Promise.all([first, second, third, others].map(opens));
  await endSessions(club.ctx(karl), { one: first });
  await endSessions(club.ctx(karl), { allBut: others });
  expect(await holding()).toEqual([true, true, true, true]);
  await endSessions(club.ctx(jan), { one: first });
  expect(await holding()).toEqual([false, true, true, true]);
  await endSessions(club.ctx(jan), { allBut: third });
  expect(await holding()).toEqual([false, false, true, true]);
  await endSessions(club.ctx(jan), { allBut: null });
  expect(await holding()).toEqual([false, false, false, true]);
});

test("a profile keeps name, words and mail address; the new address signs in", async () => {
  const lena = await memberWithPassword(club, "lena");
  await saveProfile(club.ctx(lena), { name: " Lena L. ", about: "Terminals.", email: "Lena@Bench.example" });
  expect(await readAccount(club.ctx(lena))).toMatchObject({
    name: "Lena L.",
    about: "Terminals.",
    email: "lena@bench.example",
    role: "member",
  });
  expect(await signedIn("lena")).toBeNull();
  const given = { email: "lena@bench.example", password: PASSWORD, device: "test" };
  expect(await signInByPassword(visitorOf(club), given)).not.toBeNull();
});

test("a mail address is one member's, however it is written; the refusal names nobody and changes nothing", async () => {
  await club.member("mona");
  const nils = await club.member("nils");
  const taken = await refusalOf(saveProfile(club.ctx(nils), { name: "Nils N.", email: "MONA@example.org" }));
  const message = "This address cannot be used here.";
  expect(taken).toEqual({ code: "invalid", message, problems: [{ path: "email", message }] });
  expect(await readAccount(club.ctx(nils))).toMatchObject({ name: "nils", email: "nils@example.org" });
});

test("several members may be without a mail address", async () => {
  for (const handle of ["olga", "otto"]) {
    const actor = await club.member(handle);
    await saveProfile(club.ctx(actor), { name: handle, email: null });
    expect((await readAccount(club.ctx(actor))).email).toBeNull();
  }
});

test("a role or a password cannot be slipped into a profile", async () => {
  const actor = await club.member("paul");
  for (const more of [{ role: "steward" }, { passwordHash: "x" }, { disabledAt: null }]) {
    await expect(saveProfile(club.ctx(actor), { name: "Paul", ...more })).rejects.toMatchObject({
      issues: [{ code: "unrecognized_keys" }],
    });
  }
});

const speaksFor = (token: string, now?: () => Date) => actorOfToken({ ...club.ctx(), ...(now && { now }) }, token);

test("a token speaks for its member with the scopes it was given, each once", async () => {
  const rosa = await club.member("rosa");
  const { token } = await createToken(club.ctx(rosa), { name: "script", scopes: ["write", "read", "write"] });
  expect(token).toMatch(/^bl_.{30,}$/);
  expect(await speaksFor(token)).toEqual({ ...rosa, scopes: ["read", "write"] });
  expect((await readAccount(club.ctx(rosa))).tokens[0]?.lastUsedAt).not.toBeNull();
});

test("a scope is asked for: a token that may only read records no chip, one that may write does", async () => {
  const sven = await club.member("sven", "reviewer");
  const withScopes = async (scopes: Scope[]) => {
    const actor = await speaksFor((await createToken(club.ctx(sven), { name: "script", scopes })).token);
    if (!actor) throw new Error("this token speaks for nobody");
    return club.ctx(actor);
  };
  expect(await refusalOf(createChip(await withScopes(["read", "review"]), { name: "XN3310" }))).toEqual({
    code: "forbidden",
    message: 'This token lacks the scope "write".',
    problems: [],
  });
  expect(await createChip(await withScopes(["write"]), { name: "XN3310" })).toMatchObject({ made: true });
});

test.each([
  ["no scope", { name: "x", scopes: [] }],
  ["a scope that there is not", { name: "x", scopes: ["everything"] }],
  ["no name", { name: " ", scopes: ["read"] }],
  ["no day to live", { name: "x", scopes: ["read"], days: 0 }],
])("a token with %s is refused", async (what, input) => {
  const actor = await club.member(`t-${what.replaceAll(" ", "-")}`);
  await expect(createToken(club.ctx(actor), input)).rejects.toMatchObject({ name: "ZodError" });
});

test("a token ends on its day; one without a day does not", async () => {
  const tina = await club.member("tina");
  const { token: short } = await createToken(club.ctx(tina), { name: "short", scopes: ["read"], days: 1 });
  const { token: long } = await createToken(club.ctx(tina), { name: "long", scopes: ["read"], days: null });
  const day = 24 * 60;
  expect(await speaksFor(short, inMinutes(day - 1))).not.toBeNull();
  expect(await speaksFor(short, inMinutes(day + 1))).toBeNull();
  expect(await speaksFor(long, inMinutes(3650 * day))).not.toBeNull();
});

test("a revoked token, an unknown one and one of a member who was shut out speak for nobody", async () => {
  const ulla = await club.member("ulla");
  const vera = await club.member("vera");
  const mine = await createToken(club.ctx(ulla), { name: "mine", scopes: ["read"] });
  const hers = await createToken(club.ctx(vera), { name: "hers", scopes: ["read"] });
  expect(await refusalOf(revokeToken(club.ctx(vera), mine.id))).toMatchObject({ code: "not-found" });
  expect(await speaksFor(mine.token)).not.toBeNull();
  await revokeToken(club.ctx(ulla), mine.id);
  expect(await speaksFor(mine.token)).toBeNull();
  expect(await refusalOf(revokeToken(club.ctx(ulla), mine.id))).toMatchObject({ code: "not-found" });
  await club.member("warden", "steward");
  await changeMember(club.ctx(), "vera", { disabled: true });
  expect(await speaksFor(hers.token)).toBeNull();
  expect(await speaksFor(club.ctx().secrets.newToken("bl_"))).toBeNull();
});

test("a token with every scope changes no password, makes no token, ends no sign-in and reads no account", async () => {
  const xenia = await memberWithPassword(club, "xenia", "steward");
  const actor: MemberActor = { ...xenia, scopes: SCOPES };
  const open = await session("xenia");
  const { id } = await createToken(club.ctx(xenia), { name: "kept", scopes: ["read"] });
  const ctx = club.ctx(actor);
  const deeds = [
    setPassword(ctx, { present: PASSWORD, password: NEXT }, null),
    createToken(ctx, { name: "next", scopes: ["read"] }),
    revokeToken(ctx, id),
    endSessions(ctx, { allBut: null }),
    saveProfile(ctx, { name: "Other", email: "other@example.org" }),
    readAccount(ctx),
  ];
  for (const deed of deeds) {
    expect(await refusalOf(deed)).toMatchObject({
      code: "forbidden",
      message: "Sign in with your password for this; a token cannot do it.",
    });
  }
  expect(await opens(open)).toBe(true);
  expect(await readAccount(club.ctx(xenia))).toMatchObject({ name: "xenia", tokens: [{ id }] });
});

test("a visitor and the program itself have no account", async () => {
  expect((await refusalOf(readAccount(visitorOf(club)))).code).toBe("not-signed-in");
  expect((await refusalOf(readAccount(club.ctx()))).code).toBe("forbidden");
});

test("the audit trail tells what was done to an account, without a password, a token, a hash or an address", async () => {
  const yuri = await memberWithPassword(club, "yuri");
  const ctx = club.ctx(yuri);
  const { id, token } = await createToken(ctx, { name: "label printer", scopes: ["read"] });
  await revokeToken(ctx, id);
  await setPassword(ctx, { present: PASSWORD, password: NEXT }, null);
  await saveProfile(ctx, { name: "Yuri", email: "yuri@bench.example" });
  await endSessions(ctx, { allBut: null });
  const told = (await auditOf(club, yuri.id)).map(({ action, detail }) => ({ action, detail }));
  expect(told).toEqual([
    { action: "token.create", detail: { name: "label printer" } },
    { action: "token.revoke", detail: {} },
    { action: "member.password", detail: {} },
    { action: "member.profile", detail: {} },
    { action: "session.end", detail: {} },
  ]);
  await expectNoSecrets(club, [token, PASSWORD, NEXT, "yuri@bench.example"]);
});
