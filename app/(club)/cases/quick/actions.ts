"use server";

import { redirect } from "next/navigation";
import { recordQuickCase } from "#lib/services/cases/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Records a finished repair and shows its page. */
export async function recordQuick(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member" }, form, async (ctx) => {
    const text = (name: string) => {
      const value = form.get(name);
      return typeof value === "string" ? value.trim() : "";
    };
    const id = text("id");
    const made = await recordQuickCase(ctx, {
      ...(id !== "" && { id }),
      board: text("board"),
      symptom: text("symptom"),
      wrong: text("wrong"),
      at: text("at"),
      failure: text("failure") || "other",
      cured: text("cured"),
      proved: text("proved"),
    });
    redirect(`/cases/${made.number}`);
  });
}
