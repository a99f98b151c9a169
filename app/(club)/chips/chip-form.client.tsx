"use client";

import { useActionState, useState } from "react";
import { CONTENTS_KINDS, TECHNOLOGIES } from "#lib/core/shared/index.ts";
import { Button, ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { choicesOf, FieldRow, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Section } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { CONTENTS_WORDS, TECHNOLOGY_WORDS } from "#lib/ui/words.ts";
import { saveChip } from "./actions.ts";
import { PackageFields, type TypedPackage } from "./package-fields.client.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";

export interface ChipValues {
  name: string;
  function: string;
  technology: string;
  contents: string;
  contentsRef: string;
  dataSheet: string;
  notes: string;
}

export interface ChipFormProps {
  /** Of the chip that is changed; left out: a new one. */
  slug?: string;
  version?: number;
  values: ChipValues;
  packages: TypedPackage[];
}

const WORDS: Record<keyof ChipValues, string> = {
  name: "Number or name",
  function: "What it does",
  technology: "Technology",
  contents: "What it holds",
  contentsRef: "Name of what it holds",
  dataSheet: "Data sheet",
  notes: "Notes",
};
const FIELDS = Object.keys(WORDS) as (keyof ChipValues)[];

/** A chip's words and pin tables. What was typed stays, whatever the answer. */
export function ChipForm({ slug, version, values, packages: before }: ChipFormProps) {
  const [state, send] = useActionState(saveChip, {});
  const [typed, setTyped] = useState(values);
  const [packages, setPackages] = useState(() => before.map((one, key) => ({ ...one, key })));
  const [nextKey, setNextKey] = useState(before.length);
  const present = presentChip(state.present);
  const error = (path: string) => problemAt(state.problems, path);
  const change = (name: keyof ChipValues) => ({
    id: `chip-${name}`,
    name,
    value: typed[name],
    onChange: (event: { target: { value: string } }) => setTyped({ ...typed, [name]: event.target.value }),
    error: error(name),
  });
  const add = () => {
    setPackages([...packages, { name: "", style: "", pins: "", key: nextKey }]);
    setNextKey(nextKey + 1);
  };
  return (
    // The fields hold what was typed; the reset that follows an action would take the choices away.
    <form action={send} onReset={(event) => event.preventDefault()}>
      <FormError
        message={state.message}
        problems={state.problems}
        fields={{
          ...Object.fromEntries(FIELDS.map((name) => [name, `chip-${name}`])),
          ...Object.fromEntries(packages.map((one, index) => [`packages.${index}.pins`, `pins-${one.key}`])),
        }}
      />
      {present && <SomeoneWasFirst differences={differences(typed, present.values)} />}
      {slug && <input type="hidden" name="slug" value={slug} />}
      <input type="hidden" name="version" value={present?.version ?? version ?? ""} />
      <TextField label={WORDS.name} mono required {...change("name")} hint="As the trade calls it: 74LS244, 27C256." />
      <TextField label={WORDS.function} wide {...change("function")} hint="One line: octal buffer, three-state." />
      <FieldRow>
        <SelectField
          label={WORDS.technology}
          choices={choicesOf(TECHNOLOGIES, TECHNOLOGY_WORDS)}
          {...change("technology")}
        />
        <SelectField
          label={WORDS.contents}
          choices={choicesOf(CONTENTS_KINDS, CONTENTS_WORDS)}
          {...change("contents")}
        />
        <TextField
          label={WORDS.contentsRef}
          optional
          {...change("contentsRef")}
          hint="Two parts are alike only if this is the same."
        />
      </FieldRow>
      <Section id="packages" title="Packages and pins">
        {packages.map((one, index) => (
          <PackageFields
            key={one.key}
            id={`pins-${one.key}`}
            number={index + 1}
            chip={typed.name}
            typed={one}
            nameError={error(`packages.${index}.name`)}
            pinsError={pinsError(state.problems, index)}
            onChange={(changed) =>
              setPackages(packages.map((other) => (other.key === one.key ? { ...changed, key: one.key } : other)))
            }
            onRemove={() => setPackages(packages.filter((other) => other.key !== one.key))}
          />
        ))}
        <Button onClick={add}>{packages.length === 0 ? "Add a package" : "Add another package"}</Button>
      </Section>
      <Section id="more" title="More">
        <TextField
          label={WORDS.dataSheet}
          type="url"
          optional
          wide
          {...change("dataSheet")}
          hint="Its address: https://…"
        />
        <TextArea
          label={WORDS.notes}
          rows={8}
          wide
          optional
          {...change("notes")}
          hint="What the bench knows of it: how it fails, what to look at. Markdown; :code[27C256] and :chip[74LS244] become links."
        />
      </Section>
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save the chip"}</SubmitButton>
        <ButtonLink href={slug ? `/chips/${slug}` : "/chips"} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function pinsError(problems: { path: string; message: string }[] | undefined, index: number): string | undefined {
  const found = problems?.filter(({ path }) => path.startsWith(`packages.${index}.pins`)) ?? [];
  return found.length === 0 ? undefined : found.map(({ message }) => message).join(" ");
}

function differences(mine: ChipValues, present: Partial<ChipValues>): Difference[] {
  return FIELDS.flatMap((name) =>
    present[name] !== undefined && present[name] !== mine[name]
      ? [{ field: WORDS[name], present: present[name], yours: mine[name] }]
      : [],
  );
}

/** The record as the second writer is shown it. */
function presentChip(raw: unknown): { version: number; values: Partial<ChipValues> } | null {
  if (typeof raw !== "object" || raw === null || !("version" in raw) || typeof raw.version !== "number") return null;
  const record = raw as Record<string, unknown>;
  const values: Partial<ChipValues> = {};
  for (const name of FIELDS) {
    const value = record[name];
    if (typeof value === "string") values[name] = value;
  }
  return { version: raw.version, values };
}
