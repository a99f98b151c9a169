import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import { hasRole, type Ctx } from "../context.ts";
import { notFound, ServiceError } from "../errors.ts";
import { visibleCases } from "../visible-cases.ts";

const FOUND = {
  id: true,
  number: true,
  version: true,
  state: true,
  outcome: true,
  authorId: true,
  boardId: true,
} as const;
export type FoundCase = Prisma.FaultCaseGetPayload<{ select: typeof FOUND }>;

/** A case that the actor may read and, being a member, may work on. Members work on each other's published cases. */
export async function workableCase(tx: Tx, ctx: Ctx, number: number): Promise<FoundCase> {
  const found = await tx.faultCase.findFirst({ where: { number, ...visibleCases(ctx.actor) }, select: FOUND });
  if (!found) throw notFound(`case ${number}`);
  return found;
}

/** A case of one's own, or any for a reviewer: publishing and withdrawing. */
export function demandAuthor(ctx: Ctx, found: FoundCase): void {
  if (ctx.actor.kind === "member" && ctx.actor.id === found.authorId) return;
  if (hasRole(ctx.actor, "reviewer")) return;
  throw new ServiceError("forbidden", "Only the author or a reviewer may do this.");
}
