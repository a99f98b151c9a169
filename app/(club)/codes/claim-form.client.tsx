"use client";

import { useActionState } from "react";
import { ButtonRow } from "#lib/ui/button.tsx";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { RadioField } from "#lib/ui/field.tsx";
import { FormError, problemAt } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { saveClaim } from "./actions.ts";
import { ClaimFields } from "./claim-fields.tsx";
import { EvidenceFields } from "./evidence-fields.client.tsx";

/** That one code can stand in for another, and what that rests on. */
export function ClaimForm({ codeId, code }: { codeId: string; code: string }) {
  const [state, send] = useActionState(saveClaim, {});
  const values = state.values;
  const error = (path: string) => problemAt(state.problems, path);
  const isThisFrom = (values?.["direction"] ?? "for-this") === "for-this";
  return (
    <form action={send} key={JSON.stringify(values ?? null)}>
      <FormError message={state.message} problems={state.problems} />
      {state.ok && <Notice kind="done" title="The claim is recorded above." />}
      <input type="hidden" name="codeId" value={codeId} />
      <ComboBox
        label="The other code"
        name="other"
        valueName="otherId"
        url="/api/v1/search?kind=code&limit=8"
        ownWords
        mono
        required
        defaultText={values?.["other"] ?? ""}
        defaultValue={values?.["otherId"] ?? ""}
        error={error(isThisFrom ? "to" : "from")}
        hint="It needs a record of its own; a code that nobody knows is recorded in a minute."
      />
      <RadioField
        legend="Which stands in for which"
        name="direction"
        defaultValue={values?.["direction"] ?? "for-this"}
        choices={[
          { value: "for-this", label: `the other one can be fitted where ${code} was` },
          { value: "for-other", label: `${code} can be fitted where the other one was` },
        ]}
      />
      <ClaimFields
        grade={values?.["grade"] ?? "drop-in"}
        bothWays={values?.["bothWays"] === "on"}
        conditions={values?.["conditions"] ?? ""}
        note={values?.["note"] ?? ""}
        problems={state.problems}
      />
      <EvidenceFields values={values} problems={state.problems} path="evidence." none="No evidence yet" />
      <ButtonRow>
        <SubmitButton>Record the claim</SubmitButton>
      </ButtonRow>
    </form>
  );
}
