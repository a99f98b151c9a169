import "server-only";
import { headers } from "next/headers";
import { cache } from "react";
import type { Actor, Ctx } from "#lib/services/context.ts";
import { actorOfSession } from "#lib/services/members/index.ts";
import { clubSettings } from "#lib/services/settings/index.ts";
import { clientAddress } from "./address.ts";
import { sessionIdOf } from "./auth.ts";
import { contextFor, runtime } from "./runtime.ts";

/** Who is signed in, for pages and server actions; asked once a request. */
export const currentActor = cache(async (): Promise<Actor> => {
  const given = await headers();
  const sessionId = await sessionIdOf(given);
  if (!sessionId) return { kind: "visitor" };
  const from = await runtime();
  return actorOfSession(contextFor(from, { kind: "visitor" }), sessionId);
});

/** The context of the person who asks, without the members-only gate: for signing in, joining, and the gate itself. */
export const openCtx = cache(async (): Promise<Ctx> => {
  const actor = await currentActor();
  return contextFor(await runtime(), actor, clientAddress(await headers()));
});

/** The context of the person who asks. In a members-only club a visitor is sent to sign in before anything is read. */
export const pageCtx = cache(async (): Promise<Ctx> => {
  const ctx = await openCtx();
  if (ctx.actor.kind === "visitor" && (await clubSettings(ctx)).membersOnly) {
    const { redirect } = await import("next/navigation");
    redirect("/signin");
  }
  return ctx;
});
