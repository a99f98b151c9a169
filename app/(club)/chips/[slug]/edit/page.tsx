import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { printPinLines } from "#lib/core/pinout/index.ts";
import { readChip } from "#lib/services/chips/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { ChipForm } from "../../chip-form.client.tsx";

interface EditChipPageProps {
  params: Promise<{ slug: string }>;
}

export async function generateMetadata({ params }: EditChipPageProps): Promise<Metadata> {
  return { title: `Change ${(await params).slug}` };
}

export default async function EditChipPage({ params }: EditChipPageProps) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug } = await params;
  const chip = await orNotFound(() => readChip(ctx, slug));
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Chips", href: "/chips" },
              { text: chip.name, href: `/chips/${slug}` },
            ]}
          />
        }
        kind="Change the chip"
        title={chip.name}
        mono
        {...(chip.source && {
          lead: `Imported from ${chip.source}: a later import of that library shows what it would change.`,
        })}
      />
      <ChipForm
        slug={slug}
        version={chip.version}
        values={{
          name: chip.name,
          function: chip.function,
          technology: chip.technology,
          contents: chip.contents,
          contentsRef: chip.contentsRef,
          dataSheet: chip.dataSheet,
          notes: chip.notes,
        }}
        packages={chip.packages.map((one) => ({ name: one.name, style: one.style, pins: printPinLines(one.pins) }))}
      />
    </>
  );
}
