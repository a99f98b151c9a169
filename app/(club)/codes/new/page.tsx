import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readChip } from "#lib/services/chips/index.ts";
import { listHouses } from "#lib/services/codes/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound, type SearchParams } from "#lib/web/page.ts";
import { CodeForm } from "../code-form.client.tsx";

export const metadata: Metadata = { title: "Record a code" };

export default async function NewCodePage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { code, chip: slug } = await searchParams;
  const [houses, chip] = await Promise.all([
    listHouses(ctx),
    typeof slug === "string" ? orNotFound(() => readChip(ctx, slug)) : null,
  ]);
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Codes", href: "/codes" }]} />}
        title="Record a code"
        lead="Known or not: the next member who meets it starts from here."
      />
      <CodeForm
        values={{ code: typeof code === "string" ? code.slice(0, 80) : "", house: "", notes: "" }}
        chip={chip && { slug: chip.slug, name: chip.name }}
        houses={houses.map((one) => ({ value: one.slug, label: one.name }))}
      />
    </>
  );
}
