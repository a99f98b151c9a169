"use client";

import { useActionState, useState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FieldRow, SelectField, TextArea, TextField, type Choice } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveCopy } from "./actions.ts";

export interface CopyTyped {
  tag: string;
  /** Handle; empty: nobody's. */
  owner: string;
  revision: string;
  serial: string;
  modifications: string;
  jumpers: string;
  contents: string;
  /** `yes`, `no` or empty: not known. */
  works: string;
  notes: string;
}

const WORDS: Record<keyof CopyTyped, string> = {
  tag: "Tag",
  owner: "Owner",
  revision: "Revision",
  serial: "Serial number",
  modifications: "Modifications",
  jumpers: "Jumpers and links",
  contents: "Kept alive by a battery",
  works: "Does it work?",
  notes: "Notes",
};
const NAMES = Object.keys(WORDS) as (keyof CopyTyped)[];

export interface CopyFormProps {
  board: string;
  /** Of the copy that is changed. */
  id?: string;
  version?: number;
  values: CopyTyped;
  revisions: string[];
  members: Choice[];
}

/** One real board: whose, which issue, what was done to it. */
export function CopyForm({ board, id, version, values, revisions, members }: CopyFormProps) {
  const [state, send] = useActionState(saveCopy, {});
  const [typed, setTyped] = useState(values);
  const present = presentCopy(state.present);
  const field = (name: keyof CopyTyped) => ({
    label: WORDS[name],
    id: `copy-${name}`,
    name,
    value: typed[name],
    error: problemAt(state.problems, name),
    onChange: (event: { target: { value: string } }) => setTyped({ ...typed, [name]: event.target.value }),
  });
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present ? (
        <SomeoneWasFirst differences={differences(present.typed, typed)} />
      ) : (
        <FormError
          message={state.message}
          problems={state.problems}
          fields={Object.fromEntries(NAMES.map((name) => [name, `copy-${name}`]))}
        />
      )}
      <input type="hidden" name="board" value={board} />
      {id && <input type="hidden" name="id" value={id} />}
      <input type="hidden" name="version" value={present?.version ?? version ?? ""} />
      <FieldRow>
        <TextField {...field("tag")} mono required hint="What is written on its bag." />
        <TextField {...field("serial")} mono optional />
      </FieldRow>
      <FieldRow>
        <SelectField {...field("owner")} empty="nobody’s, or the club’s" choices={members} />
        {revisions.length > 0 && (
          <SelectField
            {...field("revision")}
            empty="not known"
            choices={revisions.map((name) => ({ value: name, label: name }))}
          />
        )}
        <SelectField
          {...field("works")}
          empty="not known"
          choices={[
            { value: "yes", label: "it works" },
            { value: "no", label: "it does not" },
          ]}
        />
      </FieldRow>
      <TextArea
        {...field("modifications")}
        optional
        wide
        rows={3}
        hint="Bodge wires, lifted pads, sockets that were added."
      />
      <TextArea {...field("jumpers")} optional wide rows={2} />
      <TextArea
        {...field("contents")}
        optional
        wide
        rows={2}
        hint="Calibration, patches, a key: what is lost with the battery."
      />
      <TextArea {...field("notes")} optional wide rows={3} />
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save the copy"}</SubmitButton>
        <ButtonLink href={`/boards/${board}#copies`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function differences(present: CopyTyped, mine: CopyTyped): Difference[] {
  return NAMES.flatMap((name) =>
    present[name] === mine[name] ? [] : [{ field: WORDS[name], present: present[name], yours: mine[name] }],
  );
}

/** The copy as the second writer is shown it. */
function presentCopy(raw: unknown): { version: number; typed: CopyTyped } | null {
  if (typeof raw !== "object" || raw === null) return null;
  const row = raw as Record<string, unknown>;
  if (typeof row.version !== "number") return null;
  const text = (value: unknown) => (typeof value === "string" ? value : "");
  const inner = (value: unknown, name: string) =>
    typeof value === "object" && value !== null ? text((value as Record<string, unknown>)[name]) : "";
  return {
    version: row.version,
    typed: {
      tag: text(row.tag),
      serial: text(row.serial),
      modifications: text(row.modifications),
      jumpers: text(row.jumpers),
      contents: text(row.contents),
      notes: text(row.notes),
      works: row.works === true ? "yes" : row.works === false ? "no" : "",
      owner: inner(row.owner, "handle"),
      revision: inner(row.revision, "name"),
    },
  };
}
