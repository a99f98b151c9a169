import { INTERCHANGE_GRADES } from "#lib/core/shared/index.ts";
import { CheckboxField, choicesOf, SelectField, TextArea } from "#lib/ui/field.tsx";
import { problemAt, type FieldProblem } from "#lib/ui/form-error.tsx";
import { GRADE_WORDS } from "#lib/ui/words.ts";

export interface ClaimFieldsProps {
  grade: string;
  bothWays: boolean;
  /** One a line. */
  conditions: string;
  note: string;
  problems: readonly FieldProblem[] | undefined;
}

/** What a claim says of its two codes. */
export function ClaimFields({ grade, bothWays, conditions, note, problems }: ClaimFieldsProps) {
  // A problem with one line is shown at the field that holds all lines.
  const condition = problems?.find(({ path }) => path === "conditions" || path.startsWith("conditions."));
  return (
    <>
      <CheckboxField label="It holds both ways" name="bothWays" defaultChecked={bothWays} />
      <SelectField
        label="How well"
        name="grade"
        required
        choices={choicesOf(INTERCHANGE_GRADES, GRADE_WORDS)}
        defaultValue={grade}
        error={problemAt(problems, "grade")}
      />
      <TextArea
        label="Conditions, one a line"
        name="conditions"
        rows={2}
        optional
        defaultValue={conditions}
        error={condition?.message}
        hint="Set RV1 again. Only on issue 3 boards."
      />
      <TextArea
        label="In a sentence"
        name="note"
        rows={2}
        optional
        defaultValue={note}
        error={problemAt(problems, "note")}
      />
    </>
  );
}
