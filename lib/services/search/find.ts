import type { SearchAnswer, SearchProblem, ViewerVisibility } from "#lib/infra/search/types.ts";
import { isMember, type Ctx } from "../context.ts";
import { invalid, ServiceError } from "../errors.ts";
import { SearchInput } from "./schema.ts";

/** Searches everything that the actor may see. Throws `invalid` for a foreign cursor, `unavailable` without an index. */
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
    throw refused(error);
  }
}

/** The engine's refusal as a service says it; anything else is a bug and stays what it is. */
function refused(error: unknown): unknown {
  const { problem } = error as { problem?: SearchProblem };
  switch (problem) {
    case undefined:
      return error;
    case "bad-query":
      return invalid("cursor", (error as Error).message);
    case "unavailable":
    case "misconfigured":
    case "missing-index":
    case "overloaded":
      return new ServiceError("unavailable", "The search does not answer just now. The records are all there.");
  }
}

function viewer(ctx: Ctx): ViewerVisibility {
  if (isMember(ctx.actor)) return { memberId: ctx.actor.id };
  return ctx.actor.kind === "club" ? "members" : "public";
}
