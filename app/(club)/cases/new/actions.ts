"use server";

import { redirect } from "next/navigation";
import { createCase, tickCaution } from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Opens a case and goes to its bench. The cautions that were ticked on the form are kept with it. */
export async function openCase(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const openedFrom = text(form, "openedFrom");
    const symptoms = form.getAll("symptoms").filter((one) => typeof one === "string" && one.trim() !== "");
    const made = await createCase(ctx, {
      symptoms: [...new Set(symptoms)],
      symptomText: text(form, "symptomText"),
      reproduced: text(form, "reproduced"),
      ...optional(form, "id"),
      ...optional(form, "board"),
      ...optional(form, "revision"),
      ...optional(form, "copy"),
      ...(openedFrom !== "" && { openedFrom: Number(openedFrom) }),
    });
    for (const key of form.getAll("tick")) if (typeof key === "string") await tickCaution(ctx, made.number, key);
    redirect(`/cases/${made.number}/bench`);
  });
}

function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value.trim() : "";
}

function optional(form: FormData, name: string): Record<string, string> {
  const value = text(form, name);
  return value === "" ? {} : { [name]: value };
}
