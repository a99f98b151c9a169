import { change } from "../change.ts";
import { demand, type Ctx } from "../context.ts";
import { demandAuthor, workableCase } from "./access.ts";
import { touchedCase } from "./snapshot.ts";

/** Shows a draft to the club; publishing again changes nothing. */
export async function publishCase(ctx: Ctx, number: number): Promise<void> {
  await setState(ctx, number, "published", "case.publish");
}

/** Takes a case back to a draft of its author. */
export async function withdrawCase(ctx: Ctx, number: number): Promise<void> {
  await setState(ctx, number, "draft", "case.withdraw");
}

async function setState(ctx: Ctx, number: number, state: "published" | "draft", did: string): Promise<void> {
  demand(ctx.actor, "member", "write");
  await change(ctx, "member", async (tx) => {
    const found = await workableCase(tx, ctx, number);
    demandAuthor(ctx, found);
    if (found.state === state) return { value: undefined, did, touched: [] };
    const at = ctx.now();
    await tx.faultCase.update({
      where: { id: found.id },
      data: { state, ...(state === "published" && { publishedAt: at }), version: { increment: 1 }, updatedAt: at },
      select: { id: true },
    });
    return { value: undefined, did, touched: [await touchedCase(tx, found.id)] };
  });
}
