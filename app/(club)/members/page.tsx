import type { Metadata } from "next";
import Link from "next/link";
import { listMembers } from "#lib/services/members/index.ts";
import { PageHead } from "#lib/ui/section.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone } from "#lib/web/zone.ts";

export const metadata: Metadata = { title: "Members" };

export default async function MembersPage() {
  const ctx = await pageCtx();
  const [members, zone] = [await listMembers(ctx), await clubZone()];
  const active = members.filter((member) => !member.disabled);
  return (
    <>
      <PageHead title="Members" lead={`${active.length} people. New ones come in by a steward's invitation.`} />
      <Table label="Members" columns={["Name", { head: "Cases", number: true }, "Role", "Since", "About"]}>
        {active.map((member) => (
          <tr key={member.handle}>
            <th scope="row">
              <Link prefetch={false} href={`/members/${member.handle}`}>
                {member.name}
              </Link>
            </th>
            <NumberCell>{member.cases}</NumberCell>
            <td>{member.role}</td>
            <td>
              <TimeText at={member.since} zone={zone} />
            </td>
            <td>{member.about}</td>
          </tr>
        ))}
      </Table>
    </>
  );
}
