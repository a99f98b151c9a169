"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, type ReactNode, type SubmitEvent } from "react";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { Field, SelectField, TextArea, TextField } from "#lib/ui/field.tsx";
import { FormError, problemAt, type FieldProblem } from "#lib/ui/form-error.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import fieldStyles from "#lib/ui/field.module.css";
import { readSheetLines } from "./sheet-lines.ts";
import styles from "./board.module.css";

type Upload =
  | { state: "ready" }
  | { state: "sending"; share: number }
  | { state: "done"; name: string }
  | { state: "refused"; message: string; problems: FieldProblem[] };

interface UploadFormProps {
  address: string;
  accept?: string;
  fileLabel: string;
  fileHint: string;
  submit: string;
  /** Turns what was typed into the fields that are sent; or says what is wrong with it. */
  fields: (typed: FormData) => Record<string, string> | FieldProblem;
  children: (error: (path: string) => string | undefined) => ReactNode;
}

/** Sends a file with its fields and shows how far it is. What was typed stays where the club refuses it. */
function UploadForm({ address, accept, fileLabel, fileHint, submit, fields, children }: UploadFormProps) {
  const router = useRouter();
  const [upload, setUpload] = useState<Upload>({ state: "ready" });
  const request = useRef<XMLHttpRequest | null>(null);

  function refuse(message: string, problems: FieldProblem[] = []) {
    setUpload({ state: "refused", message, problems });
  }

  function send(event: SubmitEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = event.currentTarget;
    const typed = new FormData(form);
    const file = typed.get("file");
    if (!(file instanceof File) || file.size === 0) return refuse("Choose a file first.", []);
    const given = fields(typed);
    if (isProblem(given)) return refuse(given.message, [given]);
    const body = new FormData();
    for (const [name, value] of Object.entries(given)) body.set(name, value);
    body.set("file", file);
    const sending = new XMLHttpRequest();
    request.current = sending;
    sending.open("POST", address);
    sending.upload.onprogress = ({ loaded, total }) =>
      setUpload({ state: "sending", share: total === 0 ? 0 : loaded / total });
    sending.onload = () => {
      if (sending.status !== 201) return refuse(...reasonOf(sending));
      form.reset();
      setUpload({ state: "done", name: file.name });
      router.refresh();
    };
    sending.onerror = () => refuse("The connection broke. Nothing was kept; send it again.");
    sending.onabort = () => setUpload({ state: "ready" });
    setUpload({ state: "sending", share: 0 });
    sending.send(body);
  }

  const problems = upload.state === "refused" ? upload.problems : [];
  const busy = upload.state === "sending";
  return (
    <form onSubmit={send} aria-busy={busy}>
      {upload.state === "refused" && (
        <FormError message={upload.message} problems={problems.filter(({ message }) => message !== upload.message)} />
      )}
      {upload.state === "done" && (
        <div aria-live="polite">
          <Notice kind="done" title={`${upload.name} is kept.`} />
        </div>
      )}
      <Field label={fileLabel} hint={fileHint} {...errorProp(problemAt(problems, "file"))}>
        {(control) => (
          <input {...control} type="file" name="file" accept={accept} required className={fieldStyles.control} />
        )}
      </Field>
      {children((path) => problemAt(problems, path))}
      <ButtonRow>
        <Button type="submit" disabled={busy}>
          {submit}
        </Button>
        {busy && <Button onClick={() => request.current?.abort()}>Stop</Button>}
      </ButtonRow>
      <div aria-live="polite">
        {busy && (
          <label className={styles.progress}>
            {upload.share < 1 ? "Sending the file …" : "The club is looking at it …"}
            <progress {...(upload.share < 1 && { value: upload.share })} max={1} />
          </label>
        )}
      </div>
    </form>
  );
}

function errorProp(error: string | undefined): { error?: string } {
  return error === undefined ? {} : { error };
}

function isProblem(given: Record<string, string> | FieldProblem): given is FieldProblem {
  return "path" in given && "message" in given;
}

/** The reason in the club's own words. */
function reasonOf({ status, responseText }: XMLHttpRequest): [string, FieldProblem[]] {
  try {
    const { detail, errors } = JSON.parse(responseText) as { detail?: unknown; errors?: unknown };
    const problems = (Array.isArray(errors) ? errors : []) as FieldProblem[];
    if (typeof detail === "string") return [detail, problems];
  } catch {
    // Not an answer of the club: something between broke it.
  }
  return [`The server answered with ${status}. Nothing was kept.`, []];
}

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

/** Adds a photo of the board. */
export function PhotoUpload({ board }: { board: string }) {
  return (
    <UploadForm
      address="/api/v1/attachments"
      accept="image/jpeg,image/png,image/webp"
      fileLabel="Photo"
      fileHint="JPEG, PNG or WebP, at most 20 MB. Where and with what it was taken is removed."
      submit="Add the photo"
      fields={(typed) => ({ kind: "board", record: board, caption: text(typed, "caption") })}
    >
      {(error) => (
        <TextField
          label="What it shows"
          name="caption"
          optional
          error={error("caption")}
          hint="Component side, Issue 2, a working one"
        />
      )}
    </UploadForm>
  );
}
