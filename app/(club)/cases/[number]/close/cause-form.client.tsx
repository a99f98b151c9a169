"use client";

import { useActionState, useId, useState } from "react";
import { v7 } from "uuid";
import { CURE_ACTIONS, FAILURES } from "#lib/core/shared/index.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import type { ComboOption } from "#lib/ui/combo-options.ts";
import { CheckboxField, choicesOf, FieldRow, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { CURE_WORDS, FAILURE_WORDS } from "#lib/ui/words.ts";
import { saveCause } from "./actions.ts";
import { sentByHand } from "./sent-by-hand.client.tsx";
import styles from "./close.module.css";

export interface CauseValues {
  id: string;
  version: number;
  at: string;
  chip: { slug: string; name: string } | null;
  code: string;
  failure: string;
  description: string;
  explains: string[];
  action: string;
  cureText: string;
  fitted: string;
  from: string;
}

/** A check as one line: where, what, reading. */
export interface CheckLine {
  id: string;
  text: string;
  failed: boolean;
}

interface CauseFormProps {
  caseNumber: number;
  /** Left out: a new cause. */
  cause?: CauseValues;
  places: readonly ComboOption[];
  checks: readonly CheckLine[];
  onDone?: () => void;
}

/** Names a cause and what cured it, or changes one. */
export function CauseForm({ caseNumber, cause, places, checks, onDone }: CauseFormProps) {
  const [newId, setNewId] = useState(() => v7());
  const [state, send, isSending] = useActionState(async (before: object, form: FormData) => {
    const answer = await saveCause(before, form);
    if (answer.ok) {
      setNewId(v7());
      onDone?.();
    }
    return answer;
  }, {});
  const error = (path: string) => problemAt(state.problems, path);
  const present = presentVersion(state.present);
  const own = useId();
  return (
    // A new cause that was taken is followed by an empty form.
    <form key={cause ? cause.id : newId} action={send} onSubmit={sentByHand(send, isSending)}>
      {present === null ? (
        <FormError message={state.message} problems={state.problems} fields={{ at: `${own}-at` }} />
      ) : (
        <Notice kind="warning" title="Someone changed this cause while you were writing.">
          <p>
            It stands now: {present.text}. Yours is below: take over what should stay, and save again. Both are in the
            history.
          </p>
        </Notice>
      )}
      <input type="hidden" name="case" value={caseNumber} />
      {cause ? (
        <>
          <input type="hidden" name="cause" value={cause.id} />
          <input type="hidden" name="version" value={present?.version ?? cause.version} />
        </>
      ) : (
        <input type="hidden" name="newId" value={newId} />
      )}
      <FieldRow>
        <ComboBox
          label="Where"
          name="at"
          valueName="atValue"
          options={places}
          ownWords
          mono
          optional
          hint="U7, U7.20, or a net such as +5V"
          placeholder="U7"
          defaultText={cause?.at ?? ""}
          error={error("at")}
        />
        <SelectField
          label="What was wrong with it"
          name="failure"
          choices={choicesOf(FAILURES, FAILURE_WORDS)}
          defaultValue={cause?.failure ?? "dead"}
          error={error("failure")}
        />
      </FieldRow>
      <TextArea
        label="In your own words"
        name="description"
        rows={2}
        optional
        defaultValue={cause?.description}
        placeholder="Output enable arrived, the outputs stayed between the levels."
        error={error("description")}
      />
      <FieldRow>
        <ComboBox
          label="Chip"
          name="chipName"
          valueName="chip"
          url="/api/v1/search?kind=chip&limit=8"
          optional
          hint="Left out: the one that the board’s record has there."
          defaultText={cause?.chip?.name ?? ""}
          defaultValue={cause?.chip?.slug ?? ""}
          {...(cause?.chip && { options: [{ value: cause.chip.slug, label: cause.chip.name }] })}
          error={error("chip")}
        />
        <TextField
          label="Code printed on it"
          name="code"
          mono
          optional
          defaultValue={cause?.code}
          error={error("code")}
        />
      </FieldRow>
      {checks.length > 0 && (
        <fieldset className={styles.explains}>
          <legend>Which checks does it explain?</legend>
          {checks.map((check) => (
            <CheckboxField
              key={check.id}
              name="explains"
              value={check.id}
              label={<span className="mono">{check.text}</span>}
              defaultChecked={cause ? cause.explains.includes(check.id) : check.failed}
            />
          ))}
          {error("explains") && <p role="alert">{error("explains")}</p>}
        </fieldset>
      )}
      <FieldRow>
        <SelectField
          label="What cured it"
          name="action"
          empty="not cured yet"
          choices={choicesOf(CURE_ACTIONS, CURE_WORDS)}
          defaultValue={cause?.action ?? ""}
        />
        <ComboBox
          label="Code fitted"
          name="fittedCode"
          url="/api/v1/search?kind=code&limit=8"
          ownWords
          mono
          optional
          hint="As printed on the part that went in."
          defaultText={cause?.fitted ?? ""}
          error={error("cure.fittedCode")}
        />
        <TextField
          label="From where"
          name="from"
          optional
          placeholder="donor board, bought new"
          defaultValue={cause?.from}
          error={error("cure.from")}
        />
      </FieldRow>
      <TextField
        label="What was done"
        name="cureText"
        optional
        wide
        placeholder="Cut it out, cleared the holes, fitted a socket."
        defaultValue={cause?.cureText}
        error={error("cure.description")}
      />
      <ButtonRow>
        <Button type="submit" look="main" aria-disabled={isSending}>
          {isSending ? "Saving …" : cause ? "Save this cause" : "Name this cause"}
        </Button>
        {onDone && (
          <Button look="quiet" onClick={onDone}>
            Leave it as it was
          </Button>
        )}
      </ButtonRow>
    </form>
  );
}

function presentVersion(present: unknown): { version: number; text: string } | null {
  if (typeof present !== "object" || present === null) return null;
  const { version, at, failure, description } = present as Record<string, unknown>;
  if (typeof version !== "number") return null;
  const words = [at, FAILURE_WORDS[failure as keyof typeof FAILURE_WORDS], description];
  return { version, text: words.filter((word) => typeof word === "string" && word !== "").join(", ") };
}
