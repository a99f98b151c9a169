import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { listImports } from "#lib/services/imports/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone } from "#lib/web/page.ts";
import { UploadForm } from "./upload-form.client.tsx";

export const metadata: Metadata = { title: "Import" };

export default async function ImportsPage() {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const [imports, zone] = await Promise.all([listImports(ctx), clubZone()]);
  return (
    <>
      <PageHead
        title="Import a symbol library"
        lead="Pin tables of many chips at once, out of a .kicad_sym file. First a dry run shows what would change; nothing is written until you say so."
      />
      <UploadForm />
      <Section id="earlier" title="Earlier imports" count={imports.length}>
        {imports.length === 0 ? (
          <EmptyState title="Nothing has been imported yet.">
            <p>Choose a file above.</p>
          </EmptyState>
        ) : (
          <Table
            label="Earlier imports"
            columns={[
              "File",
              "By",
              "When",
              "State",
              { head: "New", number: true },
              { head: "Changed", number: true },
              { head: "Same", number: true },
              { head: "Refused", number: true },
            ]}
          >
            {imports.map((one) => (
              <tr key={one.id}>
                <th scope="row">
                  <Link prefetch={false} href={`/imports/${one.id}`}>
                    {one.fileName}
                  </Link>
                </th>
                <td>{one.by.name}</td>
                <td>
                  <TimeText at={one.createdAt} zone={zone} withClock />
                </td>
                <td>{one.state === "committed" ? "written" : "dry run only"}</td>
                <NumberCell>{one.counts.new}</NumberCell>
                <NumberCell>{one.counts.changed}</NumberCell>
                <NumberCell>{one.counts.same}</NumberCell>
                <NumberCell>{one.counts.refused}</NumberCell>
              </tr>
            ))}
          </Table>
        )}
      </Section>
    </>
  );
}
