import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import type { SearchParams } from "#lib/web/page.ts";
import { ChipForm } from "../chip-form.client.tsx";

export const metadata: Metadata = { title: "Record a chip" };

export default async function NewChipPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { name } = await searchParams;
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Chips", href: "/chips" }]} />}
        title="Record a chip"
        lead="Its pins can be pasted, one a line, and are drawn while you type."
      />
      <ChipForm
        values={{
          name: typeof name === "string" ? name.slice(0, 80) : "",
          function: "",
          technology: "unknown",
          contents: "none",
          contentsRef: "",
          dataSheet: "",
          notes: "",
        }}
        packages={[{ name: "", style: "", pins: "" }]}
      />
    </>
  );
}
