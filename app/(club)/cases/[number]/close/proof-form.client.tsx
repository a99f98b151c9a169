"use client";

import { useActionState, useState } from "react";
import { v7 } from "uuid";
import type { Verdict as VerdictName } from "#lib/core/shared/index.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { CheckboxField, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Verdict } from "#lib/ui/verdict.tsx";
import type { Repeated } from "#lib/services/cases/index.ts";
import { ReadingText } from "../checks.tsx";
import { saveRepeats, saveSoak } from "./actions.ts";
import { sentByHand } from "./sent-by-hand.client.tsx";
import styles from "./close.module.css";

export interface CheckToRepeat {
  id: string;
  at: string;
  to: string;
  what: string;
  expected: string;
  /** What was read before the cure. */
  was: string;
  /** What was read last, after it. */
  last: { text: string; verdict: VerdictName; because: string } | null;
}

interface ProofFormProps {
  caseNumber: number;
  cause: string;
  checks: readonly CheckToRepeat[];
}

/** What proves a cure; folded away once there is a proof. */
export function Proving({ isProved, ...form }: ProofFormProps & { isProved: boolean }) {
  if (!isProved) return <ProofForms {...form} />;
  return (
    <details className={styles.soak}>
      <summary>Prove it once more</summary>
      <ProofForms {...form} />
    </details>
  );
}

/** The failed checks come back as a list to repeat; or a soak, where there is nothing to measure. */
function ProofForms({ caseNumber, cause, checks }: ProofFormProps) {
  return (
    <>
      {checks.length > 0 && <RepeatForm {...{ caseNumber, cause, checks }} />}
      <details className={styles.soak} open={checks.length === 0}>
        <summary>{checks.length > 0 ? "Or note a soak test" : "Note a soak test"}</summary>
        <SoakForm {...{ caseNumber, cause }} />
      </details>
    </>
  );
}

function RepeatForm({ caseNumber, cause, checks }: ProofFormProps) {
  const [round, setRound] = useState(0);
  const [state, send, isSending] = useActionState(async (before: { value?: Repeated }, form: FormData) => {
    const answer = await saveRepeats(before, form);
    // What was taken is on the list now; the next readings are new checks.
    if (answer.ok) setRound((now) => now + 1);
    return answer;
  }, {});
  const left = state.value?.left ?? [];
  return (
    <form action={send} onSubmit={sentByHand(send, isSending)}>
      <h4>Measure again what failed</h4>
      <FormError message={state.message} problems={state.problems} />
      {state.ok && left.length > 0 && (
        <Notice kind="info" title="The readings are kept. The cure is not proved yet:">
          <ul>
            {left.map((one) => (
              <li key={one.check}>
                <Place at={one.at} /> {one.because}
              </li>
            ))}
          </ul>
        </Notice>
      )}
      <input type="hidden" name="case" value={caseNumber} />
      <input type="hidden" name="cause" value={cause} />
      <ul className={styles.repeats} key={round}>
        {checks.map((check) => (
          <RepeatLine key={check.id} check={check} />
        ))}
      </ul>
      <TextField label="Note" name="note" optional wide error={problemAt(state.problems, "note")} />
      <ButtonRow>
        <Button type="submit" look="main" aria-disabled={isSending}>
          {isSending ? "Saving …" : "Record the readings"}
        </Button>
      </ButtonRow>
    </form>
  );
}

function RepeatLine({ check }: { check: CheckToRepeat }) {
  const [id] = useState(() => v7());
  return (
    <li>
      <p className={styles.was}>
        <Place at={check.at} to={check.to} /> {check.what}
        {check.expected && (
          <>
            , expected <ReadingText text={check.expected} />
          </>
        )}
        , was <ReadingText text={check.was} strong />
      </p>
      {check.last && (
        <p className={styles.was}>
          Last: <ReadingText text={check.last.text} /> <Verdict verdict={check.last.verdict} />{" "}
          <span className="soft">{check.last.because}</span>
        </p>
      )}
      <input type="hidden" name="check" value={check.id} />
      <input type="hidden" name={`id.${check.id}`} value={id} />
      <TextField
        label={<>Now at {check.at}</>}
        name={`measured.${check.id}`}
        mono
        enterKeyHint="next"
        optional={check.last?.verdict === "in-spec"}
      />
      {check.expected === "" && (
        <CheckboxField name={`good.${check.id}`} label="As it should be" hint="Nothing is expected on record here." />
      )}
    </li>
  );
}

function SoakForm({ caseNumber, cause }: Omit<ProofFormProps, "checks">) {
  const [state, send, isSending] = useActionState(saveSoak, {});
  return (
    <form action={send} onSubmit={sentByHand(send, isSending)}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="case" value={caseNumber} />
      <input type="hidden" name="cause" value={cause} />
      <FieldRow>
        <TextField
          label="It ran without the fault for"
          name="amount"
          inputMode="decimal"
          mono
          required
          error={problemAt(state.problems, "minutes")}
        />
        <SelectField
          label="Unit"
          name="unit"
          choices={[
            { value: "minutes", label: "minutes" },
            { value: "hours", label: "hours" },
          ]}
          defaultValue="hours"
        />
      </FieldRow>
      <TextField
        label="How"
        name="note"
        optional
        wide
        placeholder="Boxed up, self-test in a loop."
        error={problemAt(state.problems, "note")}
      />
      <ButtonRow>
        <Button type="submit" look="main" aria-disabled={isSending}>
          {isSending ? "Saving …" : "Record the soak"}
        </Button>
      </ButtonRow>
    </form>
  );
}
