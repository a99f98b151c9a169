"use client";

import { useActionState } from "react";
import { ROLES } from "#lib/core/shared/index.ts";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { ROLE_WORDS } from "#lib/ui/words.ts";
import { inviteAction, revokeAction } from "./actions.ts";
import { ShownOnce } from "./shown-once.client.tsx";
import styles from "./desk.module.css";

/** Makes an invitation link: for one person, or for a room. */
export function InviteForm() {
  const [state, send] = useActionState(inviteAction, {});
  const typed = state.values ?? {};
  const error = (path: string) => problemAt(state.problems, path);
  return (
    <>
      {state.value && (
        <ShownOnce
          link={state.value}
          title="The invitation is made. Its link is shown this once."
          label="Link of the invitation"
        />
      )}
      <form action={send} className={styles.invite} key={JSON.stringify(state.values ?? state.value ?? null)}>
        <FormError message={state.message} problems={state.problems} />
        <FieldRow>
          <TextField
            label="For whom"
            name="note"
            optional
            defaultValue={typed["note"]}
            error={error("note")}
            hint="A note for the stewards."
          />
          <SelectField
            label="Comes in as"
            name="role"
            choices={choicesOf(ROLES, ROLE_WORDS)}
            defaultValue={typed["role"] ?? "member"}
            error={error("role")}
            hint="Most are members."
          />
          <TextField
            label="How many people"
            name="uses"
            type="number"
            min={1}
            max={500}
            defaultValue={typed["uses"] ?? "1"}
            error={error("uses")}
            hint="Each takes one place."
          />
          <TextField
            label="Days it is good for"
            name="days"
            type="number"
            min={1}
            max={365}
            defaultValue={typed["days"] ?? "14"}
            error={error("days")}
            hint="Then it opens nothing."
          />
        </FieldRow>
        <SubmitButton pendingText="Making it …">Make an invitation</SubmitButton>
      </form>
    </>
  );
}

/** Ends an invitation before its time. */
export function RevokeInvitation({ id, note }: { id: string; note: string }) {
  const [state, send] = useActionState(revokeAction, {});
  return (
    <form action={send}>
      <FormError message={state.message} />
      <input type="hidden" name="id" value={id} />
      <ConfirmButton
        look="quiet"
        question={`Revoke the invitation${note ? ` for ${note}` : ""}? Its link opens nothing any more.`}
        confirm="Revoke"
      >
        Revoke
      </ConfirmButton>
    </form>
  );
}
