"use client";

import { startTransition, type FormEvent } from "react";

/** Sends a form without the reset that follows an action: a refused form keeps what was typed and chosen. */
export function sentByHand(send: (form: FormData) => void, isSending: boolean) {
  return (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const { submitter } = event.nativeEvent as SubmitEvent;
    const form = new FormData(event.currentTarget, submitter);
    if (!isSending) startTransition(() => send(form));
  };
}
