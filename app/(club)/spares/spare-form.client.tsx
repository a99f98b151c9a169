"use client";

import Link from "next/link";
import { useActionState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { FieldRow, RadioField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveSpare } from "./actions.ts";
import { presentSpare, type SpareValues } from "./spare-values.ts";

export interface SpareFormProps {
  /** Of the spare that is changed; left out: a new one. */
  id?: string;
  version?: number;
  values: SpareValues;
}

/** What a member has to give, or looks for. */
export function SpareForm({ id, version, values }: SpareFormProps) {
  const [state, send] = useActionState(saveSpare, {});
  const typed: SpareValues = { ...values, ...state.values };
  const present = presentSpare(state.present);
  const error = (path: string) => problemAt(state.problems, path);
  const codeProblem = error("code");
  return (
    // A form that was answered is drawn anew with what was typed.
    <form action={send} key={JSON.stringify(state.values ?? null)}>
      <FormError
        message={present ? undefined : state.message}
        problems={state.problems}
        fields={{ note: "spare-note" }}
      />
      {present && <SomeoneWasFirst differences={differences(typed, present.values)} />}
      {id && <input type="hidden" name="id" value={id} />}
      <input type="hidden" name="version" value={present?.version ?? version ?? ""} />
      <RadioField
        legend="What is it?"
        name="direction"
        defaultValue={typed.direction}
        required
        choices={[
          { value: "offer", label: "I have one to give" },
          { value: "want", label: "I look for one" },
        ]}
      />
      <FieldRow>
        <ComboBox
          label="Code, as printed"
          name="code"
          url="/api/v1/search?kind=code&limit=8"
          ownWords
          optional
          mono
          defaultText={typed.code}
          error={codeProblem}
          hint="Where the print matters."
        />
        <ComboBox
          label="Chip"
          name="chipName"
          valueName="chip"
          url="/api/v1/search?kind=chip&limit=8"
          optional
          mono
          defaultText={typed.chipName}
          defaultValue={typed.chip}
          error={error("chip")}
          hint="Where any make will do."
        />
        <ComboBox
          label="Donor board"
          name="boardName"
          valueName="board"
          url="/api/v1/search?kind=board&limit=8"
          optional
          defaultText={typed.boardName}
          defaultValue={typed.board}
          error={error("board")}
          hint="A whole board to take parts from."
        />
      </FieldRow>
      {codeProblem && typed.code && (
        <p>
          <Link href={`/codes/new?code=${encodeURIComponent(typed.code)}`}>Record the code {typed.code}</Link>, then
          come back: what you typed here goes when you leave the page.
        </p>
      )}
      <FieldRow>
        <TextField
          label="How many"
          name="quantity"
          type="number"
          min={1}
          inputMode="numeric"
          defaultValue={typed.quantity}
          error={error("quantity")}
        />
        <TextField
          label="Condition"
          name="condition"
          optional
          defaultValue={typed.condition}
          error={error("condition")}
          hint="new; pulled, tested; donor, line output gone"
        />
      </FieldRow>
      <TextArea
        label="Note"
        name="note"
        id="spare-note"
        optional
        rows={3}
        defaultValue={typed.note}
        error={error("note")}
        hint="What the taker should know, and how you part with it."
      />
      <RadioField
        legend="Who sees it?"
        name="visibility"
        defaultValue={typed.visibility}
        choices={[
          { value: "members", label: "Members" },
          { value: "public", label: "Everybody who can read this club’s pages" },
        ]}
      />
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : id ? "Save" : "Put it on the list"}</SubmitButton>
        <ButtonLink href="/spares" look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

const FIELDS: readonly { name: keyof SpareValues; field: string }[] = [
  { name: "direction", field: "Offer or want" },
  { name: "code", field: "Code" },
  { name: "chipName", field: "Chip" },
  { name: "boardName", field: "Donor board" },
  { name: "quantity", field: "How many" },
  { name: "condition", field: "Condition" },
  { name: "note", field: "Note" },
  { name: "visibility", field: "Who sees it" },
];

function differences(mine: SpareValues, present: SpareValues): Difference[] {
  return FIELDS.map(({ name, field }) => ({ field, present: present[name], yours: mine[name] })).filter(
    (one) => one.present !== one.yours,
  );
}
