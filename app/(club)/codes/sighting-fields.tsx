import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { FieldRow, TextArea, TextField } from "#lib/ui/field.tsx";
import { problemAt, type FieldProblem } from "#lib/ui/form-error.tsx";

export interface SightingFieldsProps {
  values: Record<string, string> | undefined;
  problems: readonly FieldProblem[] | undefined;
  /** Before the names of the fields in problems. */
  path: string;
}

/** Where a code was seen: board, designator, date code. */
export function SightingFields({ values, problems, path }: SightingFieldsProps) {
  const error = (name: string) => problemAt(problems, `${path}${name}`);
  return (
    <>
      <ComboBox
        label="Board"
        name="boardName"
        valueName="boardSlug"
        url="/api/v1/search?kind=board&limit=8"
        optional
        defaultText={values?.["boardName"] ?? ""}
        defaultValue={values?.["boardSlug"] ?? ""}
        error={error("board")}
      />
      <FieldRow>
        <TextField
          label="Designator"
          name="at"
          mono
          optional
          defaultValue={values?.["at"]}
          error={error("at")}
          hint="U7, 4F"
        />
        <TextField
          label="Date code"
          name="dateCode"
          mono
          optional
          defaultValue={values?.["dateCode"]}
          error={error("dateCode")}
          hint="As printed beside it: 8712"
        />
      </FieldRow>
      <TextArea
        label="Note on the sighting"
        name="sightingNote"
        rows={2}
        optional
        defaultValue={values?.["sightingNote"]}
        error={error("note")}
        hint="Socketed? Is it the part that the board was made with?"
      />
    </>
  );
}
