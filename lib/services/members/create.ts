import { change } from "../change.ts";
import type { Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { demandPerson } from "./person.ts";
import { NewMember } from "./schema.ts";

/** How long a one-time link opens the door, hours. */
const LINK_HOURS = 24;

/** Adds a member without an invitation: the first steward, the demo club, the command line. */
export async function addMember(ctx: Ctx, raw: unknown, createdAt?: Date): Promise<{ id: string; made: boolean }> {
  const { id: asked, ...input } = NewMember.parse(raw);
  if (ctx.actor.kind !== "club") throw new ServiceError("forbidden", "Members come in by an invitation.");
  const known = await ctx.db.member.findUnique({ where: { handle: input.handle }, select: { id: true } });
  if (known) return { id: known.id, made: false };
  return change(ctx, "steward", async (tx) => {
    const at = createdAt ?? ctx.now();
    const id = asked ?? ctx.newId();
    await tx.member.create({ data: { id, ...input, createdAt: at, updatedAt: at }, select: { id: true } });
    return { value: { id, made: true }, did: "member.create", touched: [{ kind: "member", id, version: 1 }] };
  });
}

/** A link that signs a member in once. The token is in the answer only; stored is its hash. */
export async function makeSignInLink(ctx: Ctx, handle: string): Promise<{ token: string; expiresAt: Date }> {
  demandPerson(ctx, "steward");
  const token = ctx.secrets.newToken();
  const at = ctx.now();
  const expiresAt = new Date(at.getTime() + LINK_HOURS * 3_600_000);
  await change(ctx, "steward", async (tx) => {
    const member = await tx.member.findUnique({ where: { handle }, select: { id: true, disabledAt: true } });
    if (!member || member.disabledAt) throw new ServiceError("not-found", `There is no active member "${handle}".`);
    await tx.signInLink.create({
      data: { id: ctx.newId(), memberId: member.id, tokenHash: ctx.secrets.tokenHash(token), createdAt: at, expiresAt },
      select: { id: true },
    });
    return { value: undefined, did: "member.link", touched: [], detail: { member: handle } };
  });
  return { token, expiresAt };
}
