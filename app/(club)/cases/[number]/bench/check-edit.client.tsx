"use client";

import { useState } from "react";
import { CHECK_KINDS, LEADS, POWER_STATES, TRIALS, VERDICTS } from "#lib/core/shared/index.ts";
import {
  correctionOf,
  differingFields,
  DRAFT_WORDS,
  draftOf,
  type BenchCheck,
  type CheckDraft,
} from "#lib/ui/bench-checks.ts";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, POWER_WORDS, TRIAL_WORDS, VERDICT_WORDS } from "#lib/ui/words.ts";
import type { SaveAnswer } from "./bench-data.client.tsx";
import { PhotoButton, type BenchPhoto } from "./photo.client.tsx";
import styles from "./bench.module.css";

interface CheckEditProps {
  check: BenchCheck;
  caseId: string;
  save: (id: string, version: number, body: Record<string, string | null>) => Promise<SaveAnswer>;
  onDone: () => void;
  onDelete: () => void;
  onPhoto: (photo: BenchPhoto) => void;
}

/** Corrects one check in its place in the list. Whoever was slower sees both versions and loses nothing. */
export function CheckEdit({ check, caseId, save, onDone, onDelete, onPhoto }: CheckEditProps) {
  // As it was read, not as it may be by now: that is what a second writer is told apart by.
  const [base, setBase] = useState(check);
  const [draft, setDraft] = useState(() => draftOf(check));
  const [theirs, setTheirs] = useState<BenchCheck | null>(null);
  const [problem, setProblem] = useState("");
  const [isSaving, setIsSaving] = useState(false);
  const change = (next: Partial<CheckDraft>) => setDraft((now) => ({ ...now, ...next }));

  async function saveOver(onto: BenchCheck) {
    const body = correctionOf(draftOf(onto), draft);
    if (Object.keys(body).length === 0) return onDone();
    if (draft.verdict !== "" && draft.reason.trim() === "") {
      return setProblem("Say why the computed verdict is not right: both are kept.");
    }
    setIsSaving(true);
    const answer = await save(onto.id, onto.version, body);
    setIsSaving(false);
    switch (answer.done) {
      case "saved":
        return onDone();
      case "stale":
        setProblem("");
        return setTheirs(answer.present);
      case "refused":
        return setProblem(answer.reason);
    }
  }

  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions -- Escape in any of its fields leaves the form
    <form
      className={styles.edit}
      aria-label={`Correct the check at ${check.at}`}
      onSubmit={(event) => {
        event.preventDefault();
        void saveOver(base);
      }}
      onKeyDown={(event) => event.key === "Escape" && onDone()}
    >
      {theirs && (
        <BothVersions
          mine={draft}
          theirs={theirs}
          onMine={() => {
            setBase(theirs);
            setTheirs(null);
            void saveOver(theirs);
          }}
          onTheirs={() => {
            setBase(theirs);
            setDraft(draftOf(theirs));
            setTheirs(null);
          }}
        />
      )}
      <FieldRow>
        <TextField
          label="Place"
          name="at"
          mono
          value={draft.at}
          onChange={(event) => change({ at: event.target.value })}
        />
        <TextField
          label="Reading"
          name="measured"
          mono
          value={draft.measured}
          onChange={(event) => change({ measured: event.target.value })}
          // oxlint-disable-next-line jsx-a11y/no-autofocus -- the form was just opened to change the reading
          autoFocus
        />
        <SelectField
          label="Kind"
          name="kind"
          value={draft.kind}
          choices={choicesOf(CHECK_KINDS, CHECK_KIND_WORDS)}
          onChange={(event) => change({ kind: CHECK_KINDS.find((kind) => kind === event.target.value) ?? draft.kind })}
        />
        {draft.kind === "trial" ? (
          <SelectField
            label="What was tried"
            name="what"
            value={draft.what}
            empty="choose"
            choices={choicesOf(TRIALS, TRIAL_WORDS)}
            onChange={(event) => change({ what: TRIALS.find((what) => what === event.target.value) ?? "" })}
          />
        ) : (
          <TextField
            label="Expected"
            name="expected"
            mono
            value={draft.expected}
            onChange={(event) => change({ expected: event.target.value })}
          />
        )}
        <TextField
          label="Second point"
          name="to"
          mono
          value={draft.to}
          onChange={(event) => change({ to: event.target.value })}
        />
        <SelectField
          label="Lead"
          name="lead"
          value={draft.lead}
          empty="not said"
          choices={choicesOf(LEADS, LEAD_WORDS)}
          onChange={(event) => change({ lead: LEADS.find((lead) => lead === event.target.value) ?? "" })}
        />
        <TextField
          label="Condition"
          name="when"
          value={draft.when}
          onChange={(event) => change({ when: event.target.value })}
        />
        <SelectField
          label="Power"
          name="power"
          value={draft.power}
          choices={choicesOf(POWER_STATES, POWER_WORDS)}
          onChange={(event) =>
            change({ power: POWER_STATES.find((power) => power === event.target.value) ?? draft.power })
          }
        />
      </FieldRow>
      <TextField
        label="Note"
        name="note"
        wide
        value={draft.note}
        onChange={(event) => change({ note: event.target.value })}
      />
      <FieldRow>
        <SelectField
          label="Verdict"
          name="verdict"
          value={draft.verdict}
          empty={`as computed: ${VERDICT_WORDS[check.computedVerdict]}`}
          choices={choicesOf(VERDICTS, VERDICT_WORDS)}
          onChange={(event) => change({ verdict: VERDICTS.find((verdict) => verdict === event.target.value) ?? "" })}
        />
        {draft.verdict !== "" && (
          <TextField
            label="Why this verdict"
            name="reason"
            value={draft.reason}
            required
            onChange={(event) => change({ reason: event.target.value })}
          />
        )}
      </FieldRow>
      {problem && (
        <p role="alert" className={styles.problem}>
          {problem}
        </p>
      )}
      <ButtonRow>
        <Button look="main" type="submit" disabled={isSaving}>
          {isSaving ? "Saving …" : "Save"}
        </Button>
        <Button onClick={onDone}>Leave as it was</Button>
        <PhotoButton caseId={caseId} checkId={check.id} onPhoto={onPhoto} />
        <Button look="danger" onClick={onDelete}>
          Delete
        </Button>
      </ButtonRow>
    </form>
  );
}

interface BothVersionsProps {
  mine: CheckDraft;
  theirs: BenchCheck;
  onMine: () => void;
  onTheirs: () => void;
}

function BothVersions({ mine, theirs, onMine, onTheirs }: BothVersionsProps) {
  const now = draftOf(theirs);
  const fields = differingFields(now, mine);
  return (
    <div role="alert">
      <Notice kind="warning" title="Someone changed this check while you did. Nothing of yours is lost.">
        <table className={styles.versions}>
          <thead>
            <tr>
              <th scope="col">Field</th>
              <th scope="col">Yours</th>
              <th scope="col">As it is now</th>
            </tr>
          </thead>
          <tbody>
            {fields.map((field) => (
              <tr key={field}>
                <th scope="row">{DRAFT_WORDS[field]}</th>
                <td className="mono">{mine[field] || "empty"}</td>
                <td className="mono">{now[field] || "empty"}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <ButtonRow>
          <Button look="main" onClick={onMine}>
            Save mine over it
          </Button>
          <Button onClick={onTheirs}>Take what is there</Button>
        </ButtonRow>
      </Notice>
    </div>
  );
}
