"use client";

import { useActionState, useState } from "react";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Section } from "#lib/ui/section.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveFacts } from "./actions.ts";
import { FACT_NAMES, FACT_WORDS, HazardFields, MoreFields, NameFields } from "./fact-fields.client.tsx";
import type { BoardFactsTyped } from "./edit-lists.ts";
import { presentOf } from "./present.ts";

/** Name and plain facts of a board. What was typed stays, whatever the answer. */
export function FactsForm({ slug, version, values }: { slug: string; version: number; values: BoardFactsTyped }) {
  const [state, send] = useActionState(saveFacts, {});
  const [typed, setTyped] = useState(values);
  const present = presentOf<BoardFactsTyped>(state.present);
  const fields = { typed, onChange: setTyped, error: (path: string) => problemAt(state.problems, path) };
  return (
    <form action={send} onReset={(event) => event.preventDefault()}>
      {present ? (
        <SomeoneWasFirst differences={differences(present.typed, typed)} />
      ) : (
        <FormError
          message={state.message}
          problems={state.problems}
          fields={Object.fromEntries(FACT_NAMES.map((name) => [name, `board-${name}`]))}
        />
      )}
      <input type="hidden" name="slug" value={slug} />
      <input type="hidden" name="version" value={present?.version ?? version} />
      <NameFields {...fields} />
      <Section id="hazards" title="What can hurt">
        <HazardFields {...fields} />
      </Section>
      <Section id="more" title="More">
        <MoreFields {...fields} />
      </Section>
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save"}</SubmitButton>
        <ButtonLink href={`/boards/${slug}`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function differences(present: BoardFactsTyped, mine: BoardFactsTyped): Difference[] {
  const facts = FACT_NAMES.flatMap((name) =>
    present[name] === mine[name] ? [] : [{ field: FACT_WORDS[name], present: present[name], yours: mine[name] }],
  );
  const [theirs, yours] = [present.hazards.toSorted().join(", "), mine.hazards.toSorted().join(", ")];
  return theirs === yours ? facts : [...facts, { field: "What can hurt", present: theirs, yours }];
}
