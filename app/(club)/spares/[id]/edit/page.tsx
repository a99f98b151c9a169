import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { readSpare } from "#lib/services/spares/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { recordId } from "#lib/web/record-id.ts";
import { SpareForm } from "../../spare-form.client.tsx";
import { spareValues } from "../../spare-values.ts";

export const metadata: Metadata = { title: "Change a spare" };

export default async function EditSparePage({ params }: { params: Promise<{ id: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin?next=/spares");
  const { id } = await params;
  const spare = await orNotFound(() => readSpare(ctx, recordId(id, "spare")));
  if (!spare.mine && ctx.actor.role !== "steward") notFound();
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Spares", href: "/spares" }]} />}
        title="Change a spare"
        lead={spare.mine ? undefined : `Put on the list by ${spare.member.name}.`}
      />
      <SpareForm id={spare.id} version={spare.version} values={spareValues(spare)} />
    </>
  );
}
