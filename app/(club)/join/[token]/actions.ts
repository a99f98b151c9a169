"use server";

import { redirect } from "next/navigation";
import { join } from "#lib/services/members/index.ts";
import type { SimpleFormState } from "#lib/ui/simple-form.client.tsx";
import { act } from "#lib/web/action.ts";
import { signIn } from "#lib/web/auth.ts";
import { formFields } from "#lib/web/form-fields.ts";

export async function joinAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  return act({ role: "anyone" }, form, async (ctx) => {
    const fields = formFields(form);
    const { email } = await join(ctx, fields);
    await signIn("password", { email, password: fields.password ?? "" });
    redirect("/?welcome=1");
  });
}
