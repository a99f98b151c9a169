"use client";

import { useActionState, useState } from "react";
import { Button, ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveList } from "./actions.ts";
import { blankRow, isBlank, LIST_FORMS, rowText, type ListForm as Form, type Row } from "./edit-lists.ts";
import { addRow, filledRows, keyed, ListRows } from "./list-rows.client.tsx";
import { presentOf } from "./present.ts";
import { UsualRails } from "./usual-rails.client.tsx";

export interface ListFormProps {
  slug: string;
  version: number;
  /** Key into `LIST_FORMS`. */
  part: string;
  rows: Row[];
  /** Rows that the rest of the record suggests: connectors of the parts list. */
  offers: Row[];
}

/** One list of a board. What was typed stays, whatever the answer. */
export function ListForm({ slug, version, part, rows: before, offers }: ListFormProps) {
  const form = LIST_FORMS[part];
  const [state, send] = useActionState(saveList, {});
  const [rows, setRows] = useState(() => keyed(before.length > 0 || !form ? before : [blankRow(form)]));
  if (!form) return null;
  const present = presentOf<Row[]>(state.present);
  // The empty row of an empty list gives way to the first that is added.
  const add = (row: Row) =>
    setRows(
      addRow(
        rows.filter((one) => !isBlank(form, one.row)),
        row,
      ),
    );
  const left = offers.filter((offer) => !rows.some(({ row }) => nameOf(form, row) === nameOf(form, offer)));
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present ? (
        <SomeoneWasFirst differences={listDifferences(form, present.typed, filledRows(form, rows))} />
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      <input type="hidden" name="slug" value={slug} />
      <input type="hidden" name="version" value={present?.version ?? version} />
      <input type="hidden" name="list" value={form.list} />
      <input type="hidden" name="back" value={`#${part}`} />
      <input type="hidden" name="rows" value={JSON.stringify(filledRows(form, rows))} />
      <ListRows form={form} rows={rows} problems={state.problems} onChange={setRows}>
        {form.list === "rails" && <UsualRails rows={rows} onAdd={add} />}
        {left.length > 0 && (
          <ButtonRow>
            {left.map((offer) => (
              <Button key={nameOf(form, offer)} onClick={() => add({ ...blankRow(form), ...offer })}>
                Add {nameOf(form, offer)} of the parts list
              </Button>
            ))}
          </ButtonRow>
        )}
      </ListRows>
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save"}</SubmitButton>
        <ButtonLink href={`/boards/${slug}`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function nameOf({ fields }: Form, row: Row): string {
  return (row[fields[0]?.name ?? ""] ?? "").trim().toUpperCase();
}

/** Rows of the two versions, side by side by what they are called. */
function listDifferences(form: Form, present: readonly Row[], mine: readonly Row[]): Difference[] {
  const key = (row: Row) => (form.list === "selfTests" ? (row.signal ?? "") : nameOf(form, row));
  const names = [...new Set([...present, ...mine].map(key))];
  const found = (rows: readonly Row[], name: string) =>
    rows
      .filter((row) => key(row) === name)
      .map((row) => rowText(form, row))
      .join("; ");
  return names.flatMap((name) => {
    const [theirs, yours] = [found(present, name), found(mine, name)];
    return theirs === yours ? [] : [{ field: name || "the whole board", present: theirs, yours }];
  });
}
