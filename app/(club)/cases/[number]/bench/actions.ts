"use server";

import { revalidatePath } from "next/cache";
import { tickCaution } from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Keeps that the member has read a caution of this case's board. */
export async function tick(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = Number(form.get("case"));
    await tickCaution(ctx, number, text(form.get("caution")));
    revalidatePath(`/cases/${number}/bench`);
  });
}

function text(value: FormDataEntryValue | null): string {
  return typeof value === "string" ? value : "";
}
