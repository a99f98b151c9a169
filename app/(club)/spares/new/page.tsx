import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import type { SearchParams } from "#lib/web/page.ts";
import { SpareForm } from "../spare-form.client.tsx";

export const metadata: Metadata = { title: "Offer or look for a part" };

export default async function NewSparePage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin?next=/spares/new");
  const { direction, code } = await searchParams;
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Spares", href: "/spares" }]} />}
        title="Offer or look for a part"
        lead="A code, a chip, a donor board, or something that only the note can say: one of them is enough."
      />
      <SpareForm
        values={{
          direction: direction === "want" ? "want" : "offer",
          code: typeof code === "string" ? code.slice(0, 80) : "",
          chip: "",
          chipName: "",
          board: "",
          boardName: "",
          quantity: "1",
          condition: "",
          note: "",
          visibility: "members",
        }}
      />
    </>
  );
}
