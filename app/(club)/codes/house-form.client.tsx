"use client";

import { useActionState } from "react";
import { ButtonRow } from "#lib/ui/button.tsx";
import { TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveHouse } from "./actions.ts";

/** A maker that prints codes of its own. */
export function HouseForm() {
  const [state, send] = useActionState(saveHouse, {});
  const error = (path: string) => problemAt(state.problems, path);
  return (
    <form action={send}>
      <FormError message={state.message} problems={state.problems} />
      <TextField
        label="Name"
        name="name"
        required
        defaultValue={state.values?.["name"]}
        error={error("name") ?? error("slug")}
      />
      <TextArea
        label="How its codes look"
        name="notes"
        rows={3}
        optional
        defaultValue={state.values?.["notes"]}
        error={error("notes")}
      />
      <ButtonRow>
        <SubmitButton>Add the house</SubmitButton>
      </ButtonRow>
    </form>
  );
}
