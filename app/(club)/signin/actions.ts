"use server";

import { redirect } from "next/navigation";
import { act } from "#lib/web/action.ts";
import { signIn } from "#lib/web/auth.ts";
import { formFields } from "#lib/web/form-fields.ts";
import { nextAddress } from "#lib/web/next-address.ts";
import { invalid } from "#lib/services/errors.ts";
import type { SimpleFormState } from "#lib/ui/simple-form.client.tsx";

export async function signInAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  return act({ role: "anyone" }, form, async () => {
    const { email = "", password = "", next } = formFields(form);
    const answer = await signIn("password", { email, password });
    // Which of the two is wrong is not said: that would tell a stranger who is a member.
    if (!answer.ok) throw invalid("password", "Address or password is wrong. A steward can make you a sign-in link.");
    redirect(nextAddress(next));
  });
}
