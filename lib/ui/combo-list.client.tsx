"use client";

import { useEffect, useRef, useState } from "react";
import { ComboBox, type ComboBoxProps } from "./combo-box.client.tsx";
import styles from "./combo-box.module.css";

export interface ComboListProps extends Omit<
  ComboBoxProps,
  "defaultText" | "defaultValue" | "valueName" | "onChoose" | "onOwnWords" | "required"
> {
  /** What stands there at first. */
  defaultTexts?: readonly string[];
}

/** Several words or records, one after the other: symptoms. The form sends `name` once for each. */
export function ComboList({ name, defaultTexts = [], ...box }: ComboListProps) {
  const [texts, setTexts] = useState<readonly string[]>(defaultTexts);
  const [round, setRound] = useState(0);
  const whole = useRef<HTMLDivElement>(null);

  useEffect(() => {
    // After a choice the next one can be typed at once.
    if (round > 0) whole.current?.querySelector<HTMLInputElement>("[role=combobox]")?.focus();
  }, [round]);

  function add(text: string) {
    const trimmed = text.trim();
    if (trimmed === "") return;
    setTexts((now) => (now.includes(trimmed) ? now : [...now, trimmed]));
    // A new box, empty again.
    setRound((now) => now + 1);
  }

  return (
    <div ref={whole}>
      {/* What still stands in the box when the form is sent counts as well. */}
      <ComboBox
        key={round}
        {...box}
        name={name}
        onChoose={(chosen) => add(chosen.text)}
        {...(box.ownWords && { onOwnWords: add })}
      />
      {texts.length > 0 && (
        <ul className={styles.chosen} aria-label={`${box.label}: chosen`}>
          {texts.map((text) => (
            <li key={text}>
              {text}
              <input type="hidden" name={name} value={text} />
              <button
                type="button"
                aria-label={`Leave out ${text}`}
                onClick={() => setTexts((now) => now.filter((other) => other !== text))}
              >
                ×
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
