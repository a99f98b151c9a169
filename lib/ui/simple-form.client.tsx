"use client";

import { useActionState, type ReactNode } from "react";
import type { Choice } from "./field.tsx";
import { CheckboxField, SelectField, TextArea, TextField } from "./field.tsx";
import { FormError, problemAt, type FieldProblem } from "./form-error.tsx";
import { Notice } from "./notice.tsx";
import styles from "./simple-form.module.css";
import { SubmitButton } from "./submit-button.client.tsx";

/** What a form's action answers. */
export interface SimpleFormState {
  ok?: boolean;
  message?: string;
  problems?: FieldProblem[];
  /** As typed, so that an error loses nothing. */
  values?: Record<string, string>;
  /** Text shown once after success, to be copied: a link, a token. */
  secret?: string;
}

export interface SimpleField {
  name: string;
  label: string;
  kind?: "text" | "email" | "password" | "number" | "area" | "select" | "checkbox" | "hidden";
  hint?: string;
  value?: string;
  choices?: Choice[];
  optional?: boolean;
  autoComplete?: string;
  required?: boolean;
  mono?: boolean;
}

export interface SimpleFormProps {
  action: (state: SimpleFormState, form: FormData) => Promise<SimpleFormState>;
  fields: readonly SimpleField[];
  submit: string;
  pending?: string;
  /** Said after success, where the action does not lead to another page. */
  done?: string;
  /** Said above a secret. */
  secretNote?: string;
  children?: ReactNode;
}

/** A plain form of a few fields: sends, says what is wrong at its field, and keeps what was typed. */
export function SimpleForm({ action, fields, submit, pending, done, secretNote, children }: SimpleFormProps) {
  const [state, send] = useActionState(action, {});
  return (
    <form action={send} className={styles.form}>
      <FormError message={state.ok === false ? state.message : undefined} problems={unplaced(state.problems, fields)} />
      {state.ok && done && (
        <output className={styles.told}>
          <Notice kind="done" title={done} />
        </output>
      )}
      {state.ok && state.secret && (
        <output className={styles.told}>
          <Notice kind="info" title={secretNote ?? "Copy this now: it is shown once."}>
            <p>
              <code className={styles.secret}>{state.secret}</code>
            </p>
          </Notice>
        </output>
      )}
      {fields.map((field) => (
        <OneField
          key={`${field.name} ${state.values?.[field.name] ?? ""}`}
          field={field}
          typed={state.ok === false ? state.values?.[field.name] : undefined}
          error={problemAt(state.problems, field.name)}
        />
      ))}
      {children}
      <div>
        <SubmitButton {...(pending && { pendingText: pending })}>{submit}</SubmitButton>
      </div>
    </form>
  );
}

/** Problems that stand at no field are listed above the form. */
function unplaced(problems: readonly FieldProblem[] | undefined, fields: readonly SimpleField[]): FieldProblem[] {
  return (problems ?? []).filter(
    (problem) => !fields.some((field) => field.name === problem.path && field.kind !== "hidden"),
  );
}

function OneField({
  field,
  typed,
  error,
}: {
  field: SimpleField;
  typed: string | undefined;
  error: string | undefined;
}) {
  const { name, label, kind = "text", hint, choices = [], optional, autoComplete, required, mono } = field;
  const value = typed ?? field.value;
  const frame = { name, label, error, ...(hint && { hint }), ...(optional && { optional }), ...(mono && { mono }) };
  switch (kind) {
    case "hidden":
      return <input type="hidden" name={name} value={value ?? ""} />;
    case "area":
      return <TextArea {...frame} defaultValue={value} required={required} />;
    case "select": {
      const { mono: _mono, ...plain } = frame;
      return <SelectField {...plain} choices={choices} defaultValue={value} />;
    }
    case "checkbox": {
      const { mono: _mono, optional: _optional, ...plain } = frame;
      return <CheckboxField {...plain} value="on" defaultChecked={value === "on"} />;
    }
    case "text":
    case "email":
    case "password":
    case "number":
      return <TextField {...frame} type={kind} defaultValue={value} required={required} autoComplete={autoComplete} />;
  }
}
