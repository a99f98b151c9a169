import type { z } from "zod";
import { change, isDuplicate } from "../change.ts";
import { demand, memberId, type Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";
import { demandPerson } from "./person.ts";
import { InvitationInput, JoinInput } from "./schema.ts";

export interface InvitationView {
  id: string;
  role: string;
  note: string;
  usesLeft: number;
  expiresAt: string;
  by: string;
  revoked: boolean;
  joined: { handle: string; name: string }[];
}

/** Makes an invitation link. The token is in the answer only; stored is its hash. */
export async function createInvitation(ctx: Ctx, raw: unknown): Promise<{ id: string; token: string }> {
  const input = InvitationInput.parse(raw);
  demandPerson(ctx, "steward");
  const by = memberId(ctx.actor);
  if (!by) throw new ServiceError("forbidden", "An invitation is a steward's.");
  const token = ctx.secrets.newToken();
  const at = ctx.now();
  const id = ctx.newId();
  await change(ctx, "steward", async (tx) => {
    await tx.invitation.create({
      data: {
        id,
        tokenHash: ctx.secrets.tokenHash(token),
        role: input.role,
        note: input.note,
        usesLeft: input.uses,
        createdById: by,
        createdAt: at,
        expiresAt: new Date(at.getTime() + input.days * 86_400_000),
      },
      select: { id: true },
    });
    return { value: undefined, did: "invitation.create", touched: [], detail: { role: input.role, uses: input.uses } };
  });
  return { id, token };
}

export async function revokeInvitation(ctx: Ctx, id: string): Promise<void> {
  demandPerson(ctx, "steward");
  await change(ctx, "steward", async (tx) => {
    const { count } = await tx.invitation.updateMany({
      where: { id, revokedAt: null },
      data: { revokedAt: ctx.now() },
    });
    if (count === 0) throw notFound("open invitation with this id");
    return { value: undefined, did: "invitation.revoke", touched: [] };
  });
}

/** Invitations, newest first, for stewards. */
export async function listInvitations(ctx: Ctx): Promise<InvitationView[]> {
  demand(ctx.actor, "steward", "read");
  const rows = await ctx.db.invitation.findMany({
    select: {
      id: true,
      role: true,
      note: true,
      usesLeft: true,
      expiresAt: true,
      revokedAt: true,
      createdBy: { select: { name: true } },
      members: { select: { handle: true, name: true } },
    },
    orderBy: { createdAt: "desc" },
    take: 100,
  });
  return rows.map(({ createdBy, members, revokedAt, expiresAt, ...row }) => ({
    ...row,
    expiresAt: expiresAt.toISOString(),
    by: createdBy.name,
    revoked: revokedAt !== null,
    joined: members,
  }));
}

/** Whether a link still opens the door, without using it up. */
export async function invitationOf(
  ctx: Ctx,
  token: string,
): Promise<{ role: string; note: string; by: string } | null> {
  const found = await ctx.db.invitation.findUnique({
    where: { tokenHash: ctx.secrets.tokenHash(token) },
    select: {
      role: true,
      note: true,
      usesLeft: true,
      expiresAt: true,
      revokedAt: true,
      createdBy: { select: { name: true } },
    },
  });
  if (!found || found.usesLeft < 1 || found.revokedAt || found.expiresAt <= ctx.now()) return null;
  return { role: found.role, note: found.note, by: found.createdBy.name };
}

/** Becomes a member by an invitation. Of two who use the last place at once, one comes in. */
export async function join(ctx: Ctx, raw: unknown): Promise<{ id: string; email: string }> {
  const input = JoinInput.parse(raw);
  const wait = await ctx.limits.take("linkAddress", ctx.address ?? "none");
  if (wait !== null) throw new ServiceError("too-many", "Too many tries. Wait some minutes.", { retryAfter: wait });
  const tokenHash = ctx.secrets.tokenHash(input.token);
  if (!(await invitationOf(ctx, input.token))) throw usedUp();
  // Hashing takes its time, so it is done before the transaction opens.
  const passwordHash = await ctx.secrets.hashPassword(input.password);
  const club: Ctx = { ...ctx, actor: { kind: "club" } };
  try {
    return await change(club, "steward", async (tx) => {
      const at = ctx.now();
      const taken = await tx.invitation.updateMany({
        where: { tokenHash, usesLeft: { gt: 0 }, revokedAt: null, expiresAt: { gt: at } },
        data: { usesLeft: { decrement: 1 } },
      });
      if (taken.count !== 1) throw usedUp();
      const invitation = await tx.invitation.findUniqueOrThrow({
        where: { tokenHash },
        select: { id: true, role: true },
      });
      const id = ctx.newId();
      const { name, handle, email } = input;
      await tx.member.create({
        data: {
          id,
          name,
          handle,
          email,
          passwordHash,
          role: invitation.role,
          invitationId: invitation.id,
          createdAt: at,
          updatedAt: at,
        },
        select: { id: true },
      });
      return { value: { id, email }, did: "member.join", touched: [{ kind: "member", id, version: 1 }] };
    });
  } catch (error) {
    if (isDuplicate(error)) throw await whatIsTaken(ctx, input);
    throw error;
  }
}

async function whatIsTaken(ctx: Ctx, input: z.infer<typeof JoinInput>): Promise<ServiceError> {
  const handle = await ctx.db.member.findUnique({ where: { handle: input.handle }, select: { id: true } });
  if (handle) return invalid("handle", `"${input.handle}" is taken. Choose another short name.`);
  return invalid("email", "This address cannot be used here. If it is yours, sign in, or ask a steward for a link.");
}

function usedUp(): ServiceError {
  return new ServiceError(
    "not-found",
    "This invitation is used up, revoked or too old. Ask the steward who sent it for another.",
  );
}
