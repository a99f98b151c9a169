"use server";

import { redirect } from "next/navigation";
import { ServiceError } from "#lib/services/errors.ts";
import type { SimpleFormState } from "#lib/ui/simple-form.client.tsx";
import { act } from "#lib/web/action.ts";
import { signIn } from "#lib/web/auth.ts";
import { formFields } from "#lib/web/form-fields.ts";

export async function useLinkAction(_: SimpleFormState, form: FormData): Promise<SimpleFormState> {
  return act({ role: "anyone" }, form, async () => {
    const answer = await signIn("link", { token: formFields(form).token ?? "" });
    if (!answer.ok)
      throw new ServiceError(
        "not-found",
        "This link was used already, or is more than a day old. Ask a steward for another.",
      );
    redirect("/account?welcome=1");
  });
}
