"use client";

import { useId, useState } from "react";
import { reasonOf } from "#lib/ui/bench-outbox.ts";
import { buttonClass } from "#lib/ui/button.tsx";
import { classNames } from "#lib/ui/class-names.ts";
import styles from "./bench.module.css";

export interface BenchPhoto {
  id: string;
  url: string;
  thumb: string | null;
  name: string;
}

interface PhotoButtonProps {
  caseId: string;
  /** A photo of one check. */
  checkId?: string;
  onPhoto: (photo: BenchPhoto) => void;
}

/** Opens the camera of a phone, or a file box, and puts the photo on the case. */
export function PhotoButton({ caseId, checkId, onPhoto }: PhotoButtonProps) {
  const id = useId();
  const [state, setState] = useState<{ sending: number; problem: string }>({ sending: 0, problem: "" });

  async function send(files: readonly File[]) {
    setState({ sending: files.length, problem: "" });
    const problems: string[] = [];
    for (const file of files) {
      const problem = await sendPhoto(file, { caseId, ...(checkId && { checkId }) }, onPhoto);
      if (problem) problems.push(`${file.name}: ${problem}`);
      setState((now) => ({ ...now, sending: now.sending - 1 }));
    }
    setState({ sending: 0, problem: problems.join(" ") });
  }

  return (
    <>
      <input
        id={id}
        className="visually-hidden"
        type="file"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        multiple
        disabled={state.sending > 0}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = "";
          if (files.length > 0) void send(files);
        }}
      />
      <label className={classNames(buttonClass(undefined), styles.photoButton)} htmlFor={id}>
        {state.sending > 0 ? "Sending …" : "Photo"}
      </label>
      {state.problem && (
        <p className={styles.photoProblem} role="alert">
          {state.problem}
        </p>
      )}
    </>
  );
}

/** Sends one photo; answers why not, or an empty text. */
async function sendPhoto(
  file: File,
  { caseId, checkId }: { caseId: string; checkId?: string },
  onPhoto: (photo: BenchPhoto) => void,
): Promise<string> {
  const form = new FormData();
  form.set("kind", "case");
  form.set("record", caseId);
  if (checkId) form.set("check", checkId);
  form.set("file", file);
  try {
    const response = await fetch("/api/v1/attachments", { method: "POST", body: form });
    if (!response.ok) return await reasonOf(response);
    const made = (await response.json()) as Partial<BenchPhoto>;
    if (!made.id || !made.url) return "The server took it but did not say where it is. Reload the page to see it.";
    onPhoto({ id: made.id, url: made.url, thumb: made.thumb ?? null, name: made.name ?? file.name });
    return "";
  } catch {
    return "The server does not answer, so this photo was not sent. It is still on your phone; try again later.";
  }
}
