"use client";

import { useActionState } from "react";
import { INTERCHANGE_GRADES, type InterchangeGrade } from "#lib/core/shared/index.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import { SomeoneWasFirst, type Difference } from "#lib/ui/someone-was-first.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { GRADE_WORDS } from "#lib/ui/words.ts";
import { changeClaim } from "./actions.ts";
import { ClaimFields } from "./claim-fields.tsx";

interface ClaimWords {
  grade: string;
  bothWays: boolean;
  /** One a line. */
  conditions: string;
  note: string;
}

export interface ClaimEditFormProps {
  id: string;
  version: number;
  values: ClaimWords;
  /** The code whose page it leads back to. */
  codeId: string;
}

/** Changes what a claim says. Its two codes and its evidence stay as they are. */
export function ClaimEditForm({ id, version, values, codeId }: ClaimEditFormProps) {
  const [state, send] = useActionState(changeClaim, {});
  const typed = state.values ? typedWords(state.values) : values;
  const present = presentClaim(state.present);
  return (
    // A form that was answered is drawn anew with what was typed.
    <form action={send} key={JSON.stringify(state.values ?? null)}>
      {present ? (
        <SomeoneWasFirst differences={differences(typed, present)} />
      ) : (
        <FormError message={state.message} problems={state.problems} />
      )}
      <input type="hidden" name="claim" value={id} />
      <input type="hidden" name="codeId" value={codeId} />
      <input type="hidden" name="version" value={present?.version ?? state.values?.["version"] ?? version} />
      <ClaimFields {...typed} problems={state.problems} />
      <ButtonRow>
        <SubmitButton>{present ? "Save over the present version" : "Save the claim"}</SubmitButton>
        <ButtonLink href={`/codes/${codeId}#claim-${id}`} look="quiet">
          Do not save
        </ButtonLink>
      </ButtonRow>
    </form>
  );
}

function typedWords(values: Record<string, string>): ClaimWords {
  return {
    grade: values["grade"] ?? "",
    bothWays: values["bothWays"] === "on",
    conditions: values["conditions"] ?? "",
    note: values["note"] ?? "",
  };
}

function differences(mine: ClaimWords, present: ClaimWords): Difference[] {
  const waysOf = (bothWays: boolean) => (bothWays ? "yes" : "no");
  const fields = [
    { field: "Both ways", present: waysOf(present.bothWays), yours: waysOf(mine.bothWays) },
    { field: "How well", present: gradeWords(present.grade), yours: gradeWords(mine.grade) },
    { field: "Conditions", present: linesOf(present.conditions), yours: linesOf(mine.conditions) },
    { field: "In a sentence", present: present.note, yours: mine.note.trim() },
  ];
  return fields.filter((one) => one.present !== one.yours);
}

function gradeWords(grade: string): string {
  const known = INTERCHANGE_GRADES.find((one): one is InterchangeGrade => one === grade);
  return known ? GRADE_WORDS[known] : grade;
}

function linesOf(conditions: string): string {
  return conditions
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .join("; ");
}

/** The claim as the second writer is shown it. */
function presentClaim(raw: unknown): (ClaimWords & { version: number }) | null {
  if (typeof raw !== "object" || raw === null || !("version" in raw) || typeof raw.version !== "number") return null;
  const { grade, bothWays, conditions, note } = raw as Record<string, unknown>;
  return {
    version: raw.version,
    grade: typeof grade === "string" ? grade : "",
    bothWays: bothWays === true,
    conditions: Array.isArray(conditions) ? conditions.map(String).join("\n") : "",
    note: typeof note === "string" ? note : "",
  };
}
