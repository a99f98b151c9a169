import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readClaim } from "#lib/services/codes/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound, type SearchParams } from "#lib/web/page.ts";
import { recordId } from "#lib/web/record-id.ts";
import { ClaimEditForm } from "../../../claim-edit.client.tsx";

export const metadata: Metadata = { title: "Change a claim" };

interface EditClaimPageProps {
  params: Promise<{ id: string }>;
  searchParams: Promise<SearchParams>;
}

export default async function EditClaimPage({ params, searchParams }: EditClaimPageProps) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { id } = await params;
  const claim = await orNotFound(async () => readClaim(ctx, recordId(id, "claim")));
  const { from, to } = claim;
  const back = (await searchParams)["code"] === to.id ? to : from;
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Codes", href: "/codes" },
              { text: back.code, href: `/codes/${back.id}#claim-${claim.id}` },
            ]}
          />
        }
        kind="Change the claim"
        title={`${to.code} where ${from.code} was`}
        lead={`What is said of fitting ${to.code} in place of ${from.code}. The evidence stays as it is.`}
      />
      <ClaimEditForm
        id={claim.id}
        version={claim.version}
        values={{
          grade: claim.grade,
          bothWays: claim.bothWays,
          conditions: claim.conditions.join("\n"),
          note: claim.note,
        }}
        codeId={back.id}
      />
    </>
  );
}
