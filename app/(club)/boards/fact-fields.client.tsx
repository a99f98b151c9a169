"use client";

import { BOARD_KINDS, HAZARDS } from "#lib/core/shared/index.ts";
import { CheckboxField, choicesOf, FieldRow, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { BOARD_KIND_WORDS, HAZARD_WORDS } from "#lib/ui/words.ts";
import type { BoardFactsTyped } from "./edit-lists.ts";
import styles from "./board.module.css";

export type FactName = Exclude<keyof BoardFactsTyped, "hazards">;

export const FACT_WORDS: Record<FactName, string> = {
  name: "Name",
  kind: "Kind",
  maker: "Maker",
  machine: "Machine",
  year: "Year",
  summary: "In one or two lines",
  notes: "Notes",
  width: "Width in mm",
  height: "Height in mm",
  highestVoltage: "Highest voltage on it, in V",
};
export const FACT_NAMES = Object.keys(FACT_WORDS) as FactName[];

export interface FactFieldsProps {
  typed: BoardFactsTyped;
  onChange: (typed: BoardFactsTyped) => void;
  error: (path: string) => string | undefined;
}

function fieldOf({ typed, onChange, error }: FactFieldsProps) {
  return (name: FactName) => ({
    label: FACT_WORDS[name],
    id: `board-${name}`,
    name,
    value: typed[name],
    error: error(name),
    onChange: (event: { target: { value: string } }) => onChange({ ...typed, [name]: event.target.value }),
  });
}

/** What the board is. */
export function NameFields(props: FactFieldsProps) {
  const field = fieldOf(props);
  return (
    <>
      <TextField {...field("name")} required hint="As the club will call it: Harrow-80 main board." />
      <FieldRow>
        <SelectField {...field("kind")} choices={choicesOf(BOARD_KINDS, BOARD_KIND_WORDS)} />
        <TextField {...field("maker")} optional />
        <TextField {...field("machine")} optional />
        <TextField {...field("year")} optional inputMode="numeric" />
      </FieldRow>
      <TextArea {...field("summary")} optional wide rows={2} hint="What is on it and what it does." />
    </>
  );
}

/** What can hurt on it. */
export function HazardFields({ typed, onChange, error }: FactFieldsProps) {
  const field = fieldOf({ typed, onChange, error });
  const toggle = (hazard: string, on: boolean) =>
    onChange({ ...typed, hazards: on ? [...typed.hazards, hazard] : typed.hazards.filter((one) => one !== hazard) });
  return (
    <>
      <fieldset>
        <legend>On this board</legend>
        <div className={styles.hazards}>
          {HAZARDS.map((hazard) => (
            <CheckboxField
              key={hazard}
              name="hazards"
              value={hazard}
              label={HAZARD_WORDS[hazard]}
              checked={typed.hazards.includes(hazard)}
              onChange={(event) => toggle(hazard, event.target.checked)}
            />
          ))}
        </div>
      </fieldset>
      <TextField
        {...field("highestVoltage")}
        optional
        inputMode="decimal"
        hint="Peak, for a.c. Above 60 V asks for care."
      />
    </>
  );
}

/** Size of the drawing, and free words. */
export function MoreFields(props: FactFieldsProps) {
  const field = fieldOf(props);
  return (
    <>
      <FieldRow>
        <TextField
          {...field("width")}
          optional
          inputMode="decimal"
          hint="With both, parts that have a place are drawn."
        />
        <TextField {...field("height")} optional inputMode="decimal" />
      </FieldRow>
      <TextArea
        {...field("notes")}
        optional
        wide
        rows={10}
        hint="What the bench knows of it. Markdown; :chip[74LS244], :code[27C256] and :case[12] become links."
      />
    </>
  );
}
