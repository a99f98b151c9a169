"use client";

import { useActionState } from "react";
import { ROLES, type Role } from "#lib/core/shared/index.ts";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { choicesOf, SelectField } from "#lib/ui/field.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { ROLE_WORDS } from "#lib/ui/words.ts";
import { linkAction, memberAction } from "./actions.ts";
import { ShownOnce } from "./shown-once.client.tsx";
import styles from "./desk.module.css";

export interface MemberActionsProps {
  handle: string;
  name: string;
  role: Role;
  disabled: boolean;
  /** The steward's own account: it cannot be shut from here. */
  isSelf: boolean;
}

/** What a steward may do with an account: role, one-time link, shut and open. */
export function MemberActions({ handle, name, role, disabled, isSelf }: MemberActionsProps) {
  const [changed, change] = useActionState(memberAction, {});
  const [linked, makeLink] = useActionState(linkAction, {});
  const problem = changed.ok === false ? changed : linked;
  return (
    <details>
      <summary className={styles.manage}>
        Manage<span className="visually-hidden"> {name}</span>
      </summary>
      <FormError message={problem.ok === false ? problem.message : undefined} problems={problem.problems} />
      <output>{changed.ok && "Saved."}</output>
      {disabled ? (
        <form action={change} className={styles.act}>
          <input type="hidden" name="handle" value={handle} />
          <input type="hidden" name="disabled" value="no" />
          <SubmitButton look="quiet">Open the account again</SubmitButton>
        </form>
      ) : (
        <>
          <form action={change} className={styles.act} key={role}>
            <input type="hidden" name="handle" value={handle} />
            <SelectField label="Role" name="role" choices={choicesOf(ROLES, ROLE_WORDS)} defaultValue={role} />
            <SubmitButton look="quiet">Give this role</SubmitButton>
          </form>
          <form action={makeLink} className={styles.act}>
            <input type="hidden" name="handle" value={handle} />
            <SubmitButton look="quiet" pendingText="Making it …">
              Make a one-time sign-in link
            </SubmitButton>
          </form>
          {linked.value && (
            <ShownOnce
              link={linked.value}
              title={`This link signs ${name} in once, within 24 hours. It is shown this once.`}
              label={`Sign-in link for ${name}`}
            />
          )}
          {!isSelf && (
            <form action={change} className={styles.act}>
              <input type="hidden" name="handle" value={handle} />
              <input type="hidden" name="disabled" value="yes" />
              <ConfirmButton
                look="quiet"
                question={`Shut the account of ${name}? Every sign-in ends; cases and readings stay.`}
                confirm="Shut it"
                keep="Leave it open"
              >
                Shut the account
              </ConfirmButton>
            </form>
          )}
        </>
      )}
    </details>
  );
}
