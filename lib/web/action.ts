import "server-only";
import { z } from "zod";
import { log } from "#lib/infra/log.ts";
import { isDuplicate } from "#lib/services/change.ts";
import { demand, type Ctx, type Scope } from "#lib/services/context.ts";
import type { Role } from "#lib/core/shared/index.ts";
import { ServiceError, type FieldProblem } from "#lib/services/errors.ts";
import { openCtx } from "./actor.ts";
import { duplicateError, schemaError } from "./http.ts";
import { demandKeepableText } from "./plain-text.ts";

/** What a form shows after it was sent. `values` are as typed: nothing is lost by an error. */
export interface FormState<T = unknown> {
  ok?: boolean;
  message?: string;
  problems?: FieldProblem[];
  values?: Record<string, string>;
  /** For a second writer: the record as it stands. */
  present?: unknown;
  value?: T;
}

/**
 * Runs a server action: who asks (denied unless the role allows), the work, and errors as form state. A redirect thrown
 * by the work passes through.
 */
export async function act<T>(
  rule: { role: Role | "anyone"; scope?: Scope },
  form: FormData | null,
  work: (ctx: Ctx) => Promise<T>,
): Promise<FormState<T>> {
  try {
    const ctx = await openCtx();
    if (rule.role !== "anyone") demand(ctx.actor, rule.role, rule.scope ?? "write");
    for (const [name, value] of form ?? []) if (typeof value === "string") demandKeepableText(value, name);
    return { ok: true, value: await work(ctx) };
  } catch (error) {
    const known = knownError(error);
    const values = form ? { values: textValues(form) } : {};
    if (known instanceof ServiceError) {
      return {
        ok: false,
        message: known.message,
        ...(known.extra.problems && { problems: known.extra.problems }),
        ...(known.extra.present !== undefined && { present: known.extra.present }),
        ...values,
      };
    }
    if (isNextSignal(error)) throw error;
    const reason = error instanceof Error ? { message: error.message, stack: error.stack } : { message: String(error) };
    log.error(reason, "an action failed");
    return {
      ok: false,
      message: "Something broke here. Nothing was half-written; what you typed is still below.",
      ...values,
    };
  }
}

function knownError(error: unknown): unknown {
  if (error instanceof z.ZodError) return schemaError(error);
  return isDuplicate(error) ? duplicateError() : error;
}

/** Next's redirects and not-founds are thrown values with a digest. */
function isNextSignal(error: unknown): boolean {
  return typeof (error as { digest?: unknown }).digest === "string";
}

/** Fields that go back into a form after an error; secrets do not. */
function textValues(form: FormData): Record<string, string> {
  const values: Record<string, string> = {};
  for (const [name, value] of form.entries()) {
    if (typeof value === "string" && !name.startsWith("$ACTION") && !/password|token/i.test(name)) values[name] = value;
  }
  return values;
}
