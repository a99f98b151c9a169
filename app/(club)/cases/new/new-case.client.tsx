"use client";

import { useRouter } from "next/navigation";
import { startTransition, useActionState, useRef } from "react";
import { v7 } from "uuid";
import type { Caution as BoardCaution } from "#lib/core/board/index.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { ComboList } from "#lib/ui/combo-list.client.tsx";
import type { ComboOption } from "#lib/ui/combo-options.ts";
import { CheckboxField, FieldRow, SelectField, TextArea } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Caution } from "#lib/ui/notice.tsx";
import { openCase } from "./actions.ts";

export interface ChosenBoard {
  slug: string;
  name: string;
  revisions: string[];
  copies: ComboOption[];
  cautions: BoardCaution[];
}

interface NewCaseFormProps {
  board: ChosenBoard | null;
  symptoms: readonly ComboOption[];
  /** Taken over from where one came. */
  given: { symptoms: string[]; openedFrom: number | null };
}

/** Opens a case. Choosing a board brings its revisions, copies and cautions without losing what was typed. */
export function NewCaseForm({ board, symptoms, given }: NewCaseFormProps) {
  const router = useRouter();
  const [state, send, isSending] = useActionState(openCase, {});
  /** The same form sent twice opens one case. */
  const id = useRef("");
  const problems = state.problems;

  function choose(slug: string | null) {
    if (slug === (board?.slug ?? null)) return;
    const query = new URLSearchParams(window.location.search);
    if (slug === null) query.delete("board");
    else query.set("board", slug);
    router.replace(`/cases/new?${query}`, { scroll: false });
  }

  return (
    <form
      action={send}
      onSubmit={(event) => {
        // By hand, since React empties a form after its action, and a refused one must keep what was typed.
        event.preventDefault();
        const form = new FormData(event.currentTarget);
        id.current ||= v7();
        form.set("id", id.current);
        if (!isSending) startTransition(() => send(form));
      }}
    >
      <FormError message={state.message} problems={problems} />
      {board && <Cautions key={board.slug} cautions={board.cautions} />}
      {given.openedFrom !== null && <input type="hidden" name="openedFrom" value={given.openedFrom} />}
      <ComboBox
        label="Board"
        name="boardName"
        valueName="board"
        url="/api/v1/search?kind=board&limit=8"
        defaultText={board?.name ?? ""}
        defaultValue={board?.slug ?? ""}
        {...(board && { options: [{ value: board.slug, label: board.name }] })}
        hint="Leave it out when the club has no record of this board."
        optional
        error={problemAt(problems, "board")}
        onChoose={(chosen) => choose(chosen.value)}
      />
      <FieldRow>
        {board && board.revisions.length > 0 && (
          <SelectField
            label="Revision"
            name="revision"
            optional
            empty="not known"
            choices={board.revisions.map((revision) => ({ value: revision, label: revision }))}
            error={problemAt(problems, "revision")}
          />
        )}
        {board && (
          <ComboBox
            label="Tag of this copy"
            name="copy"
            ownWords
            options={board.copies}
            placeholder="what is written on its bag"
            optional
            error={problemAt(problems, "copy")}
          />
        )}
      </FieldRow>
      <ComboList
        label="Symptoms"
        name="symptoms"
        ownWords
        options={symptoms}
        defaultTexts={given.symptoms}
        hint="Choose one or type your own, Enter adds it; several may apply."
        placeholder="no picture"
        error={problemAt(problems, "symptoms")}
      />
      <TextArea
        label="In your own words"
        name="symptomText"
        rows={3}
        optional
        placeholder="Three short beeps, then nothing."
        error={problemAt(problems, "symptomText")}
      />
      <TextArea
        label="How it shows itself"
        name="reproduced"
        rows={2}
        optional
        hint="What must be done to see the fault, and how surely it comes."
        error={problemAt(problems, "reproduced")}
      />
      <ButtonRow>
        <Button look="main" type="submit" aria-disabled={isSending}>
          {isSending ? "Opening …" : "Open the case"}
        </Button>
      </ButtonRow>
    </form>
  );
}

/** The cautions of the board, before anything else. Only what can kill asks for a tick, and a missing one stops nothing. */
function Cautions({ cautions }: { cautions: readonly BoardCaution[] }) {
  const quiet = cautions.filter((caution) => !caution.tick);
  return (
    <>
      {cautions
        .filter((caution) => caution.tick)
        .map((caution) => (
          <Caution key={caution.key} harms="people" title={caution.title}>
            <p>{caution.text}</p>
            <CheckboxField label="I have read this" name="tick" value={caution.key} />
          </Caution>
        ))}
      {quiet.length > 0 && (
        <Caution harms="board" title="before you begin on this board">
          <ul>
            {quiet.map((caution) => (
              <li key={caution.key}>
                <b>{caution.title}:</b> {caution.text}
              </li>
            ))}
          </ul>
        </Caution>
      )}
    </>
  );
}
