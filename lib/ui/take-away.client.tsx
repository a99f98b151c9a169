"use client";

import { useActionState } from "react";
import { ConfirmButton } from "./confirm-button.client.tsx";
import { FormError, type FieldProblem } from "./form-error.tsx";

export interface TakeAwayAnswer {
  ok?: boolean;
  message?: string;
  problems?: FieldProblem[];
}

export type TakeAwayAction = (before: TakeAwayAnswer, form: FormData) => Promise<TakeAwayAnswer>;

export interface TakeAwayProps {
  action: TakeAwayAction;
  /** Name of the field that carries the id. */
  field: string;
  id: string;
  what: string;
  /** What it is taken off: "this board". */
  from: string;
}

/** Takes a file off a record, after asking once. */
export function TakeAway({ action, field, id, what, from }: TakeAwayProps) {
  const [state, send] = useActionState(action, {});
  return (
    <form action={send}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name={field} value={id} />
      <ConfirmButton look="quiet" question={`Take “${what}” off ${from}?`} confirm="Take it off">
        Take it off
      </ConfirmButton>
    </form>
  );
}
