import type { Metadata } from "next";
import { readBoard } from "#lib/services/boards/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { HistoryPage } from "../../../history/history-page.tsx";

export const metadata: Metadata = { title: "History of a board" };

export default async function BoardHistoryPage({ params }: { params: Promise<{ slug: string }> }) {
  const { slug } = await params;
  const ctx = await pageCtx();
  const { id } = await orNotFound(() => readBoard(ctx, slug));
  return <HistoryPage kind="board" id={id} />;
}
