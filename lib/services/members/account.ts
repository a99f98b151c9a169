import { change, isDuplicate } from "../change.ts";
import type { Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { self } from "./person.ts";
import { PasswordInput, ProfileInput, TokenInput } from "./schema.ts";

/**
 * How long after a one-time link its sign-in may set a password without the present one, minutes. Who asked for a link
 * has forgotten it. The number is ours.
 */
const LINK_SETS_PASSWORD_MINUTES = 60;

export interface AccountView {
  handle: string;
  name: string;
  email: string | null;
  role: string;
  about: string;
  hasPassword: boolean;
  /** Whether a new password needs the present one: not just after a one-time link. */
  asksPresent: boolean;
  sessions: { id: string; device: string; createdAt: string; lastSeenAt: string }[];
  tokens: {
    id: string;
    name: string;
    hint: string;
    scopes: string[];
    createdAt: string;
    expiresAt: string | null;
    lastUsedAt: string | null;
  }[];
}

/** One's own account, with its sign-ins and tokens. `session` is the sign-in that asks. */
export async function readAccount(ctx: Ctx, session: string | null = null): Promise<AccountView> {
  const { id } = self(ctx);
  const now = ctx.now();
  const row = await ctx.db.member.findUniqueOrThrow({
    where: { id },
    select: {
      handle: true,
      name: true,
      email: true,
      role: true,
      about: true,
      passwordHash: true,
      sessions: {
        where: { revokedAt: null, expiresAt: { gt: now } },
        select: { id: true, device: true, createdAt: true, lastSeenAt: true },
        orderBy: { lastSeenAt: "desc" },
      },
      tokens: {
        where: { revokedAt: null },
        select: { id: true, name: true, hint: true, scopes: true, createdAt: true, expiresAt: true, lastUsedAt: true },
        orderBy: { createdAt: "desc" },
      },
    },
  });
  const { passwordHash, sessions, tokens, ...plain } = row;
  return {
    ...plain,
    hasPassword: passwordHash !== null,
    asksPresent: passwordHash !== null && !(await cameByLink(ctx, id, session)),
    sessions: sessions.map((one) => ({
      ...one,
      createdAt: one.createdAt.toISOString(),
      lastSeenAt: one.lastSeenAt.toISOString(),
    })),
    tokens: tokens.map((one) => ({
      ...one,
      createdAt: one.createdAt.toISOString(),
      expiresAt: one.expiresAt?.toISOString() ?? null,
      lastUsedAt: one.lastUsedAt?.toISOString() ?? null,
    })),
  };
}

export async function saveProfile(ctx: Ctx, raw: unknown): Promise<void> {
  const input = ProfileInput.parse(raw);
  const { id } = self(ctx);
  try {
    await change(ctx, "member", async (tx) => {
      await tx.member.update({
        where: { id },
        data: { ...input, version: { increment: 1 }, updatedAt: ctx.now() },
        select: { id: true },
      });
      return { value: undefined, did: "member.profile", touched: [{ kind: "member", id }] };
    });
  } catch (error) {
    if (isDuplicate(error)) throw invalid("email", "This address cannot be used here.");
    throw error;
  }
}

/**
 * Sets the password. A present one must be given, unless `keepSession` was opened by a one-time link just now. All other
 * sign-ins and unused links end: somebody else may have known the old one.
 */
export async function setPassword(ctx: Ctx, raw: unknown, keepSession: string | null): Promise<void> {
  const input = PasswordInput.parse(raw);
  const { id } = self(ctx);
  const member = await ctx.db.member.findUniqueOrThrow({ where: { id }, select: { passwordHash: true } });
  if (member.passwordHash !== null && !(await cameByLink(ctx, id, keepSession))) {
    const wait = await ctx.limits.take("signInAccount", id);
    if (wait !== null) throw new ServiceError("too-many", "Too many tries. Wait some minutes.", { retryAfter: wait });
    if (!(await ctx.secrets.checkPassword(member.passwordHash, input.present))) {
      throw invalid("present", "This is not your present password.");
    }
    await ctx.limits.forgive("signInAccount", id);
  }
  const passwordHash = await ctx.secrets.hashPassword(input.password);
  await change(ctx, "member", async (tx) => {
    const at = ctx.now();
    await tx.member.update({ where: { id }, data: { passwordHash, updatedAt: at }, select: { id: true } });
    await tx.session.updateMany({
      where: { memberId: id, revokedAt: null, ...(keepSession && { id: { not: keepSession } }) },
      data: { revokedAt: at },
    });
    await tx.signInLink.updateMany({ where: { memberId: id, usedAt: null }, data: { usedAt: at } });
    return { value: undefined, did: "member.password", touched: [] };
  });
}

/** Whether a one-time link opened this sign-in a short while ago: both carry the same time. */
async function cameByLink(ctx: Ctx, member: string, sessionId: string | null): Promise<boolean> {
  if (!sessionId) return false;
  const since = new Date(ctx.now().getTime() - LINK_SETS_PASSWORD_MINUTES * 60_000);
  const session = await ctx.db.session.findFirst({
    where: { id: sessionId, memberId: member, revokedAt: null, createdAt: { gt: since } },
    select: { createdAt: true },
  });
  if (!session) return false;
  return (await ctx.db.signInLink.count({ where: { memberId: member, usedAt: session.createdAt } })) > 0;
}

/** Ends one sign-in, or all but the present one. */
export async function endSessions(ctx: Ctx, which: { one: string } | { allBut: string | null }): Promise<void> {
  const { id } = self(ctx);
  await change(ctx, "member", async (tx) => {
    const chosen = "one" in which ? { id: which.one } : which.allBut ? { id: { not: which.allBut } } : {};
    await tx.session.updateMany({
      where: { memberId: id, revokedAt: null, ...chosen },
      data: { revokedAt: ctx.now() },
    });
    return { value: undefined, did: "session.end", touched: [] };
  });
}

/** Makes a token for scripts. It is in the answer only; stored is its hash. */
export async function createToken(ctx: Ctx, raw: unknown): Promise<{ id: string; token: string }> {
  const input = TokenInput.parse(raw);
  const { id: member } = self(ctx);
  const token = ctx.secrets.newToken("bl_");
  const at = ctx.now();
  const id = ctx.newId();
  await change(ctx, "member", async (tx) => {
    await tx.apiToken.create({
      data: {
        id,
        memberId: member,
        name: input.name,
        tokenHash: ctx.secrets.tokenHash(token),
        hint: token.slice(0, 7),
        scopes: [...new Set(input.scopes)],
        createdAt: at,
        expiresAt: input.days === null ? null : new Date(at.getTime() + input.days * 86_400_000),
      },
      select: { id: true },
    });
    return { value: undefined, did: "token.create", touched: [], detail: { name: input.name } };
  });
  return { id, token };
}

export async function revokeToken(ctx: Ctx, id: string): Promise<void> {
  const { id: member } = self(ctx);
  await change(ctx, "member", async (tx) => {
    const where = { id, memberId: member, revokedAt: null };
    const { count } = await tx.apiToken.updateMany({ where, data: { revokedAt: ctx.now() } });
    if (count === 0) throw notFound("token with this id");
    return { value: undefined, did: "token.revoke", touched: [] };
  });
}

/** Signing out ends the session for good, not only its cookie. */
export async function endSession(ctx: Ctx, sessionId: string): Promise<void> {
  await ctx.db.session.updateMany({ where: { id: sessionId, revokedAt: null }, data: { revokedAt: ctx.now() } });
}
