"use client";

import { useActionState, useState, type ReactNode } from "react";
import type { ComboOption } from "#lib/ui/combo-options.ts";
import { Button } from "#lib/ui/button.tsx";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { dropCause } from "./actions.ts";
import { CauseForm, type CauseValues, type CheckLine } from "./cause-form.client.tsx";
import styles from "./close.module.css";

interface KnownCauseProps {
  caseNumber: number;
  cause: CauseValues;
  places: readonly ComboOption[];
  checks: readonly CheckLine[];
  /** The cause as it reads, and its proof below. */
  children: ReactNode;
}

/** A cause that is named: it can be changed in place, or taken back. */
export function KnownCause({ caseNumber, cause, places, checks, children }: KnownCauseProps) {
  const [editing, setEditing] = useState(false);
  const [dropped, drop] = useActionState(dropCause, {});
  if (editing) {
    return <CauseForm {...{ caseNumber, cause, places, checks }} onDone={() => setEditing(false)} />;
  }
  return (
    <>
      {children}
      <FormError message={dropped.message} problems={dropped.problems} />
      <form action={drop} className={styles.tools}>
        <input type="hidden" name="case" value={caseNumber} />
        <input type="hidden" name="cause" value={cause.id} />
        <input type="hidden" name="version" value={cause.version} />
        <Button look="quiet" onClick={() => setEditing(true)}>
          Change this cause
        </Button>
        <ConfirmButton
          look="quiet"
          question={`Take back the cause ${cause.at || "without a place"}, with its cure and proof?`}
          confirm="Take it back"
        >
          Take it back
        </ConfirmButton>
      </form>
    </>
  );
}
