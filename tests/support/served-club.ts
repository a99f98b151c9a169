import { encode } from "@auth/core/jwt";
import type { Role } from "#lib/core/shared/index.ts";
import { openClub } from "#lib/cli/club-context.ts";
import { sessionSecret } from "#lib/infra/auth/index.ts";
import type { Ctx, MemberActor, Scope } from "#lib/services/context.ts";
import { createToken, openSession } from "#lib/services/members/index.ts";

/** The cookie's name is also the salt of its key. */
const COOKIE = "authjs.session-token";

/** A club whose records a test writes through the services, before a server opens the same data folder. */
export interface ClubOnDisk {
  /** The program itself, which may do everything. */
  ctx: Ctx;
  as(member: MemberActor): Ctx;
  member(handle: string, role?: Role): Promise<MemberActor>;
  /** A signed-in browser's cookie. */
  cookie(member: MemberActor): Promise<string>;
  token(member: MemberActor, scopes: readonly Scope[]): Promise<string>;
}

/** Opens the club in a data folder that no server has open, lets `work` write, and closes it again. */
export async function onDisk<T>(dataDir: string, work: (club: ClubOnDisk) => Promise<T>): Promise<T> {
  const before = process.env.DATA_DIR;
  process.env.DATA_DIR = dataDir;
  try {
    const club = await openClub();
    try {
      return await work(clubOver(club.ctx));
    } finally {
      await club.close();
    }
  } finally {
    if (before === undefined) delete process.env.DATA_DIR;
    else process.env.DATA_DIR = before;
  }
}

function clubOver(ctx: Ctx): ClubOnDisk {
  const as = (actor: MemberActor): Ctx => ({ ...ctx, actor });
  return {
    ctx,
    as,
    async member(handle, role = "member") {
      const at = ctx.now();
      const id = ctx.newId();
      await ctx.db.member.create({
        data: { id, handle, name: handle, email: `${handle}@example.org`, role, createdAt: at, updatedAt: at },
        select: { id: true },
      });
      return { kind: "member", id, handle, name: handle, role };
    },
    async cookie(member) {
      const { sessionId } = await openSession(ctx, member, "a test");
      const secret = sessionSecret(process.env.AUTH_SECRET);
      const value = await encode({ token: { sub: member.id, sid: sessionId }, secret, salt: COOKIE });
      return `${COOKIE}=${value}`;
    },
    async token(member, scopes) {
      const made = await createToken(as(member), { name: scopes.join(" "), scopes, days: null });
      return made.token;
    },
  };
}
