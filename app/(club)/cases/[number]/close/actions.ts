"use server";

import { revalidatePath } from "next/cache";
import {
  deleteCause,
  recordCause,
  recordProof,
  repeatChecks,
  updateCase,
  updateCause,
  type Repeated,
} from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Names a cause, or changes the one whose id and version the form carries. */
export async function saveCause(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    const id = text(form, "cause");
    const input = causeInput(form);
    if (id === "") await recordCause(ctx, number, { ...input, ...optional("id", text(form, "newId")) });
    else await updateCause(ctx, number, id, Number(text(form, "version")), input);
    revalidatePath(`/cases/${number}`, "layout");
  });
}

function causeInput(form: FormData) {
  const action = text(form, "action");
  return {
    at: text(form, "atValue") || text(form, "at"),
    failure: text(form, "failure"),
    description: text(form, "description"),
    explains: form.getAll("explains").filter((one) => typeof one === "string"),
    ...optional("chip", text(form, "chip")),
    ...optional("code", text(form, "code")),
    ...(action !== "" && {
      cure: {
        action,
        description: text(form, "cureText"),
        ...optional("fittedCode", text(form, "fittedCode")),
        ...optional("from", text(form, "from")),
      },
    }),
  };
}

export async function dropCause(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    await deleteCause(ctx, number, text(form, "cause"), Number(text(form, "version")));
    revalidatePath(`/cases/${number}`, "layout");
  });
}

/** Records the failed checks measured again; lines left empty are not measured yet. */
export async function saveRepeats(_before: FormState<Repeated>, form: FormData): Promise<FormState<Repeated>> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    const checks = form.getAll("check").map(String);
    const readings = checks.flatMap((check) => {
      const good = form.get(`good.${check}`) !== null;
      const measured = text(form, `measured.${check}`) || (good ? "good" : "");
      return measured === "" ? [] : [{ check, measured, good, ...optional("id", text(form, `id.${check}`)) }];
    });
    const repeated = await repeatChecks(ctx, number, {
      cause: text(form, "cause"),
      readings,
      note: text(form, "note"),
    });
    revalidatePath(`/cases/${number}`, "layout");
    return repeated;
  });
}

export async function saveSoak(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    const amount = Number(text(form, "amount").replace(",", "."));
    const minutes = Math.round(text(form, "unit") === "hours" ? amount * 60 : amount);
    const proof = { cause: text(form, "cause"), kind: "soak", note: text(form, "note") };
    await recordProof(ctx, number, { ...proof, ...(Number.isFinite(minutes) && minutes > 0 && { minutes }) });
    revalidatePath(`/cases/${number}`, "layout");
  });
}

/** Title, lesson, outcome, and what help is asked for. */
export async function saveEnding(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    await updateCase(ctx, number, Number(text(form, "version")), {
      title: text(form, "title"),
      lesson: text(form, "lesson"),
      asksHelp: text(form, "asksHelp"),
      outcome: text(form, "outcome"),
    });
    revalidatePath(`/cases/${number}`, "layout");
  });
}

function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value.trim() : "";
}

function optional(name: string, value: string): Record<string, string> {
  return value === "" ? {} : { [name]: value };
}

function numberOf(form: FormData): number {
  return Number(text(form, "case"));
}
