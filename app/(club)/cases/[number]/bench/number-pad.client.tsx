"use client";

import type { ReactNode } from "react";
import type { CheckKind } from "#lib/core/shared/index.ts";
import { PAD_KEYS, padText, type PadKey } from "#lib/ui/bench-pad.ts";
import { buttonClass } from "#lib/ui/button.tsx";
import { classNames } from "#lib/ui/class-names.ts";
import styles from "./bench.module.css";

interface NumberPadProps {
  at: string;
  reading: string;
  kind: CheckKind;
  onReading: (text: string) => void;
  /** Null at the end of the chip or connector. */
  previous: string | null;
  next: string | null;
  onStep: (at: string) => void;
  /** Records the reading and goes on to the next place. */
  onSave: () => void;
  /** The box for the place, between the steps. */
  placeBox: ReactNode;
  /** The choice of the kind, beside the reading. */
  kindChoice: ReactNode;
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3"] as const;

/** Large keys for one thumb: digits, prefixes and words of this kind of check, and steps from pin to pin. */
export function NumberPad(props: NumberPadProps) {
  const { at, reading, kind, onReading, previous, next, onStep, onSave, placeBox, kindChoice } = props;
  const { units, words } = PAD_KEYS[kind];
  const press = (key: PadKey) => onReading(padText(reading, key));
  return (
    <div className={styles.pad}>
      <div className={styles.padSteps}>
        <button type="button" disabled={previous === null} onClick={() => previous && onStep(previous)}>
          <span aria-hidden="true">◂</span> {previous ?? "first"}
        </button>
        {placeBox}
        <button type="button" disabled={next === null} onClick={() => next && onStep(next)}>
          {next ?? "last"} <span aria-hidden="true">▸</span>
        </button>
      </div>
      <div className={styles.padShown}>
        {kindChoice}
        <output className={styles.padReading} aria-label={`Reading at ${at || "no place yet"}`}>
          {reading || <span className={styles.padEmpty}>reading</span>}
        </output>
      </div>
      {words.length > 0 && (
        <div className={styles.padWords}>
          {words.map((word) => (
            <button
              key={word}
              type="button"
              aria-pressed={reading === word}
              onClick={() => press({ press: "word", text: word })}
            >
              {word}
            </button>
          ))}
        </div>
      )}
      <div className={styles.padKeys}>
        {DIGITS.map((digit) => (
          <button key={digit} type="button" onClick={() => press({ press: "digit", text: digit })}>
            {digit}
          </button>
        ))}
        <button type="button" aria-label="minus" onClick={() => press({ press: "sign" })}>
          −
        </button>
        <button type="button" onClick={() => press({ press: "digit", text: "0" })}>
          0
        </button>
        <button type="button" aria-label="point" onClick={() => press({ press: "point" })}>
          .
        </button>
        <div className={styles.padSide}>
          <button type="button" aria-label="take the last back" onClick={() => press({ press: "back" })}>
            ⌫
          </button>
          {units.map((unit) => (
            <button
              key={unit}
              type="button"
              className={styles.padUnit}
              onClick={() => press({ press: "unit", text: unit })}
            >
              {unit}
            </button>
          ))}
        </div>
      </div>
      <button type="button" className={classNames(buttonClass("main"), styles.padSave)} onClick={onSave}>
        Record{at && ` ${at}`}
        {next && `, then ${next}`}
      </button>
    </div>
  );
}
