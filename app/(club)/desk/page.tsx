import type { Metadata } from "next";
import Link from "next/link";
import { listInvitations, listMembers, type InvitationView, type MemberLine } from "#lib/services/members/index.ts";
import { indexState, type IndexState } from "#lib/services/search/index.ts";
import { clubSettings } from "#lib/services/settings/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { KeyValue } from "#lib/ui/key-value.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { SimpleForm } from "#lib/ui/simple-form.client.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { ROLE_WORDS } from "#lib/ui/words.ts";
import { health } from "#lib/web/health.ts";
import { clubZone } from "#lib/web/page.ts";
import { settingsAction } from "./actions.ts";
import { InviteForm, RevokeInvitation } from "./invite.client.tsx";
import { MemberActions } from "./member-actions.client.tsx";
import { stewardCtx } from "./steward.ts";

export const metadata: Metadata = { title: "Steward’s desk" };

export default async function DeskPage() {
  const { ctx, handle } = await stewardCtx("/desk");
  const [invitations, members, settings, parts, state, zone] = await Promise.all([
    listInvitations(ctx),
    listMembers(ctx),
    clubSettings(ctx),
    health(),
    indexState(ctx),
    clubZone(),
  ]);
  const now = ctx.now().toISOString();
  const open = invitations.filter((one) => isOpen(one, now));
  const active = members.filter((one) => !one.disabled).length;
  return (
    <>
      <PageHead title="Steward’s desk" lead="Who comes in, who may do what, and whether the machine is well." />
      <Health parts={parts} state={state} />
      <Section id="invitations" title="Invitations" count={`${open.length} open`}>
        <InviteForm />
        {invitations.length === 0 ? (
          <EmptyState title="Nobody has been invited by a link yet.">
            <p>Make one above. The link can be sent, or read by a phone from this screen.</p>
          </EmptyState>
        ) : (
          <Invitations invitations={invitations} now={now} zone={zone} />
        )}
      </Section>
      <Section id="members" title="Members" count={active}>
        <Members members={members} self={handle} zone={zone} />
      </Section>
      <Section id="settings" title="The club">
        <SimpleForm
          action={settingsAction}
          submit="Save"
          done="Saved."
          fields={[
            { name: "name", label: "Name", value: settings.name, required: true },
            {
              name: "meeting",
              label: "Club night",
              hint: "When and where, in words. It stands on the first page.",
              value: settings.meeting,
              optional: true,
            },
            {
              name: "membersOnly",
              label: "Only members read",
              hint: "Visitors then see nothing but the sign-in page.",
              kind: "checkbox",
              value: settings.membersOnly ? "on" : "",
            },
          ]}
        />
      </Section>
      <Section id="records" title="Records and trail">
        <ul>
          <li>
            <Link href="/imports">Imports</Link>: symbol libraries that were brought in, and bringing in another.
          </li>
          <li>
            <Link href="/desk/audit">Audit trail</Link>: what was done, by whom, and from where.
          </li>
        </ul>
      </Section>
    </>
  );
}

const PART_WORDS = { database: "Database", search: "Search", storage: "Photos and files" } as const;
const STATE_WORDS: Record<IndexState, string> = {
  ready: "",
  building: ", still reading the records in",
  unavailable: ", not answering",
};

function Health({ parts, state }: { parts: Awaited<ReturnType<typeof health>>; state: IndexState }) {
  const broken = Object.values(parts).some((part) => !part.usable);
  const names = Object.keys(PART_WORDS) as (keyof typeof PART_WORDS)[];
  return (
    <Section id="health" title="Health">
      {broken && (
        <Notice kind="warning" title="A part of the machine cannot be used.">
          <p>The line below says which and why. Records are not lost by this; writing is refused where it must be.</p>
        </Notice>
      )}
      <KeyValue
        items={names.map((name) => ({
          name: PART_WORDS[name],
          value: `${parts[name].usable ? "usable" : "not usable"}: ${parts[name].says}${name === "search" ? STATE_WORDS[state] : ""}`,
        }))}
      />
    </Section>
  );
}

function isOpen({ usesLeft, revoked, expiresAt }: InvitationView, now: string): boolean {
  return usesLeft > 0 && !revoked && expiresAt > now;
}

function stateWords(one: InvitationView, now: string): string {
  if (one.revoked) return "revoked";
  if (one.usesLeft < 1) return "used up";
  if (one.expiresAt <= now) return "too old";
  return one.usesLeft === 1 ? "open, 1 place" : `open, ${one.usesLeft} places`;
}

function Invitations({ invitations, now, zone }: { invitations: InvitationView[]; now: string; zone: string }) {
  return (
    <Table
      label="Invitations"
      columns={["For", "State", "Good until", "Role", "From", "Came in", { head: "Revoke", hidden: true }]}
    >
      {invitations.map((one) => (
        <tr key={one.id}>
          <th scope="row">{one.note || <span className="soft">no note</span>}</th>
          <td>{stateWords(one, now)}</td>
          <td>
            <TimeText at={one.expiresAt} zone={zone} />
          </td>
          <td>{one.role}</td>
          <td>{one.by}</td>
          <td>{one.joined.map((member) => member.name).join(", ")}</td>
          <td>{isOpen(one, now) && <RevokeInvitation id={one.id} note={one.note} />}</td>
        </tr>
      ))}
    </Table>
  );
}

function Members({ members, self, zone }: { members: MemberLine[]; self: string; zone: string }) {
  return (
    <Table label="Members" columns={["Name", "Role", "Manage", "Short name", { head: "Cases", number: true }, "Since"]}>
      {members.map((one) => (
        <tr key={one.handle}>
          <th scope="row">
            <Link prefetch={false} href={`/members/${one.handle}`}>
              {one.name}
            </Link>
          </th>
          <td>{one.disabled ? "shut" : ROLE_WORDS[one.role]}</td>
          <td>
            <MemberActions
              handle={one.handle}
              name={one.name}
              role={one.role}
              disabled={one.disabled}
              isSelf={one.handle === self}
            />
          </td>
          <td>{one.handle}</td>
          <NumberCell>{one.cases || ""}</NumberCell>
          <td>
            <TimeText at={one.since} zone={zone} />
          </td>
        </tr>
      ))}
    </Table>
  );
}
