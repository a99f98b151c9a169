"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, type ReactNode, type SubmitEvent } from "react";
import { Button, ButtonRow } from "./button.tsx";
import { Field } from "./field.tsx";
import { FormError, problemAt, type FieldProblem } from "./form-error.tsx";
import { Notice } from "./notice.tsx";
import fieldStyles from "./field.module.css";
import styles from "./upload-form.module.css";

type Upload =
  | { state: "ready" }
  | { state: "sending"; share: number }
  | { state: "done"; name: string }
  | { state: "refused"; message: string; problems: FieldProblem[] };

export interface UploadFormProps {
  /** Where the form is posted, as multipart/form-data with the file as `file`. */
  address: string;
  accept?: string;
  /** Larger files are not sent at all: a phone would send for minutes, to be refused. */
  most?: { bytes: number; message: string };
  fileLabel: string;
  fileHint: string;
  submit: string;
  /** Turns what was typed into the fields that are sent; or says what is wrong with it. */
  fields: (typed: FormData) => Record<string, string> | FieldProblem;
  children: (error: (path: string) => string | undefined) => ReactNode;
}

/** Sends a file with its fields and shows how far it is. What was typed stays where the club refuses it. */
export function UploadForm(props: UploadFormProps) {
  const { address, accept, most, fileLabel, fileHint, submit, fields, children } = props;
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
    if (!(file instanceof File) || file.size === 0) return refuse("Choose a file first.");
    if (most && file.size > most.bytes) return refuse(most.message, [{ path: "file", message: most.message }]);
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
