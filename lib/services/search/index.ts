import { z } from "zod";
import { CASE_OUTCOMES } from "#lib/core/shared/index.ts";
import type { SearchAnswer, SearchKind, ViewerVisibility } from "#lib/infra/search/types.ts";
import { isMember, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";

const KINDS = ["case", "board", "chip", "code", "spare"] as const satisfies readonly SearchKind[];

const SearchInput = z.object({
  q: z.string().max(400, "At most 400 characters.").default(""),
  /** One kind, or several with commas. */
  kind: z
    .string()
    .transform((text) => text.split(",").map((kind) => kind.trim()))
    .pipe(z.array(z.enum(KINDS)))
    .optional(),
  board: z.string().max(120).optional(),
  outcome: z.enum(CASE_OUTCOMES).optional(),
  limit: z.coerce.number().int().min(1).max(50).default(20),
  cursor: z.string().max(200).optional(),
});

/** Searches everything that the actor may see: cases, boards, chips, codes and spares. */
export async function search(ctx: Ctx, raw: unknown): Promise<SearchAnswer> {
  const { q, kind, board, outcome, limit, cursor } = SearchInput.parse(raw);
  try {
    return await ctx.search.search({
      q,
      limit,
      visibility: viewer(ctx),
      ...(kind && { kinds: kind }),
      ...(board && { board }),
      ...(outcome && { outcome }),
      ...(cursor && { cursor }),
    });
  } catch (error) {
    if ((error as { problem?: unknown }).problem === "bad-query") {
      throw new ServiceError("invalid", (error as Error).message, {
        problems: [{ path: "cursor", message: (error as Error).message }],
      });
    }
    throw error;
  }
}

function viewer(ctx: Ctx): ViewerVisibility {
  if (isMember(ctx.actor)) return { memberId: ctx.actor.id };
  return ctx.actor.kind === "club" ? "members" : "public";
}
