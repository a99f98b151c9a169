"use client";

import { useActionState } from "react";
import { ButtonRow } from "#lib/ui/button.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveSighting } from "./actions.ts";
import { SightingFields } from "./sighting-fields.tsx";

/** Where else a code was seen. */
export function SightingForm({ codeId }: { codeId: string }) {
  const [state, send] = useActionState(saveSighting, {});
  return (
    <form action={send} key={JSON.stringify(state.values ?? null)}>
      <FormError message={state.message} problems={state.problems} />
      {state.ok && <Notice kind="done" title="The sighting stands above." />}
      <input type="hidden" name="codeId" value={codeId} />
      <SightingFields values={state.values} problems={state.problems} path="" />
      <ButtonRow>
        <SubmitButton>Record the sighting</SubmitButton>
      </ButtonRow>
    </form>
  );
}
