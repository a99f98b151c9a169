import type { Prisma } from "#lib/infra/db/index.ts";
import { hasRole, type Actor } from "./context.ts";

/** The cases that an actor may read: published ones, one's own drafts, and for stewards the hidden ones. */
export function visibleCases(actor: Actor): Prisma.FaultCaseWhereInput {
  if (actor.kind === "club") return {};
  if (actor.kind === "visitor") return { state: "published" };
  const own: Prisma.FaultCaseWhereInput = { authorId: actor.id, state: "draft" };
  const states = hasRole(actor, "steward") ? ["published", "hidden"] : ["published"];
  return { OR: [{ state: { in: states } }, own] };
}
