import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readBoard } from "#lib/services/boards/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { FactsForm } from "../../facts-form.client.tsx";
import { typedFacts } from "../../typed-rows.ts";
import { EditHead } from "./steps.tsx";

export const metadata: Metadata = { title: "Change a board" };

export default async function EditBoardPage({ params }: { params: Promise<{ slug: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  return (
    <>
      <EditHead slug={slug} name={board.name} part="" title={board.name} />
      <FactsForm slug={slug} version={board.version} values={typedFacts(board)} />
    </>
  );
}
