"use client";

import { useActionState } from "react";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { setPublished } from "./actions.ts";

/** Shows a draft to the club, or takes a case back to its author. */
export function Publish({ caseNumber, isDraft }: { caseNumber: number; isDraft: boolean }) {
  const [state, send] = useActionState(setPublished, {});
  return (
    <form action={send} className="no-print">
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="case" value={caseNumber} />
      <input type="hidden" name="publish" value={isDraft ? "yes" : "no"} />
      {isDraft ? (
        <SubmitButton pendingText="Publishing …">Publish to the club</SubmitButton>
      ) : (
        <ConfirmButton
          look="quiet"
          question="Take it back to a draft? Only its author sees it then; links to it lead nowhere."
          confirm="Take it back"
        >
          Take back to a draft
        </ConfirmButton>
      )}
    </form>
  );
}
