"use client";

import { useActionState } from "react";
import { ConfirmButton } from "#lib/ui/confirm-button.client.tsx";
import { FormError, type FieldProblem } from "#lib/ui/form-error.tsx";

interface Answer {
  ok?: boolean;
  message?: string;
  problems?: FieldProblem[];
}

interface TakeAwayProps {
  action: (before: Answer, form: FormData) => Promise<Answer>;
  /** Name of the field that carries the id. */
  field: string;
  id: string;
  what: string;
}

/** Takes a file off the board, after asking once. */
export function TakeAway({ action, field, id, what }: TakeAwayProps) {
  const [state, send] = useActionState(action, {});
  return (
    <form action={send}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name={field} value={id} />
      <ConfirmButton look="quiet" question={`Take “${what}” off this board?`} confirm="Take it off">
        Take it off
      </ConfirmButton>
    </form>
  );
}
