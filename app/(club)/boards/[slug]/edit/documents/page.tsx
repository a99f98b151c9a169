import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { listAttachments, MOST_PHOTO_BYTES } from "#lib/services/attachments/index.ts";
import { readBoard } from "#lib/services/boards/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { PhotoGrid } from "#lib/ui/photo-grid.tsx";
import { PhotoUpload } from "#lib/ui/photo-upload.client.tsx";
import { Section } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TakeAway } from "#lib/ui/take-away.client.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { takeDocumentAway, takePhotoAway } from "../../../actions.ts";
import { DocumentUpload } from "../../../upload.client.tsx";
import { DOCUMENT_KIND_WORDS, sheetsOf } from "../../documents.tsx";
import { EditHead } from "../steps.tsx";

export const metadata: Metadata = { title: "Documents and photos of a board" };

export default async function DocumentsPage({ params }: { params: Promise<{ slug: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  const attached = await listAttachments(ctx, "board", board.id);
  return (
    <>
      <EditHead slug={slug} name={board.name} part="documents" title="Documents and photos" />
      <Section id="documents" title="Documents" count={board.documents.length}>
        {board.documents.length > 0 && (
          <Table label="Documents" columns={["Title", "Kind", "Sheets", { head: "Take off", hidden: true }]}>
            {board.documents.map((document) => (
              <tr key={document.id}>
                <th scope="row">
                  <a href={`/api/v1/attachments/${document.attachment.id}`}>{document.title}</a>
                </th>
                <td>{DOCUMENT_KIND_WORDS[document.kind] ?? document.kind}</td>
                <td>
                  {sheetsOf(document)
                    .map(({ sheet }) => sheet)
                    .join(", ")}
                </td>
                <td>
                  <TakeAway
                    action={takeDocumentAway}
                    field="document"
                    id={document.id}
                    what={document.title}
                    from="this board"
                  />
                </td>
              </tr>
            ))}
          </Table>
        )}
        <DocumentUpload slug={slug} />
      </Section>
      <Section id="photos" title="Photos" count={attached.length}>
        {attached.length === 0 && <EmptyState title="No photo yet." />}
        <PhotoGrid
          photos={attached
            .filter((one) => one.kind === "photo")
            .map((photo) => ({
              src: photo.thumb ?? photo.url,
              href: photo.url,
              alt: photo.caption || photo.name,
              width: photo.width ?? 400,
              height: photo.height ?? 300,
              caption: (
                <>
                  {photo.caption}
                  <TakeAway
                    action={takePhotoAway}
                    field="use"
                    id={photo.use}
                    what={photo.caption || photo.name}
                    from="this board"
                  />
                </>
              ),
            }))}
        />
        <PhotoUpload
          kind="board"
          record={board.id}
          mostBytes={MOST_PHOTO_BYTES}
          example="Component side, Issue 2, a working one"
        />
      </Section>
    </>
  );
}
