import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { readBoard } from "#lib/services/boards/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { CopyForm } from "../../../copy-form.client.tsx";
import { CopyHead, owners } from "../copy-head.tsx";

export const metadata: Metadata = { title: "Change a copy" };

export default async function EditCopyPage({ params }: { params: Promise<{ slug: string; id: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug, id } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  const copy = board.copies.find((one) => one.id === id);
  if (!copy) notFound();
  const { tag, serial, modifications, jumpers, contents, notes } = copy;
  return (
    <>
      <CopyHead slug={slug} name={board.name} title={`Change the copy ${tag}`} />
      <CopyForm
        board={slug}
        id={id}
        version={copy.version}
        revisions={board.revisions.map((revision) => revision.name)}
        members={await owners(ctx)}
        values={{
          tag,
          serial,
          modifications,
          jumpers,
          contents,
          notes,
          owner: copy.owner?.handle ?? "",
          revision: copy.revision?.name ?? "",
          works: copy.works === null ? "" : copy.works ? "yes" : "no",
        }}
      />
    </>
  );
}
