import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readBoard } from "#lib/services/boards/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { CopyForm } from "../../../copy-form.client.tsx";
import { CopyHead, owners } from "../copy-head.tsx";

export const metadata: Metadata = { title: "Add a copy" };

export default async function NewCopyPage({ params }: { params: Promise<{ slug: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  return (
    <>
      <CopyHead slug={slug} name={board.name} title="Add a copy" />
      <CopyForm
        board={slug}
        revisions={board.revisions.map((revision) => revision.name)}
        members={await owners(ctx)}
        values={{
          tag: "",
          owner: ctx.actor.handle,
          revision: "",
          serial: "",
          modifications: "",
          jumpers: "",
          contents: "",
          works: "",
          notes: "",
        }}
      />
    </>
  );
}
