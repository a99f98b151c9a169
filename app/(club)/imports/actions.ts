"use server";

import { revalidatePath } from "next/cache";
import { commitImport } from "#lib/services/imports/index.ts";
import { act, type FormState } from "#lib/web/action.ts";

/** Writes what the dry run showed. */
export async function commit(_before: FormState, form: FormData): Promise<FormState> {
  return act({ role: "member", scope: "import" }, form, async (ctx) => {
    const id = form.get("id");
    await commitImport(ctx, typeof id === "string" ? id : "");
    revalidatePath("/imports", "layout");
  });
}
