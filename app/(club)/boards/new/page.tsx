import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import type { SearchParams } from "#lib/web/page.ts";
import { NewBoardForm } from "./new-board.client.tsx";

export const metadata: Metadata = { title: "Record a board" };

export default async function NewBoardPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { name } = await searchParams;
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Boards", href: "/boards" }]} />}
        title="Record a board"
        lead="A name is enough to begin with. A pasted parts list makes every part a place that can be measured."
      />
      <NewBoardForm name={typeof name === "string" ? name.slice(0, 120) : ""} />
    </>
  );
}
