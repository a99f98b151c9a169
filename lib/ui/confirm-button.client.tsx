"use client";

import { useEffect, useRef, useState, type KeyboardEvent, type ReactNode } from "react";
import { buttonClass, type ButtonLook } from "./button.tsx";
import styles from "./button.module.css";

export interface ConfirmButtonProps {
  /** On the button at rest: "Delete this check". */
  children: ReactNode;
  /** Says what would be lost: "Delete the reading 4.87 V at U7.20?" */
  question: string;
  /** On the button that does it: "Delete". */
  confirm: string;
  /** On the button that does not: "Keep it". */
  keep?: string;
  look?: ButtonLook;
  /** Called on confirmation. Left out: the button sends the form that it stands in. */
  onConfirm?: () => void;
  /** Sent with the form. */
  name?: string;
  value?: string;
}

/** Asks once, in place, before something is destroyed. Escape keeps. */
export function ConfirmButton(props: ConfirmButtonProps) {
  const { children, question, confirm, keep = "Keep it", look = "danger", onConfirm, name, value } = props;
  const [asking, setAsking] = useState(false);
  const keepButton = useRef<HTMLButtonElement>(null);
  const firstButton = useRef<HTMLButtonElement>(null);
  const asked = useRef(false);

  useEffect(() => {
    if (asking) keepButton.current?.focus();
    else if (asked.current) firstButton.current?.focus();
    asked.current = asking;
  }, [asking]);

  if (!asking) {
    return (
      <button type="button" ref={firstButton} className={buttonClass(look)} onClick={() => setAsking(true)}>
        {children}
      </button>
    );
  }
  const onKeyDown = (event: KeyboardEvent) => event.key === "Escape" && setAsking(false);
  const done = () => {
    setAsking(false);
    onConfirm?.();
  };
  return (
    <div className={styles.question}>
      <p role="alert">{question}</p>
      <button
        type={onConfirm ? "button" : "submit"}
        className={buttonClass("danger")}
        onKeyDown={onKeyDown}
        {...(name && { name })}
        {...(value && { value })}
        {...(onConfirm && { onClick: done })}
      >
        {confirm}
      </button>
      <button
        type="button"
        ref={keepButton}
        onKeyDown={onKeyDown}
        className={buttonClass(undefined)}
        onClick={() => setAsking(false)}
      >
        {keep}
      </button>
    </div>
  );
}
