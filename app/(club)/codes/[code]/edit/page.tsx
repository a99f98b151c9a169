import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { listHouses, readCodeView } from "#lib/services/codes/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { addressPart, orNotFound } from "#lib/web/page.ts";
import { CodeForm } from "../../code-form.client.tsx";

export const metadata: Metadata = { title: "Change a code" };

export default async function EditCodePage({ params }: { params: Promise<{ code: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const asked = addressPart((await params).code);
  const [code, houses] = await Promise.all([orNotFound(() => readCodeView(ctx, asked)), listHouses(ctx)]);
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Codes", href: "/codes" },
              { text: code.code, href: `/codes/${code.id}` },
            ]}
          />
        }
        kind="Change the code"
        title={code.code}
        mono
      />
      <CodeForm
        id={code.id}
        version={code.version}
        values={{ code: code.code, house: code.house?.slug ?? "", notes: code.notes }}
        chip={code.chip}
        houses={houses.map((one) => ({ value: one.slug, label: one.name }))}
      />
    </>
  );
}
