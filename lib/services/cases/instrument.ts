import { z } from "zod";
import { UNITS } from "#lib/core/quantity/index.ts";
import type { Instrument } from "#lib/core/reading/index.ts";
import { CHECK_KINDS } from "#lib/core/shared/index.ts";
import type { Prisma, Tx } from "#lib/infra/db/index.ts";
import { memberId, type Ctx } from "../context.ts";
import { invalid } from "../errors.ts";

/** A meter's accuracy as its maker states it, a line a range: ±(percent of reading + digits). */
const Accuracy = z.object({
  ranges: z
    .array(
      z.object({
        unit: z.enum(UNITS),
        kinds: z.array(z.enum(CHECK_KINDS)).exactOptional(),
        upTo: z.number().positive().exactOptional(),
        percent: z.number().min(0),
        digits: z.number().min(0),
        resolution: z.number().min(0),
      }),
    )
    .max(100),
});

/** One of the actor's own instruments, with its accuracy as it is now. */
export async function instrumentOf(
  tx: Tx,
  ctx: Ctx,
  id: string,
  path: string,
): Promise<{ id: string; accuracy: Instrument; raw: Prisma.InputJsonValue }> {
  const owner = memberId(ctx.actor);
  const found =
    owner && (await tx.instrument.findFirst({ where: { id, memberId: owner }, select: { accuracy: true } }));
  const read = found ? Accuracy.safeParse(found.accuracy) : null;
  if (!read?.success) throw invalid(path, "This is not one of your instruments.");
  return { id, accuracy: read.data, raw: read.data };
}

/** The instrument's accuracy as it was when the check was made. */
export async function instrumentOfCheck(tx: Tx, checkId: string): Promise<Instrument | null> {
  const check = await tx.check.findUnique({ where: { id: checkId }, select: { accuracy: true } });
  const read = Accuracy.safeParse(check?.accuracy);
  return read.success ? read.data : null;
}
