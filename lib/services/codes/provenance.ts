import { memberId, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";

/** For the demo and for old notes: who said it and when. Only the program itself may say so. */
export interface Provenance {
  memberId: string;
  at: Date;
}

/** Who writes, and when. Throws `forbidden` where anyone but the program names another. */
export function writtenBy(ctx: Ctx, provenance: Provenance | undefined): { memberId: string | null; at: Date } {
  if (!provenance) return { memberId: memberId(ctx.actor), at: ctx.now() };
  if (ctx.actor.kind !== "club") throw new ServiceError("forbidden", "Only the program says who wrote a record.");
  return provenance;
}
