"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { updateCase } from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Saves the story over the version that its writer read. */
export async function saveStory(_before: FormState<{ version: number }>, form: FormData) {
  return act({ role: "member" }, form, async (ctx) => {
    const number = Number(form.get("case"));
    // A browser sends lines ended by two characters; the story is kept with one.
    const typed = form.get("story");
    const story = (typeof typed === "string" ? typed : "").replaceAll("\r\n", "\n");
    const saved = await updateCase(ctx, number, Number(form.get("version")), { story });
    revalidatePath(`/cases/${number}`);
    if (form.get("leave") !== null) redirect(`/cases/${number}`);
    return saved;
  });
}
