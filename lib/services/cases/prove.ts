import { z } from "zod";
import { demand, type Ctx } from "../context.ts";
import { invalid, notFound } from "../errors.ts";
import type { CheckView } from "./check-view.ts";
import { readCase, type CauseView } from "./read.ts";
import { recordProof } from "./record-cause.ts";
import { recordChecks } from "./record-checks.ts";

const RepeatChecks = z.strictObject({
  cause: z.uuid(),
  readings: z
    .array(
      z.strictObject({
        /** Id for the new check: sent twice, it is made once. */
        id: z.uuidv7("Must be a uuid of version 7.").optional(),
        /** The failed check that is repeated. */
        check: z.uuid(),
        measured: z.string().trim().min(1, "Enter the new reading.").max(2000),
        /** The member's own word where nothing is worked out: as it should be. */
        good: z.boolean().default(false),
      }),
    )
    .max(200, "At most 200 checks at once."),
  note: z.string().trim().max(2000).default(""),
});

export interface Repeated {
  /** Whether every failed check is in spec now: the proof is recorded and the case counts as cured. */
  proved: boolean;
  /** Failed checks that are not in spec yet, with what was read last. */
  left: { check: string; at: string; because: string }[];
}

/**
 * Records the failed checks measured again, and the proof once all that the cause explains are in spec. Readings are
 * kept either way.
 */
export async function repeatChecks(ctx: Ctx, number: number, raw: unknown): Promise<Repeated> {
  const input = RepeatChecks.parse(raw);
  demand(ctx.actor, "member", "write");
  const before = await readCase(ctx, number);
  const known = new Map(before.checks.map((check) => [check.id, check]));
  const checks = input.readings.map((reading, index) => {
    const original = known.get(reading.check);
    if (!original) throw invalid(`readings.${index}.check`, "This is not a check of this case.");
    return repeatOf(original, reading);
  });
  if (checks.length > 0) await recordChecks(ctx, number, checks);
  const after = await readCase(ctx, number);
  const cause = after.causes.find((one) => one.id === input.cause);
  if (!cause) throw notFound("cause with this id in this case");
  const toRepeat = checksToRepeat(cause, after.checks);
  if (toRepeat.length === 0) {
    throw invalid("readings", "No failed check is recorded that could be repeated. Note a soak time instead.");
  }
  const left = toRepeat.flatMap((original) => {
    const last = lastRepeat(original, after.checks);
    if (last?.verdict === "in-spec") return [];
    return [{ check: original.id, at: original.at, because: last?.because ?? "Not measured again yet." }];
  });
  if (left.length > 0) return { proved: false, left };
  await recordProof(ctx, number, { cause: cause.id, kind: "checks-repeated", note: input.note });
  return { proved: true, left: [] };
}

/** The failed checks that prove a cause's cure when they pass: those it explains, or all where it names none. */
export function checksToRepeat(cause: Pick<CauseView, "explains">, checks: readonly CheckView[]): CheckView[] {
  const failed = checks.filter(
    (check) => check.verdict === "out-of-spec" && check.repeats === null && check.kind !== "trial",
  );
  const explained = failed.filter((check) => cause.explains.includes(check.id));
  return explained.length > 0 ? explained : failed;
}

export function lastRepeat(original: CheckView, checks: readonly CheckView[]): CheckView | undefined {
  return checks.findLast((check) => check.repeats === original.id);
}

interface NewReading {
  id?: string | undefined;
  measured: string;
  good: boolean;
}

function repeatOf(original: CheckView, { id, measured, good }: NewReading): object {
  const { kind, at, to, lead, when, power, what, expected, expectedFrom } = original;
  return {
    ...(id && { id }),
    kind,
    at,
    power,
    measured,
    repeats: original.id,
    ...(to && { to }),
    ...(lead && { lead }),
    ...(when && { when }),
    ...(what && { what }),
    // An expectation from the record is asked for anew: it may have been corrected.
    ...(expected && expectedFrom === "the person" && { expected }),
    ...(good && { verdict: "in-spec", reason: "As it should be, by the member’s own word." }),
  };
}
