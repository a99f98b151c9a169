"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, type SubmitEvent } from "react";
import { Button, ButtonRow } from "#lib/ui/button.tsx";
import { Field } from "#lib/ui/field.tsx";
import { FormError } from "#lib/ui/form-error.tsx";
import fieldStyles from "#lib/ui/field.module.css";
import styles from "./imports.module.css";

type Upload =
  | { state: "ready" }
  | { state: "sending"; share: number }
  /** Everything has arrived; the server reads. */
  | { state: "reading" }
  | { state: "refused"; message: string; problems: string[] };

/** Sends the file, shows how far it is, and leads to the dry run. Can be broken off. */
export function UploadForm() {
  const router = useRouter();
  const [upload, setUpload] = useState<Upload>({ state: "ready" });
  const request = useRef<XMLHttpRequest | null>(null);

  function send(event: SubmitEvent<HTMLFormElement>) {
    event.preventDefault();
    const form = new FormData();
    form.set("format", "symbols");
    const file = new FormData(event.currentTarget).get("file");
    if (!(file instanceof File) || file.size === 0) {
      setUpload({ state: "refused", message: "Choose a file first.", problems: [] });
      return;
    }
    form.set("file", file);
    const sending = new XMLHttpRequest();
    request.current = sending;
    sending.open("POST", "/api/v1/imports");
    sending.upload.onprogress = ({ loaded, total }) =>
      setUpload(loaded < total ? { state: "sending", share: loaded / total } : { state: "reading" });
    sending.onload = () => {
      const answer = answerOf(sending);
      if (answer.state === "planned") router.push(`/imports/${answer.id}`);
      else setUpload(answer);
    };
    sending.onerror = () =>
      setUpload({
        state: "refused",
        message: "The connection broke. Nothing was written; send it again.",
        problems: [],
      });
    sending.onabort = () => setUpload({ state: "ready" });
    setUpload({ state: "sending", share: 0 });
    sending.send(form);
  }

  const busy = upload.state === "sending" || upload.state === "reading";
  return (
    <form onSubmit={send} aria-busy={busy}>
      {upload.state === "refused" && (
        <FormError message={upload.message} problems={upload.problems.map((message) => ({ path: "file", message }))} />
      )}
      <Field label="Symbol library" hint="A .kicad_sym file of at most 60 MB.">
        {(control) => (
          <input {...control} type="file" name="file" accept=".kicad_sym" required className={fieldStyles.control} />
        )}
      </Field>
      <ButtonRow>
        <Button type="submit" look="main" disabled={busy}>
          Read it
        </Button>
        {busy && <Button onClick={() => request.current?.abort()}>Stop</Button>}
      </ButtonRow>
      <div aria-live="polite">
        {busy && (
          <label className={styles.progress}>
            {upload.state === "sending" ? "Sending the file …" : "Reading the symbols …"}
            <progress {...(upload.state === "sending" && { value: upload.share })} max={1} />
          </label>
        )}
      </div>
    </form>
  );
}

type Planned = { state: "planned"; id: string };

function answerOf({ status, responseText }: XMLHttpRequest): Planned | Extract<Upload, { state: "refused" }> {
  const answer = parsed(responseText);
  if (status === 201 && typeof answer["id"] === "string") return { state: "planned", id: answer["id"] };
  const detail = answer["detail"];
  const errors = Array.isArray(answer["errors"]) ? answer["errors"] : [];
  const messages = errors.flatMap((one: unknown) =>
    typeof one === "object" && one !== null && "message" in one && typeof one.message === "string" ? [one.message] : [],
  );
  const message = typeof detail === "string" ? detail : `The server answered with ${status}. Nothing was written.`;
  return { state: "refused", message, problems: messages.filter((one) => one !== message) };
}

function parsed(text: string): Record<string, unknown> {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
