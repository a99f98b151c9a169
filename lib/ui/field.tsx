import { useId, type ComponentProps, type ReactNode } from "react";
import { classNames } from "./class-names.ts";
import { Shape } from "./shape.tsx";
import styles from "./field.module.css";

/** What every field has. `id` only where something links to the field (see `FormError`). */
export interface FieldFrame {
  label: ReactNode;
  hint?: ReactNode;
  /** What is wrong and what to do. */
  error?: string | undefined;
  /** Marks the label "(may be left out)". */
  optional?: boolean;
  id?: string;
  /** As wide as the column instead of 32rem. */
  wide?: boolean;
}

export interface FieldProps extends FieldFrame {
  /** Draws the control; give it all three attributes. */
  children: (control: {
    id: string;
    "aria-describedby": string | undefined;
    "aria-invalid": true | undefined;
  }) => ReactNode;
}

/** Label, hint and error around any control; hint and error are tied to it. */
export function Field({ label, hint, error, optional, id, wide, children }: FieldProps) {
  const own = useId();
  const controlId = id ?? own;
  const described = [hint && `${controlId}-hint`, error && `${controlId}-error`].filter(Boolean).join(" ");
  return (
    <div className={classNames(styles.field, wide && styles.wide)}>
      <label className={styles.label} htmlFor={controlId}>
        {label} {optional && <span className={styles.optional}>(may be left out)</span>}
      </label>
      {hint && (
        <p className={styles.hint} id={`${controlId}-hint`}>
          {hint}
        </p>
      )}
      {children({
        id: controlId,
        "aria-describedby": described || undefined,
        "aria-invalid": error ? true : undefined,
      })}
      <FieldError id={`${controlId}-error`} error={error} />
    </div>
  );
}

function FieldError({ id, error }: { id: string; error: string | undefined }) {
  if (!error) return null;
  return (
    <p className={styles.error} id={id}>
      <Shape name="cross" />
      {error}
    </p>
  );
}

export interface TextFieldProps extends FieldFrame, Omit<ComponentProps<"input">, "id" | "className" | "children"> {
  name: string;
  /** For codes and readings: the monospaced face. */
  mono?: boolean;
}

/** One line of text; every attribute of `input` may be given. */
export function TextField({ label, hint, error, optional, id, wide, mono, ...input }: TextFieldProps) {
  return (
    <Field {...framed({ label, hint, error, optional, id, wide })}>
      {(control) => (
        <input
          type="text"
          {...(mono && { autoCapitalize: "off", autoCorrect: "off", spellCheck: false, autoComplete: "off" })}
          {...input}
          {...control}
          className={classNames(styles.control, mono && styles.mono)}
        />
      )}
    </Field>
  );
}

export interface TextAreaProps extends FieldFrame, Omit<ComponentProps<"textarea">, "id" | "className" | "children"> {
  name: string;
  mono?: boolean;
}

/** Several lines of text; every attribute of `textarea` may be given. */
export function TextArea({ label, hint, error, optional, id, wide, mono, ...area }: TextAreaProps) {
  return (
    <Field {...framed({ label, hint, error, optional, id, wide })}>
      {(control) => (
        <textarea
          rows={5}
          {...(mono && { autoCapitalize: "off", autoCorrect: "off", spellCheck: false })}
          {...area}
          {...control}
          className={classNames(styles.control, mono && styles.mono)}
        />
      )}
    </Field>
  );
}

export interface Choice {
  value: string;
  label: string;
}

/** Turns a record of words (`words.ts`) into the choices of a field, in the order of the set. */
export function choicesOf<T extends string>(set: readonly T[], words: Record<T, string>): Choice[] {
  return set.map((value) => ({ value, label: words[value] }));
}

export interface SelectFieldProps extends FieldFrame, Omit<ComponentProps<"select">, "id" | "className" | "children"> {
  name: string;
  choices: readonly Choice[];
  /** A first line with an empty value: "Any outcome". */
  empty?: string;
}

/** One of a closed set. */
export function SelectField(props: SelectFieldProps) {
  const { label, hint, error, optional, id, wide, choices, empty, ...select } = props;
  return (
    <Field {...framed({ label, hint, error, optional, id, wide })}>
      {(control) => (
        <select {...select} {...control} className={styles.control}>
          {empty !== undefined && <option value="">{empty}</option>}
          {choices.map(({ value, label: text }) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

export interface CheckboxFieldProps
  extends Pick<FieldFrame, "label" | "hint" | "error" | "id">, Omit<ComponentProps<"input">, "id" | "className"> {
  name: string;
}

/** A box to tick; the whole line can be pressed. */
export function CheckboxField({ label, hint, error, id, ...input }: CheckboxFieldProps) {
  const own = useId();
  const controlId = id ?? own;
  return (
    <div className={styles.field}>
      <label className={styles.check} htmlFor={controlId}>
        <input
          {...input}
          type="checkbox"
          id={controlId}
          className={styles.box}
          aria-describedby={error ? `${controlId}-error` : undefined}
          aria-invalid={error ? true : undefined}
        />
        <span>
          {label}
          {hint && <span className={styles.hint}>{hint}</span>}
        </span>
      </label>
      <FieldError id={`${controlId}-error`} error={error} />
    </div>
  );
}

export interface RadioFieldProps {
  legend: ReactNode;
  name: string;
  choices: readonly (Choice & { hint?: string })[];
  defaultValue?: string;
  required?: boolean;
  hint?: ReactNode;
  error?: string | undefined;
}

/** One of a few, all seen at once. */
export function RadioField({ legend, name, choices, defaultValue, required, hint, error }: RadioFieldProps) {
  const own = useId();
  return (
    <fieldset className={styles.field} aria-describedby={error ? `${own}-error` : undefined}>
      <legend className={styles.label}>{legend}</legend>
      {hint && <p className={styles.hint}>{hint}</p>}
      <div className={styles.options}>
        {choices.map((choice) => (
          <label key={choice.value} className={styles.check}>
            <input
              type="radio"
              name={name}
              value={choice.value}
              defaultChecked={choice.value === defaultValue}
              required={required}
              className={styles.box}
            />
            <span>
              {choice.label}
              {choice.hint && <span className={styles.hint}>{choice.hint}</span>}
            </span>
          </label>
        ))}
      </div>
      <FieldError id={`${own}-error`} error={error} />
    </fieldset>
  );
}

/** Fields side by side where there is room. */
export function FieldRow({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>;
}

/** Leaves out what was not given: an optional property may not be set to undefined. */
function framed(frame: { [Key in keyof FieldFrame]: FieldFrame[Key] | undefined }): FieldFrame {
  const { label, hint, error, optional, id, wide } = frame;
  return {
    label,
    ...(hint !== undefined && { hint }),
    ...(error !== undefined && { error }),
    ...(optional !== undefined && { optional }),
    ...(id !== undefined && { id }),
    ...(wide !== undefined && { wide }),
  };
}
