"use client";

import { useActionState } from "react";
import { TextArea, SelectField, type Choice } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { confirm } from "./actions.ts";
import styles from "./case.module.css";

interface FeedbackProps {
  caseNumber: number;
  board: string;
  /** Named when there are several. */
  causes: readonly Choice[];
  /** What this member said before; null: nothing yet. */
  said: boolean | null;
}

/** The two words that change how likely a cause is for such readings. */
export function Feedback({ caseNumber, board, causes, said }: FeedbackProps) {
  const [helped, sendHelped] = useActionState(confirm, {});
  const [not, sendNot] = useActionState(confirm, {});
  const which = causes.length > 1 && <SelectField label="Which cause?" name="cause" choices={causes} />;
  return (
    <div className="no-print">
      <form action={sendHelped} onReset={(event) => event.preventDefault()}>
        <FormError message={helped.message} problems={helped.problems} />
        <input type="hidden" name="case" value={caseNumber} />
        <input type="hidden" name="helped" value="yes" />
        {which}
        <SubmitButton pendingText="Noting …">{said === true ? "It cured mine (said)" : "This cured mine"}</SubmitButton>
      </form>
      <details className={styles.not}>
        <summary>{said === false ? "It did not help mine (said)" : "Did not help mine"}</summary>
        <form action={sendNot} onReset={(event) => event.preventDefault()}>
          <FormError message={not.message} problems={not.problems} />
          <input type="hidden" name="case" value={caseNumber} />
          <input type="hidden" name="helped" value="no" />
          <input type="hidden" name="board" value={board} />
          {which}
          <TextArea
            label="What was different with yours?"
            name="note"
            rows={3}
            optional
            maxLength={1000}
            error={problemAt(not.problems, "note")}
          />
          <SubmitButton name="open" value="yes" pendingText="Noting …">
            Note it and open a case for mine
          </SubmitButton>{" "}
          <SubmitButton look="quiet" pendingText="Noting …">
            Only note it
          </SubmitButton>
        </form>
      </details>
    </div>
  );
}
