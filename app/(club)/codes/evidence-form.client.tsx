"use client";

import { useActionState } from "react";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveEvidence, setRetracted } from "./actions.ts";
import { EvidenceFields } from "./evidence-fields.client.tsx";

/** A further voice on a claim. */
export function EvidenceForm({ claim, codeId }: { claim: string; codeId: string }) {
  const [state, send] = useActionState(saveEvidence, {});
  return (
    <form action={send} key={JSON.stringify(state.values ?? null)}>
      <FormError message={state.message} problems={state.problems} />
      <input type="hidden" name="claim" value={claim} />
      <input type="hidden" name="codeId" value={codeId} />
      <EvidenceFields values={state.values} problems={state.problems} path="" />
      <ButtonRow>
        <SubmitButton>Add the evidence</SubmitButton>
      </ButtonRow>
    </form>
  );
}

/** Takes evidence back, or lets it count again: one press undoes the other. */
export function RetractForm({ evidence, codeId, retracted }: { evidence: string; codeId: string; retracted: boolean }) {
  const [state, send, pending] = useActionState(setRetracted, {});
  return (
    <form action={send}>
      <input type="hidden" name="evidence" value={evidence} />
      <input type="hidden" name="codeId" value={codeId} />
      <input type="hidden" name="retract" value={retracted ? "no" : "yes"} />
      <FormError message={state.message} />
      <Button type="submit" look="quiet" disabled={pending}>
        {retracted ? "Let it count again" : "Take it back"}
      </Button>
    </form>
  );
}
