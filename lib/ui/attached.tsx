import { EmptyState } from "./empty-state.tsx";
import { PhotoGrid } from "./photo-grid.tsx";
import { PhotoUpload, type PhotoUploadProps } from "./photo-upload.client.tsx";
import { Section } from "./section.tsx";
import { TakeAway, type TakeAwayAction } from "./take-away.client.tsx";

/** A photo or file as it stands on a record. */
export interface AttachedFile {
  /** Of its place on the record: what is taken away. */
  use: string;
  url: string;
  thumb: string | null;
  name: string;
  kind: "photo" | "file";
  width: number | null;
  height: number | null;
  caption: string;
  by: { handle: string; name: string } | null;
}

export interface AttachedProps {
  attached: readonly AttachedFile[];
  /** What a good photo of this kind of record shows. */
  advice: string;
  /** Left out: the reader may not write here. */
  write?: PhotoUploadProps & {
    viewer: { handle: string; isReviewer: boolean };
    /** "this chip": what a photo is taken off. */
    from: string;
    takeAway: TakeAwayAction;
  };
}

/** Photos and files of a record, with a place to add one; who added one, and reviewers, may take it off again. */
export function Attached({ attached, advice, write }: AttachedProps) {
  const photos = attached.filter((one) => one.kind === "photo");
  const files = attached.filter((one) => one.kind === "file");
  return (
    <Section id="photos" title={files.length > 0 ? "Photos and files" : "Photos"} count={attached.length}>
      {attached.length === 0 && (
        <EmptyState title="No photo yet.">
          <p>{write ? advice : `${advice} Members can add one: sign in first.`}</p>
        </EmptyState>
      )}
      <PhotoGrid
        photos={photos.map((photo) => ({
          src: photo.thumb ?? photo.url,
          href: photo.url,
          alt: photo.caption || photo.name,
          width: photo.width ?? 400,
          height: photo.height ?? 300,
          caption: <Caption file={photo} {...(write && { write })} />,
        }))}
      />
      {files.length > 0 && (
        <ul>
          {files.map((file) => (
            <li key={file.use}>
              <a href={file.url}>{file.name}</a> <Caption file={file} {...(write && { write })} />
            </li>
          ))}
        </ul>
      )}
      {write && (
        <details className="no-print">
          <summary>Add a photo</summary>
          <PhotoUpload kind={write.kind} record={write.record} mostBytes={write.mostBytes} example={write.example} />
        </details>
      )}
    </Section>
  );
}

function Caption({ file, write }: { file: AttachedFile } & Pick<AttachedProps, "write">) {
  const isMine = write && (write.viewer.isReviewer || write.viewer.handle === file.by?.handle);
  return (
    <>
      {[file.caption, file.by && `by ${file.by.name}`].filter(Boolean).join(", ")}
      {isMine && (
        <div className="no-print">
          <TakeAway
            action={write.takeAway}
            field="use"
            id={file.use}
            what={file.caption || file.name}
            from={write.from}
          />
        </div>
      )}
    </>
  );
}
