import type { Role } from "#lib/core/shared/index.ts";
import { SCOPES, type Actor, type Ctx, type MemberActor, type Scope } from "../context.ts";
import { ServiceError } from "../errors.ts";

/** How long a sign-in lasts without being used, days. */
export const SESSION_DAYS = 30;
/** A session's "last seen" is written at most this often: reading a page must not write each time. */
const SEEN_EVERY_MS = 5 * 60_000;

export interface SignedIn {
  memberId: string;
  sessionId: string;
  name: string;
}

const MEMBER = { id: true, handle: true, name: true, role: true, disabledAt: true } as const;

/** Signs in by password. Answers null where address or password is wrong; throws `too-many` after too many tries. */
export async function signInByPassword(
  ctx: Ctx,
  input: { email: string; password: string; device: string },
): Promise<SignedIn | null> {
  const email = input.email.trim().toLowerCase();
  await takeTry(ctx, "signInAccount", email);
  await takeTry(ctx, "signInAddress", ctx.address ?? "none");
  const member = await ctx.db.member.findUnique({ where: { email }, select: { ...MEMBER, passwordHash: true } });
  const right = await ctx.secrets.checkPassword(member?.passwordHash, input.password);
  if (!member || !right || member.disabledAt) return null;
  await ctx.limits.forgive("signInAccount", email);
  return openSession(ctx, member, input.device);
}

/** Signs in by a one-time link. Answers null where it is unknown, used or too old. */
export async function signInByLink(ctx: Ctx, input: { token: string; device: string }): Promise<SignedIn | null> {
  await takeTry(ctx, "linkAddress", ctx.address ?? "none");
  const now = ctx.now();
  const tokenHash = ctx.secrets.tokenHash(input.token);
  // The update is the test: of two who try at once, one changes a row.
  const used = await ctx.db.signInLink.updateMany({
    where: { tokenHash, usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  });
  if (used.count !== 1) return null;
  const link = await ctx.db.signInLink.findUnique({ where: { tokenHash }, select: { member: { select: MEMBER } } });
  if (!link || link.member.disabledAt) return null;
  // The session carries the link's time: by it, a forgotten password can be replaced (account.ts).
  return openSession(ctx, link.member, input.device, now);
}

export async function openSession(
  ctx: Ctx,
  member: { id: string; name: string },
  device: string,
  now = ctx.now(),
): Promise<SignedIn> {
  const session = await ctx.db.session.create({
    data: {
      id: ctx.newId(),
      memberId: member.id,
      device: device.slice(0, 200),
      createdAt: now,
      lastSeenAt: now,
      expiresAt: new Date(now.getTime() + SESSION_DAYS * 86_400_000),
    },
    select: { id: true },
  });
  return { memberId: member.id, sessionId: session.id, name: member.name };
}

/** Who a session cookie speaks for: one query. Revoked, expired and disabled are visitors. */
export async function actorOfSession(ctx: Pick<Ctx, "db" | "now">, sessionId: string): Promise<Actor> {
  const now = ctx.now();
  const session = await ctx.db.session.findUnique({
    where: { id: sessionId },
    select: { revokedAt: true, expiresAt: true, lastSeenAt: true, member: { select: MEMBER } },
  });
  if (!session || session.revokedAt || session.expiresAt <= now || session.member.disabledAt)
    return { kind: "visitor" };
  if (now.getTime() - session.lastSeenAt.getTime() > SEEN_EVERY_MS) {
    const expiresAt = new Date(now.getTime() + SESSION_DAYS * 86_400_000);
    await ctx.db.session.update({
      where: { id: sessionId },
      data: { lastSeenAt: now, expiresAt },
      select: { id: true },
    });
  }
  return asActor(session.member);
}

/** Who an interface token speaks for, with the token's scopes; null where it is unknown, expired or revoked. */
export async function actorOfToken(
  ctx: Pick<Ctx, "db" | "now" | "secrets">,
  token: string,
): Promise<MemberActor | null> {
  const now = ctx.now();
  const found = await ctx.db.apiToken.findUnique({
    where: { tokenHash: ctx.secrets.tokenHash(token) },
    select: { id: true, scopes: true, expiresAt: true, revokedAt: true, lastUsedAt: true, member: { select: MEMBER } },
  });
  if (!found || found.revokedAt || found.member.disabledAt) return null;
  if (found.expiresAt && found.expiresAt <= now) return null;
  if (!found.lastUsedAt || now.getTime() - found.lastUsedAt.getTime() > SEEN_EVERY_MS) {
    await ctx.db.apiToken.update({ where: { id: found.id }, data: { lastUsedAt: now }, select: { id: true } });
  }
  const scopes = SCOPES.filter((scope): scope is Scope => found.scopes.includes(scope));
  return { ...asActor(found.member), scopes };
}

function asActor(member: { id: string; handle: string; name: string; role: string }): MemberActor {
  // The database's CHECK keeps this column to the closed set.
  return { kind: "member", id: member.id, handle: member.handle, name: member.name, role: member.role as Role };
}

async function takeTry(ctx: Ctx, name: "signInAccount" | "signInAddress" | "linkAddress", key: string): Promise<void> {
  const wait = await ctx.limits.take(name, key);
  if (wait === null) return;
  throw new ServiceError("too-many", `Too many tries. Wait ${Math.ceil(wait / 60)} minutes and try again.`, {
    retryAfter: wait,
  });
}
