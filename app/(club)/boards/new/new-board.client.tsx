"use client";

import { useActionState, useState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Section } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { recordBoard } from "../actions.ts";
import { RAIL_FORM, type BoardFactsTyped } from "../edit-lists.ts";
import { FACT_NAMES, HazardFields, NameFields } from "../fact-fields.client.tsx";
import { addRow, filledRows, keyed, ListRows } from "../list-rows.client.tsx";
import { PartsField } from "../parts-field.client.tsx";
import { UsualRails } from "../usual-rails.client.tsx";

const BLANK: BoardFactsTyped = {
  name: "",
  kind: "home-computer",
  maker: "",
  machine: "",
  year: "",
  summary: "",
  notes: "",
  width: "",
  height: "",
  highestVoltage: "",
  hazards: [],
};

/** A new board: its name, its rails, and a pasted parts list with a dry run. */
export function NewBoardForm({ name }: { name: string }) {
  const [state, send] = useActionState(recordBoard, {});
  const [typed, setTyped] = useState({ ...BLANK, name });
  const [rails, setRails] = useState(() => keyed([]));
  const [parts, setParts] = useState("");
  const fields = {
    typed,
    onChange: setTyped,
    error: (path: string) =>
      problemAt(state.problems, path) ?? (path === "name" ? problemAt(state.problems, "slug") : undefined),
  };
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      <FormError
        message={state.message}
        problems={state.problems}
        fields={{ ...Object.fromEntries(FACT_NAMES.map((one) => [one, `board-${one}`])), slug: "board-name" }}
      />
      <NameFields {...fields} />
      <Section id="rails" title="Rails">
        <p className="soft">
          A tap adds one. With its rails the board judges every supply reading by itself: 5 % for logic, 10 % for the
          others, unless you say otherwise.
        </p>
        <input type="hidden" name="rails" value={JSON.stringify(filledRows(RAIL_FORM, rails))} />
        <ListRows form={RAIL_FORM} rows={rails} problems={state.problems} onChange={setRails}>
          <UsualRails rows={rails} onAdd={(row) => setRails(addRow(rails, row))} />
        </ListRows>
      </Section>
      <Section id="parts" title="Parts">
        <PartsField text={parts} whole error={problemAt(state.problems, "parts")} onChange={setParts} />
      </Section>
      <Section id="hazards" title="What can hurt">
        <HazardFields {...fields} />
      </Section>
      <ButtonRow>
        <SubmitButton>Save the board</SubmitButton>
        <ButtonLink href="/boards" look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
      <p className="soft">Connectors, self-test codes, documents, copies and the rest can follow at any time.</p>
    </form>
  );
}
