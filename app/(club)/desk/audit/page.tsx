import type { Metadata } from "next";
import Link from "next/link";
import { auditTrail, ListAudit, type AuditLine } from "#lib/services/history/index.ts";
import { listMembers } from "#lib/services/members/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { FieldRow, SelectField } from "#lib/ui/field.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { clubZone, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import { stewardCtx } from "../steward.ts";

export const metadata: Metadata = { title: "Audit trail" };

export default async function AuditPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const { ctx } = await stewardCtx("/desk/audit");
  const asked = queryOfPage(await searchParams, ListAudit);
  const [{ entries, more, actions }, members, zone] = await Promise.all([
    auditTrail(ctx, asked),
    listMembers(ctx),
    clubZone(),
  ]);
  const isFiltered = Boolean(asked.action ?? asked.member);
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: "Steward’s desk", href: "/desk" }]} />}
        title="Audit trail"
        lead={more ? `The latest ${entries.length} entries.` : `${entries.length} entries.`}
      />
      <form action="/desk/audit" aria-label="Narrow the trail" className="no-print">
        <FieldRow>
          <SelectField
            label="What was done"
            name="action"
            empty="Anything"
            defaultValue={asked.action ?? ""}
            choices={actions.map(({ action, count }) => ({ value: action, label: `${action} (${count})` }))}
          />
          <SelectField
            label="By whom"
            name="member"
            empty="Anybody"
            defaultValue={asked.member ?? ""}
            choices={members.map((one) => ({ value: one.handle, label: one.name }))}
          />
        </FieldRow>
        <ButtonRow>
          <SubmitButton look="quiet" pendingText="Looking …">
            Show these
          </SubmitButton>
          {isFiltered && (
            <ButtonLink href="/desk/audit" look="quiet">
              Show all
            </ButtonLink>
          )}
        </ButtonRow>
      </form>
      {entries.length === 0 ? (
        <EmptyState title="No such entry." />
      ) : (
        <Table label="Audit trail" columns={["When", "What", "Who", "Record", "Details", "From"]}>
          {entries.map((entry) => (
            <tr key={entry.id}>
              <td>
                <TimeText at={entry.at} zone={zone} withClock />
              </td>
              <td>{entry.action}</td>
              <td>
                {entry.by ? (
                  <Link prefetch={false} href={`/members/${entry.by.handle}`}>
                    {entry.by.name}
                  </Link>
                ) : (
                  <span className="soft">the program</span>
                )}
              </td>
              <td>
                <RecordOf entry={entry} />
              </td>
              <td>{entry.detail.map(([name, value]) => `${name}: ${value}`).join("; ")}</td>
              <td className="mono small">{entry.address}</td>
            </tr>
          ))}
        </Table>
      )}
    </>
  );
}

/** Kinds whose history has a page. */
const WITH_HISTORY: readonly string[] = ["case", "board", "chip", "code"];

function RecordOf({ entry: { record } }: { entry: AuditLine }) {
  if (!record) return null;
  if (!WITH_HISTORY.includes(record.kind)) return record.kind;
  return (
    <Link prefetch={false} href={`/history/${record.kind}/${record.id}`}>
      {record.kind}
    </Link>
  );
}
