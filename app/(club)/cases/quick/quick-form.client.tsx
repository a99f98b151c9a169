"use client";

import { useActionState, useState } from "react";
import { v7 } from "uuid";
import { FAILURES } from "#lib/core/shared/index.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import type { ComboOption } from "#lib/ui/combo-options.ts";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { FAILURE_WORDS } from "#lib/ui/words.ts";
import { sentByHand } from "../[number]/close/sent-by-hand.client.tsx";
import { recordQuick } from "./actions.ts";

interface QuickFormProps {
  symptoms: readonly ComboOption[];
  board: { slug: string; name: string } | null;
}

/** A finished repair: board, symptom, what was wrong, what cured it and how it was proved. */
export function QuickForm({ symptoms, board }: QuickFormProps) {
  // The same form sent twice records one case.
  const [id] = useState(() => v7());
  const [state, send, isSending] = useActionState(recordQuick, {});
  const error = (path: string) => problemAt(state.problems, path);
  return (
    <form action={send} onSubmit={sentByHand(send, isSending)}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="id" value={id} suppressHydrationWarning />
      <ComboBox
        label="Board"
        name="boardName"
        valueName="board"
        url="/api/v1/search?kind=board&limit=8"
        required
        defaultText={board?.name ?? ""}
        defaultValue={board?.slug ?? ""}
        {...(board && { options: [{ value: board.slug, label: board.name }] })}
        hint="Choose it from the list."
        error={error("board")}
      />
      <ComboBox
        label="Symptom"
        name="symptom"
        options={symptoms}
        ownWords
        required
        placeholder="no picture"
        error={error("symptom") ?? error("symptoms.0")}
      />
      <TextField
        label="What was wrong"
        name="wrong"
        required
        maxLength={500}
        placeholder="Cracked joint under the reset generator."
        error={error("wrong")}
      />
      <FieldRow>
        <TextField label="Where" name="at" mono optional placeholder="U7" error={error("at") ?? error("causes.0.at")} />
        <SelectField
          label="How it failed"
          name="failure"
          choices={choicesOf(FAILURES, FAILURE_WORDS)}
          defaultValue="other"
          error={error("failure")}
        />
      </FieldRow>
      <TextField
        label="What cured it"
        name="cured"
        required
        maxLength={500}
        placeholder="Resoldered it."
        error={error("cured")}
      />
      <TextField
        label="How it was proved"
        name="proved"
        optional
        maxLength={500}
        hint="Left out, the case says “works, not proved”."
        placeholder="Reset measured again, released after 200 ms; ran all evening."
        error={error("proved")}
      />
      <ButtonRow>
        <Button type="submit" look="main" aria-disabled={isSending}>
          {isSending ? "Recording …" : "Record and publish"}
        </Button>
      </ButtonRow>
    </form>
  );
}
