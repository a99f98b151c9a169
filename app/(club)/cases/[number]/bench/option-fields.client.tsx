"use client";

import { useId } from "react";
import { CHECK_KINDS, LEADS, POWER_STATES, TRIALS } from "#lib/core/shared/index.ts";
import type { EntryField, EntryOptions, UnderstoodCheck } from "#lib/ui/bench-entry.ts";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, POWER_WORDS, TRIAL_WORDS } from "#lib/ui/words.ts";

interface OptionFieldsProps {
  options: EntryOptions;
  change: (next: Partial<EntryOptions>) => void;
  /** What is being typed, for what is filled in when a field is left empty. */
  check: UnderstoodCheck | undefined;
  problem: { field: EntryField | null; problem: string } | null;
}

/** The conditions that are written alike everywhere; own words may stand. */
export const CONDITIONS = ["cold", "warm", "after 10 min", "pressed", "cooled"] as const;

/** All that can be said of a check besides place and reading. */
export function OptionFields({ options, change, check, problem }: OptionFieldsProps) {
  const id = useId();
  const at = (field: EntryField) => (problem?.field === field ? problem.problem : undefined);
  const isTrial = check?.kind === "trial" || options.kind === "trial";
  const guess = check && check.kindFrom !== "chosen" ? `guess: ${CHECK_KIND_WORDS[check.kind]}` : "guess";
  return (
    <>
      <FieldRow>
        <SelectField
          label="Kind"
          name="kind"
          value={options.kind ?? ""}
          empty={guess}
          choices={choicesOf(CHECK_KINDS, CHECK_KIND_WORDS)}
          onChange={(event) => change({ kind: CHECK_KINDS.find((kind) => kind === event.target.value) ?? null })}
        />
        {isTrial ? (
          <SelectField
            label="What was tried"
            name="what"
            value={options.what ?? ""}
            empty="as typed"
            error={at("what")}
            choices={choicesOf(TRIALS, TRIAL_WORDS)}
            onChange={(event) => change({ what: TRIALS.find((what) => what === event.target.value) ?? null })}
          />
        ) : (
          <TextField
            label="Expected"
            name="expected"
            mono
            value={options.expected}
            placeholder={check && options.expected === "" ? check.expected : ""}
            error={at("expected")}
            onChange={(event) => change({ expected: event.target.value })}
          />
        )}
        <TextField
          label="Second point"
          name="to"
          mono
          value={options.to}
          placeholder="GND"
          error={at("to")}
          onChange={(event) => change({ to: event.target.value })}
        />
        <SelectField
          label="Lead"
          name="lead"
          value={options.lead ?? ""}
          empty="not said"
          choices={choicesOf(LEADS, LEAD_WORDS)}
          onChange={(event) => change({ lead: LEADS.find((lead) => lead === event.target.value) ?? null })}
        />
        <TextField
          label="Condition"
          name="when"
          list={`${id}-conditions`}
          value={options.when}
          placeholder="cold, warm, after 10 min"
          autoComplete="off"
          onChange={(event) => change({ when: event.target.value })}
        />
        <SelectField
          label="Power"
          name="power"
          value={options.power ?? ""}
          empty="as usual for this kind"
          choices={choicesOf(POWER_STATES, POWER_WORDS)}
          onChange={(event) => change({ power: POWER_STATES.find((power) => power === event.target.value) ?? null })}
        />
      </FieldRow>
      <TextField
        label="Note"
        name="note"
        optional
        wide
        value={options.note}
        autoComplete="off"
        onChange={(event) => change({ note: event.target.value })}
      />
      <datalist id={`${id}-conditions`}>
        {CONDITIONS.map((condition) => (
          <option key={condition}>{condition}</option>
        ))}
      </datalist>
    </>
  );
}
