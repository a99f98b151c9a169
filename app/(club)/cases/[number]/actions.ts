"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { confirmCase, publishCase, withdrawCase } from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";
import { text } from "#lib/web/form-fields.ts";

/** "This cured mine" or "did not help mine"; the latter leads on to a case of one's own. */
export async function confirm(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    const helped = text(form, "helped") === "yes";
    const cause = text(form, "cause");
    await confirmCase(ctx, number, { helped, note: text(form, "note"), ...(cause !== "" && { cause }) });
    revalidatePath(`/cases/${number}`);
    if (helped || form.get("open") === null) return;
    const board = text(form, "board");
    redirect(`/cases/new?openedFrom=${number}${board && `&board=${encodeURIComponent(board)}`}`);
  });
}

export async function setPublished(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const number = numberOf(form);
    await (text(form, "publish") === "yes" ? publishCase(ctx, number) : withdrawCase(ctx, number));
    revalidatePath(`/cases/${number}`);
  });
}

function numberOf(form: FormData): number {
  return Number(text(form, "case"));
}
