"use client";

import { SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { UploadForm } from "#lib/ui/upload-form.client.tsx";
import { readSheetLines } from "./sheet-lines.ts";

function text(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}

/** Adds a schematic or a manual, with its list of sheets. */
export function DocumentUpload({ slug }: { slug: string }) {
  return (
    <UploadForm
      address={`/api/v1/boards/${slug}/documents`}
      fileLabel="Schematic or manual"
      fileHint="A PDF is shown in the page. At most 100 MB; pictures at most 20 MB."
      submit="Add the document"
      fields={(typed) => {
        const { sheets, problems } = readSheetLines(text(typed, "sheets"));
        const [first] = problems;
        if (first) return { path: "sheets", message: `Line ${first.line}: ${first.message}` };
        return {
          title: text(typed, "title"),
          kind: text(typed, "kind"),
          rights: text(typed, "rights"),
          sheets: JSON.stringify(sheets),
        };
      }}
    >
      {(error) => (
        <>
          <TextField label="Title" name="title" required error={error("title")} hint="Schematic, Issue 2" />
          <SelectField
            label="Kind"
            name="kind"
            choices={[
              { value: "schematic", label: "schematic" },
              { value: "manual", label: "manual" },
              { value: "layout", label: "layout" },
              { value: "other", label: "something else" },
            ]}
          />
          <SelectField
            label="May it leave the club?"
            name="rights"
            choices={[
              { value: "unknown", label: "not known: it stays here" },
              { value: "own", label: "yes: we drew it" },
              { value: "free", label: "yes: it may be passed on" },
            ]}
          />
          <TextArea
            label="Sheets, one a line"
            name="sheets"
            optional
            mono
            rows={5}
            error={error("sheets")}
            hint="Number on the drawing, page of the file, what is on it: “3 = page 4 Clock and reset”. The table of parts then leads to the sheet."
          />
        </>
      )}
    </UploadForm>
  );
}
