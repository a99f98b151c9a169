"use client";

import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { buttonClass, type ButtonLook } from "./button.tsx";

export interface SubmitButtonProps {
  children: ReactNode;
  /** Said while the server works: "Saving …". */
  pendingText?: string;
  look?: ButtonLook;
  /** Sent with the form, to tell two submit buttons apart. */
  name?: string;
  value?: string;
  formAction?: (form: FormData) => void | Promise<void>;
}

/** Sends the form it stands in; says so while the server works and cannot be pressed twice. Works without script. */
export function SubmitButton({ children, pendingText = "Saving …", look = "main", ...rest }: SubmitButtonProps) {
  const { pending } = useFormStatus();
  return (
    <button
      {...rest}
      type="submit"
      className={buttonClass(look)}
      aria-disabled={pending}
      onClick={(event) => pending && event.preventDefault()}
    >
      <span aria-live="polite">{pending ? pendingText : children}</span>
    </button>
  );
}
