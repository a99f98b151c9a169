"use client";

import { useState } from "react";
import { EVIDENCE_KINDS } from "#lib/core/shared/index.ts";
import { choicesOf, FieldRow, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { problemAt, type FieldProblem } from "#lib/ui/form-error.tsx";
import { EVIDENCE_WORDS } from "#lib/ui/words.ts";

export interface EvidenceFieldsProps {
  values: Record<string, string> | undefined;
  problems: readonly FieldProblem[] | undefined;
  /** Before the names of the fields in problems. */
  path: string;
  /** The first choice, where evidence may be left out. */
  none?: string;
}

/** What speaks for or against a claim. Whether a part was good elsewhere is asked only of one that failed here. */
export function EvidenceFields({ values, problems, path, none }: EvidenceFieldsProps) {
  const [kind, setKind] = useState(values?.["kind"] ?? (none === undefined ? "fitted-worked" : ""));
  const error = (name: string) => problemAt(problems, `${path}${name}`);
  return (
    <>
      <FieldRow>
        <SelectField
          label="What it rests on"
          name="kind"
          value={kind}
          onChange={(event) => setKind(event.target.value)}
          choices={choicesOf(EVIDENCE_KINDS, EVIDENCE_WORDS)}
          error={error("kind")}
          {...(none !== undefined && { empty: none })}
        />
        <TextField
          label="Case number"
          name="case"
          mono
          optional
          inputMode="numeric"
          defaultValue={values?.["case"]}
          error={error("case")}
        />
      </FieldRow>
      {kind === "fitted-failed" && (
        <SelectField
          label="Was the part good elsewhere?"
          name="provedElsewhere"
          defaultValue={values?.["provedElsewhere"] ?? "not-known"}
          error={error("provedElsewhere")}
          choices={[
            { value: "not-known", label: "not known" },
            { value: "yes", label: "yes, it works in another board" },
            { value: "found-bad", label: "no, it was found bad: it says nothing of the claim" },
          ]}
        />
      )}
      <TextArea
        label="What you saw"
        name="evidenceNote"
        rows={2}
        optional
        defaultValue={values?.["evidenceNote"]}
        error={error("note")}
      />
    </>
  );
}
