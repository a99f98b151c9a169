"use client";

import { TextField } from "./field.tsx";
import { UploadForm } from "./upload-form.client.tsx";

export interface PhotoUploadProps {
  kind: "case" | "board" | "chip" | "code";
  /** Id of the record. */
  record: string;
  mostBytes: number;
  /** A good caption for this kind of record. */
  example: string;
}

/** Adds a photo to a record. */
export function PhotoUpload({ kind, record, mostBytes, example }: PhotoUploadProps) {
  const most = `${mostBytes / 1e6} MB`;
  return (
    <UploadForm
      address="/api/v1/attachments"
      accept="image/jpeg,image/png,image/webp"
      most={{ bytes: mostBytes, message: `This photo is larger than ${most}. Most phones can send a smaller one.` }}
      fileLabel="Photo"
      fileHint={`JPEG, PNG or WebP, at most ${most}. Where and with what it was taken is removed.`}
      submit="Add the photo"
      fields={(typed) => {
        const caption = typed.get("caption");
        return { kind, record, caption: typeof caption === "string" ? caption : "" };
      }}
    >
      {(error) => <TextField label="What it shows" name="caption" optional error={error("caption")} hint={example} />}
    </UploadForm>
  );
}
