import { notFound, redirect } from "next/navigation";
import type { Ctx } from "#lib/services/context.ts";
import { pageCtx } from "#lib/web/actor.ts";

/** The context of a steward. A visitor is sent to sign in; for other members these pages are not there. */
export async function stewardCtx(next: string): Promise<{ ctx: Ctx; handle: string }> {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect(`/signin?next=${encodeURIComponent(next)}`);
  if (ctx.actor.role !== "steward") notFound();
  return { ctx, handle: ctx.actor.handle };
}
