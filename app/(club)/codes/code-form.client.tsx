"use client";

import { useActionState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Section } from "#lib/ui/section.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveCode } from "./actions.ts";
import { SightingFields } from "./sighting-fields.tsx";

export interface CodeFormProps {
  /** Of the code that is changed; left out: a new one. */
  id?: string;
  version?: number;
  values: { code: string; house: string; notes: string };
  chip: { slug: string; name: string } | null;
  houses: readonly { value: string; label: string }[];
}

/** A code as it is printed, and what is known of it. */
export function CodeForm({ id, version, values, chip, houses }: CodeFormProps) {
  const [state, send] = useActionState(saveCode, {});
  const typed = { ...values, ...state.values };
  const present = presentCode(state.present);
  const error = (path: string) => problemAt(state.problems, path);
  return (
    // A form that was answered is drawn anew with what was typed.
    <form action={send} key={JSON.stringify(state.values ?? null)}>
      <FormError
        message={state.message}
        problems={state.problems}
        fields={{ code: "code-code", house: "code-house", notes: "code-notes" }}
      />
      {present && <SomeoneWasFirst differences={differences(typed, present)} />}
      {id && <input type="hidden" name="id" value={id} />}
      <input type="hidden" name="version" value={present?.version ?? version ?? ""} />
      <TextField
        label="Code, as printed"
        name="code"
        id="code-code"
        mono
        required
        defaultValue={typed.code}
        error={error("code")}
        hint="Every letter, digit, space and hyphen as on the package. The date code goes below."
      />
      <SelectField
        label="House that prints it"
        name="house"
        id="code-house"
        empty="Not known, or an industry number"
        choices={houses}
        defaultValue={typed.house}
        error={error("house")}
      />
      <ComboBox
        label="What it is"
        name="chipName"
        valueName="chip"
        url="/api/v1/search?kind=chip&limit=8"
        optional
        mono
        defaultText={state.values?.["chipName"] ?? chip?.name ?? ""}
        defaultValue={state.values?.["chip"] ?? chip?.slug ?? ""}
        error={error("chip")}
        hint="A chip record, where it is known for sure. What is only supposed belongs into the notes or into a claim."
      />
      <TextArea
        label="Notes"
        name="notes"
        id="code-notes"
        wide
        optional
        rows={6}
        defaultValue={typed.notes}
        error={error("notes")}
        hint="How the print looks, what the part does, what is supposed and why. Markdown."
      />
      {!id && (
        <Section id="seen" title="Where you saw it">
          <SightingFields values={state.values} problems={state.problems} path="sighting." />
        </Section>
      )}
      <ButtonRow>
        <SubmitButton>
          {present ? "Save over the present version" : id ? "Save the code" : "Record the code"}
        </SubmitButton>
        <ButtonLink href={id ? `/codes/${id}` : "/codes"} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

interface Present {
  version: number;
  code: string;
  house: string;
  notes: string;
}

function differences(mine: { code: string; house: string; notes: string }, present: Present): Difference[] {
  const fields = [
    { field: "Code", present: present.code, yours: mine.code },
    { field: "House", present: present.house, yours: mine.house },
    { field: "Notes", present: present.notes, yours: mine.notes },
  ];
  return fields.filter((one) => one.present !== one.yours);
}

/** The record as the second writer is shown it. */
function presentCode(raw: unknown): Present | null {
  if (typeof raw !== "object" || raw === null || !("version" in raw) || typeof raw.version !== "number") return null;
  const { code, notes, house } = raw as Record<string, unknown>;
  const slug = typeof house === "object" && house !== null && "slug" in house ? house.slug : "";
  return { version: raw.version, code: wordOf(code), notes: wordOf(notes), house: wordOf(slug) };
}

function wordOf(value: unknown): string {
  return typeof value === "string" ? value : "";
}
