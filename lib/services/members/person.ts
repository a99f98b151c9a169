import type { Role } from "#lib/core/shared/index.ts";
import { demand, isMember, type Ctx, type MemberActor } from "../context.ts";
import { ServiceError } from "../errors.ts";

/**
 * Throws unless the actor has the role and came in themselves: whoever finds a token must not be able to make it live
 * longer, to open the door to others, or to take an account over with it.
 */
export function demandPerson(ctx: Ctx, role: Role): void {
  demand(ctx.actor, role, "write");
  if (isMember(ctx.actor) && ctx.actor.scopes) {
    throw new ServiceError("forbidden", "Sign in with your password for this; a token cannot do it.");
  }
}

/** The member whose own account is meant. */
export function self(ctx: Ctx): MemberActor {
  demandPerson(ctx, "member");
  if (!isMember(ctx.actor)) throw new ServiceError("forbidden", "This is a member's own.");
  return ctx.actor;
}
