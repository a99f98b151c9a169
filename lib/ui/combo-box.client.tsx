"use client";

import { useState, type ReactNode } from "react";
import {
  Button,
  ComboBox as AriaComboBox,
  FieldError,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Text,
  type Key,
} from "react-aria-components";
import { classNames } from "./class-names.ts";
import { matchingOptions, optionsOf, type ComboOption } from "./combo-options.ts";
import { Shape } from "./shape.tsx";
import { useAnswer } from "./use-answer.client.tsx";
import fieldStyles from "./field.module.css";
import styles from "./combo-box.module.css";

export interface ComboBoxProps {
  label: string;
  /** The form sends the text as `name` and the value of a chosen offer as `valueName` (empty for own words). */
  name: string;
  valueName?: string;
  /** Asked with what was typed, `q=` added: `/api/v1/search?kind=board&limit=8`. See `optionsOf` for what it may answer. */
  url?: string;
  /** Offers that are there already, instead of or before those of `url`. */
  options?: readonly ComboOption[];
  /** Words that are no offer may stand. Left out: the box falls back to the last chosen offer. */
  ownWords?: boolean;
  defaultText?: string;
  defaultValue?: string;
  hint?: ReactNode;
  error?: string | undefined;
  optional?: boolean;
  required?: boolean;
  placeholder?: string;
  mono?: boolean;
  wide?: boolean;
  /** Told of each choice; `value` is null for own words. */
  onChoose?: (chosen: { text: string; value: string | null }) => void;
  /** Told of own words that were ended with Enter, which then does not send the form. */
  onOwnWords?: (text: string) => void;
}

/** A text box that offers records or words while one types. Without script it is a plain text field. */
export function ComboBox(props: ComboBoxProps) {
  const { label, name, valueName, url, options = [], ownWords = false, hint, error, optional, mono, wide } = props;
  const { defaultText = "", defaultValue = null, required = false, placeholder, onChoose, onOwnWords } = props;
  const [text, setText] = useState(defaultText);
  const [value, setValue] = useState<Key | null>(defaultValue);
  const [touched, setTouched] = useState(false);
  const typed = text.trim();
  const address =
    url && touched && typed ? `${url}${url.includes("?") ? "&" : "?"}q=${encodeURIComponent(typed)}` : null;
  const answer = useAnswer(address);
  const offered = mergedOffers(
    matchingOptions(options, typed),
    answer.state === "answered" ? optionsOf(answer.value) : [],
  );

  function choose(key: Key | null) {
    const found = offered.find((option) => option.value === key);
    setValue(key);
    if (found) setText(found.label);
    onChoose?.({ text: found?.label ?? text, value: found?.value ?? null });
  }

  return (
    <AriaComboBox
      className={classNames(styles.field, wide && styles.wide)}
      items={offered}
      inputValue={text}
      value={value}
      onInputChange={(next) => {
        setText(next);
        setTouched(true);
        if (offered.find((option) => option.value === value)?.label !== next) setValue(null);
      }}
      onChange={choose}
      allowsCustomValue={ownWords}
      allowsEmptyCollection={touched && typed !== ""}
      menuTrigger="input"
      isRequired={required}
      isInvalid={Boolean(error)}
      validationBehavior="aria"
    >
      <Label className={fieldStyles.label}>
        {label} {optional && <span className={fieldStyles.optional}>(may be left out)</span>}
      </Label>
      {hint && (
        <Text slot="description" className={fieldStyles.hint}>
          {hint}
        </Text>
      )}
      <div className={styles.line}>
        <Input
          name={name}
          className={classNames(fieldStyles.control, mono && fieldStyles.mono)}
          {...(placeholder && { placeholder })}
          autoCapitalize="off"
          onKeyDown={(event) => {
            const offers = event.currentTarget.getAttribute("aria-activedescendant");
            if (event.key !== "Enter" || offers || typed === "" || !onOwnWords) return;
            event.preventDefault();
            onOwnWords(typed);
          }}
          spellCheck={mono ? "false" : "true"}
        />
        <Button className={styles.arrow ?? ""} aria-label="Show what there is">
          <span aria-hidden="true">▾</span>
        </Button>
      </div>
      {valueName && <input type="hidden" name={valueName} value={value ?? ""} />}
      <FieldError className={fieldStyles.error ?? ""}>
        <Shape name="cross" />
        {error}
      </FieldError>
      <Popover className={styles.popover ?? ""} offset={2}>
        <ListBox<ComboOption>
          className={styles.list ?? ""}
          renderEmptyState={() => <div className={styles.empty}>{emptyText(answer.state, ownWords)}</div>}
        >
          {(option) => (
            <ListBoxItem id={option.value} textValue={option.label} className={styles.option ?? ""}>
              {option.label}
              {option.hint && <span className={styles.about}>{option.hint}</span>}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </AriaComboBox>
  );
}

function mergedOffers(first: readonly ComboOption[], second: readonly ComboOption[]): ComboOption[] {
  const known = new Set(first.map((option) => option.value));
  return [...first, ...second.filter((option) => !known.has(option.value))];
}

function emptyText(state: "idle" | "trouble" | "answered", ownWords: boolean): string {
  if (state === "trouble") return "No answer just now; what you typed stays.";
  if (state === "idle") return "…";
  return ownWords ? "Nothing like it yet; your own words will do." : "Nothing like it yet.";
}
