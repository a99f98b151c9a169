"use client";

import { useActionState, useState } from "react";
import { CASE_OUTCOMES, type CaseOutcome } from "#lib/core/shared/index.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { RadioField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { SomeoneWasFirst } from "#lib/ui/someone-was-first.tsx";
import { OUTCOME_WORDS } from "#lib/ui/words.ts";
import type { FormState } from "#lib/web/action.ts";
import { saveEnding } from "./actions.ts";
import { sentByHand } from "./sent-by-hand.client.tsx";
import styles from "./close.module.css";

export interface Ending {
  title: string;
  lesson: string;
  asksHelp: string;
  outcome: CaseOutcome;
}

/** What each outcome says. All of them are worth recording. */
const HINTS: Record<CaseOutcome, string> = {
  open: "Still on the bench.",
  waiting: "For a part, a reading, or an answer.",
  cured: "Needs a proof: the failed checks in spec again, or a soak.",
  "cured-cause-unknown": "It works and stays so; what it was never showed.",
  "works-not-proved": "It works again, but nothing was measured or soaked yet.",
  "no-fault-found": "The symptom never came. That saves the next one an evening.",
  "given-up": "Beyond repair or not worth it: say how far you came.",
};

const WORDS: Record<keyof Ending, string> = {
  title: "Title",
  lesson: "Lesson",
  asksHelp: "Help asked for",
  outcome: "Outcome",
};

interface EndingFormProps {
  caseNumber: number;
  version: number;
  ending: Ending;
  /** Whether there is a proof: without one a case does not count as cured. */
  isProved: boolean;
}

/** How the case stands, in one line each. */
export function EndingForm({ caseNumber, version, ending, isProved }: EndingFormProps) {
  const [typed, setTyped] = useState({ title: ending.title, lesson: ending.lesson, asksHelp: ending.asksHelp });
  const [base, setBase] = useState({ ...typed, version });
  const [state, send, isSending] = useActionState(async (before: FormState, form: FormData) => {
    const answer = await saveEnding(before, form);
    if (answer.ok) setBase({ ...typed, version: 0 });
    return answer;
  }, {});
  const present = presentEnding(state.present);
  // A proof recorded above makes a new version; only where the words changed too was someone else first.
  const sameWords = (["title", "lesson", "asksHelp"] as const).every((field) => base[field] === ending[field]);
  const readVersion = sameWords ? version : base.version;
  const change = (name: keyof typeof typed) => ({
    name,
    value: typed[name],
    onChange: (event: { target: { value: string } }) => setTyped({ ...typed, [name]: event.target.value }),
    error: problemAt(state.problems, name),
  });
  const yours: Record<string, string> = { ...typed, outcome: state.values?.outcome ?? ending.outcome };
  return (
    <form action={send} onSubmit={sentByHand(send, isSending)}>
      {present ? (
        <SomeoneWasFirst
          differences={(Object.keys(WORDS) as (keyof Ending)[])
            .filter((field) => present[field] !== yours[field])
            .map((field) => ({ field: WORDS[field], present: present[field], yours: yours[field] ?? "" }))}
        />
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      {state.ok && <Notice kind="done" title="Saved." />}
      <input type="hidden" name="case" value={caseNumber} />
      <input type="hidden" name="version" value={present?.version ?? readVersion} />
      <div className={styles.outcomes}>
        <RadioField
          // A proof or another writer changes the outcome: the choice follows.
          key={ending.outcome}
          legend="How it ended"
          name="outcome"
          choices={CASE_OUTCOMES.map((outcome) => ({
            value: outcome,
            label: OUTCOME_WORDS[outcome],
            hint: outcome === "cured" && !isProved ? `${HINTS.cured} Record one above first.` : HINTS[outcome],
          }))}
          defaultValue={ending.outcome}
          error={problemAt(state.problems, "outcome")}
        />
      </div>
      <TextField label="Title" wide required maxLength={160} {...change("title")} />
      <TextField
        label="The lesson, in one line"
        wide
        optional
        maxLength={300}
        hint="What the next member with this symptom should know first."
        {...change("lesson")}
      />
      <TextArea
        label="Help asked for"
        rows={2}
        wide
        optional
        maxLength={1000}
        hint="A reading from a working board, a part, an idea. Shown on the first page."
        {...change("asksHelp")}
      />
      <ButtonRow>
        <Button type="submit" look="main" aria-disabled={isSending}>
          {isSending ? "Saving …" : "Save"}
        </Button>
      </ButtonRow>
    </form>
  );
}

function presentEnding(present: unknown): (Ending & { version: number }) | null {
  if (typeof present !== "object" || present === null || !("version" in present)) return null;
  return present as Ending & { version: number };
}
