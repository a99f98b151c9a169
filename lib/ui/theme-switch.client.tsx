"use client";

import { useId, useState } from "react";
import styles from "./theme-switch.module.css";

export type Theme = "light" | "dark";

const CHOICES: readonly { value: Theme | "device"; text: string }[] = [
  { value: "device", text: "as the device" },
  { value: "light", text: "light" },
  { value: "dark", text: "dark" },
];

const YEAR_SECONDS = 365 * 86_400;

/** Light, dark, or as the device says; kept in the cookie `theme`, which the root layout reads. */
export function ThemeSwitch({ theme }: { theme: Theme | undefined }) {
  const name = useId();
  const [now, setNow] = useState<Theme | "device">(theme ?? "device");

  function choose(value: Theme | "device") {
    setNow(value);
    const { dataset } = document.documentElement;
    if (value === "device") delete dataset.theme;
    else dataset.theme = value;
    const age = value === "device" ? 0 : YEAR_SECONDS;
    document.cookie = `theme=${value}; path=/; max-age=${age}; samesite=lax`;
  }

  return (
    <fieldset className={styles.switch}>
      <legend>Page colours</legend>
      {CHOICES.map(({ value, text }) => (
        <label key={value} className={styles.choice}>
          <input type="radio" name={name} value={value} checked={now === value} onChange={() => choose(value)} />
          {text}
        </label>
      ))}
    </fieldset>
  );
}
