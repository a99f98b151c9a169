import Link from "next/link";
import { z } from "zod";
import type { AttachedView } from "#lib/services/attachments/index.ts";
import type { BoardView } from "#lib/services/boards/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { PhotoGrid } from "#lib/ui/photo-grid.tsx";
import { Section } from "#lib/ui/section.tsx";
import { DocumentView } from "./document-view.client.tsx";
import styles from "../board.module.css";

const Sheets = z.array(z.object({ sheet: z.string(), page: z.number(), title: z.string().default("") })).catch([]);
export type Sheet = z.infer<typeof Sheets>[number];

export function sheetsOf(document: BoardView["documents"][number]): Sheet[] {
  return Sheets.parse(document.sheets);
}

/** Sheets that some document of the board shows. */
export function shownSheets(board: BoardView): string[] {
  return [...new Set(board.documents.flatMap((document) => sheetsOf(document).map(({ sheet }) => sheet)))];
}

export const DOCUMENT_KIND_WORDS: Record<string, string> = {
  schematic: "schematic",
  manual: "manual",
  layout: "layout",
  other: "other document",
};
export const RIGHTS_WORDS: Record<string, string> = {
  free: "may be passed on",
  own: "the club’s own",
  unknown: "for the club only; rights not known",
};

/** Schematics and manuals, their sheets shown in the page when asked for. */
export function Documents({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const first = new Map<string, string>();
  for (const document of board.documents)
    for (const { sheet } of sheetsOf(document)) if (!first.has(sheet)) first.set(sheet, document.id);
  return (
    <Section
      id="documents"
      title="Documents"
      count={board.documents.length}
      aside={isMember && <AddFile board={board}>Add a document</AddFile>}
    >
      {board.documents.length === 0 ? (
        <EmptyState title="No schematic or manual yet.">
          <p>A scan is fine. With sheet numbers, the table of parts leads straight to the sheet.</p>
        </EmptyState>
      ) : (
        board.documents.map((document) => (
          <article key={document.id} className={styles.document} id={`document-${document.id}`}>
            <h3>{document.title}</h3>
            <p className="soft">
              {DOCUMENT_KIND_WORDS[document.kind] ?? document.kind}, {sizeText(document.attachment.byteSize)},{" "}
              {RIGHTS_WORDS[document.rights] ?? document.rights}
            </p>
            <DocumentView
              url={`/api/v1/attachments/${document.attachment.id}`}
              name={document.attachment.name}
              isPdf={document.attachment.mediaType === "application/pdf"}
              isPhoto={document.attachment.mediaType.startsWith("image/")}
              title={document.title}
              sheets={sheetsOf(document)}
              anchors={sheetsOf(document).flatMap(({ sheet }) => (first.get(sheet) === document.id ? [sheet] : []))}
            />
          </article>
        ))
      )}
    </Section>
  );
}

/** Photos and loose files of the board. */
export function Photos({
  board,
  attached,
  isMember,
}: {
  board: BoardView;
  attached: readonly AttachedView[];
  isMember: boolean;
}) {
  const photos = attached.filter((one) => one.kind === "photo");
  const files = attached.filter((one) => one.kind === "file");
  return (
    <Section
      id="photos"
      title="Photos"
      count={attached.length}
      aside={isMember && <AddFile board={board}>Add a photo</AddFile>}
    >
      {attached.length === 0 && (
        <EmptyState title="No photo yet.">
          <p>A straight picture of each side of a good board helps most.</p>
        </EmptyState>
      )}
      <PhotoGrid
        photos={photos.map((photo) => ({
          src: photo.thumb ?? photo.url,
          href: photo.url,
          alt: photo.caption || photo.name,
          width: photo.width ?? 400,
          height: photo.height ?? 300,
          caption: photo.caption,
        }))}
      />
      {files.length > 0 && (
        <ul>
          {files.map((file) => (
            <li key={file.use}>
              <a href={file.url}>{file.name}</a> {file.caption} <span className="soft">{sizeText(file.byteSize)}</span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function AddFile({ board, children }: { board: BoardView; children: string }) {
  return (
    <Link prefetch={false} className="no-print" href={`/boards/${board.slug}/edit/documents`}>
      {children}
    </Link>
  );
}

export function sizeText(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.max(1, Math.round(bytes / 1_000))} KB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
