import type { Ctx } from "../context.ts";
import { createCase, type CreatedCase } from "./create.ts";
import { LONGEST_SYMPTOM, QuickCase } from "./schema.ts";

/** A finished repair in four lines: board, symptom, what was wrong, what cured it and how it was proved. Published at once. */
export async function recordQuickCase(ctx: Ctx, raw: unknown): Promise<CreatedCase> {
  const input = QuickCase.parse(raw);
  const proof = input.proved === "" ? {} : { proof: { kind: "checks-repeated", note: input.proved } };
  return createCase(ctx, {
    ...(input.id && { id: input.id }),
    board: input.board,
    // The vocabulary grows by words; a whole sentence stays the member's own.
    symptoms: input.symptom.length <= LONGEST_SYMPTOM ? [input.symptom] : [],
    symptomText: input.symptom,
    outcome: input.proved === "" ? "works-not-proved" : "cured",
    publish: true,
    causes: [
      {
        at: input.at,
        failure: input.failure,
        description: input.wrong,
        cure: { action: "other", description: input.cured },
        ...proof,
      },
    ],
  });
}
