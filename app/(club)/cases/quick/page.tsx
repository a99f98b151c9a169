import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { readBoard } from "#lib/services/boards/index.ts";
import { symptomVocabulary } from "#lib/services/cases/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound, type SearchParams } from "#lib/web/page.ts";
import { QuickForm } from "./quick-form.client.tsx";

export const metadata: Metadata = { title: "Record a finished repair" };

export default async function QuickPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { board: slug } = await searchParams;
  const [symptoms, board] = await Promise.all([
    symptomVocabulary(ctx),
    typeof slug === "string" && slug !== "" ? orNotFound(() => readBoard(ctx, slug)) : null,
  ]);
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Cases", href: "/cases" }]} />}
        title="Record a finished repair"
        lead="Four lines, and the next member with this symptom starts where you stopped. Readings can follow."
      >
        <p>
          Still searching? <Link href="/cases/new">Open a case</Link> instead.
        </p>
      </PageHead>
      <QuickForm
        symptoms={symptoms.map(({ slug: value, label, cases }) => ({
          value,
          label,
          hint: cases === 1 ? "1 case" : `${cases} cases`,
        }))}
        board={board && { slug: board.slug, name: board.name }}
      />
    </>
  );
}
