"use client";

import { useActionState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { commit } from "./actions.ts";

/** The one step that writes. */
export function CommitForm({ id, chips }: { id: string; chips: number }) {
  const [state, send] = useActionState(commit, {});
  return (
    <form action={send}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="id" value={id} />
      <ButtonRow>
        <SubmitButton pendingText="Writing …">
          Write {chips} {chips === 1 ? "chip" : "chips"}
        </SubmitButton>
        <ButtonLink href="/imports" look="quiet">
          Leave it: write nothing
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}
