"use client";

import { useActionState } from "react";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { endSpare } from "./actions.ts";

/** Takes a spare off the list, after asking once. */
export function EndSpare({
  id,
  version,
  isOffer,
  what,
}: {
  id: string;
  version: number;
  isOffer: boolean;
  what: string;
}) {
  const [state, send] = useActionState(endSpare, {});
  return (
    <form action={send}>
      <FormError message={state.message} />
      <input type="hidden" name="id" value={id} />
      <input type="hidden" name="version" value={version} />
      <ConfirmButton
        look="quiet"
        question={
          isOffer ? `Is ${what} gone? It leaves the list.` : `Have you found ${what}? The want leaves the list.`
        }
        confirm="Take it off"
        keep="Leave it"
      >
        {isOffer ? "It is gone" : "I have one"}
      </ConfirmButton>
    </form>
  );
}
