import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { listCases } from "#lib/services/cases/index.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { readMember } from "#lib/services/members/index.ts";
import { listSpares } from "#lib/services/spares/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { Table } from "#lib/ui/table.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone } from "#lib/web/zone.ts";

interface Props {
  params: Promise<{ handle: string }>;
}

async function load(handle: string) {
  const ctx = await pageCtx();
  try {
    const member = await readMember(ctx, handle);
    const [{ cases, total }, spares] = [
      await listCases(ctx, { author: handle, limit: 30 }),
      await listSpares(ctx, { member: handle }),
    ];
    return { member, cases, total, spares };
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") notFound();
    throw error;
  }
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await params).handle };
}

export default async function MemberPage({ params }: Props) {
  const { member, cases, total, spares } = await load((await params).handle);
  const zone = await clubZone();
  return (
    <>
      <PageHead
        kind="Member"
        title={member.name}
        lead={member.about}
        meta={[member.role, <TimeText key="since" at={member.since} zone={zone} />]}
      />
      <Section id="cases" title="Cases" count={total}>
        {cases.length === 0 ? (
          <EmptyState title="No case yet." />
        ) : (
          <Table label="Cases" columns={["Case", "Outcome", "Board", "Opened"]}>
            {cases.map((one) => (
              <tr key={one.number}>
                <th scope="row">
                  <Link prefetch={false} href={`/cases/${one.number}`}>
                    {one.title}
                  </Link>
                </th>
                <td>
                  <OutcomeMark outcome={one.outcome} />
                </td>
                <td>
                  {one.board && (
                    <Link prefetch={false} href={`/boards/${one.board.slug}`}>
                      {one.board.name}
                    </Link>
                  )}
                </td>
                <td>
                  <TimeText at={one.openedAt} zone={zone} />
                </td>
              </tr>
            ))}
          </Table>
        )}
        {total > cases.length && (
          <p>
            <Link prefetch={false} href={`/cases?author=${member.handle}`}>
              All {total} cases
            </Link>
          </p>
        )}
      </Section>
      {member.copies.length > 0 && (
        <Section id="boards" title="Boards they own" count={member.copies.length}>
          <ul>
            {member.copies.map((copy) => (
              <li key={`${copy.board.slug} ${copy.tag}`}>
                <Link prefetch={false} href={`/boards/${copy.board.slug}#copies`}>
                  {copy.board.name}
                </Link>
                , {copy.tag}
                {copy.works === null ? "" : copy.works ? ", works" : ", does not work"}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {spares.length > 0 && (
        <Section id="spares" title="Spares" count={spares.length}>
          <ul>
            {spares.map((spare) => (
              <li key={spare.id}>
                {spare.direction === "offer" ? "Offers" : "Seeks"} {spare.quantity} ×{" "}
                {spare.code?.code ?? spare.chip?.name ?? spare.board?.name ?? spare.note}
                {spare.condition && `, ${spare.condition}`}
              </li>
            ))}
          </ul>
        </Section>
      )}
      {member.confirmations.length > 0 && (
        <Section id="confirmations" title="What helped them, and what did not" count={member.confirmations.length}>
          <ul>
            {member.confirmations.map((one) => (
              <li key={`${one.number} ${one.at}`}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  {one.title}
                </Link>
                : {one.helped ? "cured mine" : "did not help mine"}
                {one.note && `. ${one.note}`}
              </li>
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}
