import type { Metadata } from "next";
import Link from "next/link";
import { listCodes, listHouses, type CodeLine, type HouseView } from "#lib/services/codes/index.ts";
import { ListCodes } from "#lib/services/codes/schema.ts";
import { proseOf, type Prose as ProseTree } from "#lib/services/prose/index.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Prose } from "#lib/ui/prose.tsx";
import { Columns, PageHead, Section } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import { HouseForm } from "./house-form.client.tsx";

export const metadata: Metadata = { title: "Codes" };

export default async function CodesPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  const { q, house, unknown, cursor } = queryOfPage(await searchParams, ListCodes);
  const filter = { q, house, unknown };
  const isFiltered = Boolean(q ?? house ?? unknown);
  const [list, waiting, houses] = await Promise.all([
    listCodes(ctx, { ...filter, cursor, limit: 100 }),
    isFiltered || cursor ? null : listCodes(ctx, { unknown: "true", limit: 20 }),
    listHouses(ctx),
  ]);
  const houseNotes = await proseOf(
    ctx,
    houses.map((one) => one.notes),
  );
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <PageHead
        title="Codes"
        lead="What is printed on packages: who prints it, what it is, and what can stand in for it."
      >
        {isMember && (
          <ButtonRow>
            <ButtonLink href={pageAddress("/codes/new", { code: list.total === 0 ? q : undefined })} look="main">
              Record a code
            </ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <Columns>
        <div>
          <form action="/codes" aria-label="Narrow the list" className="no-print">
            <FieldRow>
              <TextField
                label="Code or house"
                name="q"
                mono
                defaultValue={q}
                hint="However it is written: VQ4 0061, vq4-0061"
              />
              <SelectField
                label="House"
                name="house"
                empty="Any"
                defaultValue={house ?? ""}
                choices={houses.map((one) => ({ value: one.slug, label: one.name }))}
              />
              <SelectField
                label="What it is"
                name="unknown"
                empty="Known or not"
                defaultValue={unknown ?? ""}
                choices={[
                  { value: "true", label: "waits for a name" },
                  { value: "false", label: "known" },
                ]}
              />
            </FieldRow>
            <ButtonRow>
              <SubmitButton look="quiet" pendingText="Looking …">
                Show these
              </SubmitButton>
              {isFiltered && (
                <ButtonLink href="/codes" look="quiet">
                  Show all
                </ButtonLink>
              )}
            </ButtonRow>
          </form>
          {waiting && waiting.total > 0 && (
            <Section
              id="waiting"
              title="Waiting for a name"
              count={waiting.total}
              aside={waiting.next && <Link href="/codes?unknown=true">All of them</Link>}
            >
              <p>Has anyone met one of these? A sighting, a date code or a chip that it behaves like helps.</p>
              <CodeTable label="Codes that wait for a name" codes={waiting.codes} />
            </Section>
          )}
          <Section id="all" title={isFiltered ? "What fits" : "All codes"} count={list.total}>
            {list.codes.length === 0 ? (
              <NoCode q={q} isFiltered={isFiltered} isMember={isMember} />
            ) : (
              <CodeTable label="Codes" codes={list.codes} />
            )}
            <Pager
              label="Codes"
              previous={cursor ? pageAddress("/codes", filter) : undefined}
              next={list.next ? pageAddress("/codes", { ...filter, cursor: list.next }) : undefined}
              text={`${list.total} in all`}
            />
          </Section>
        </div>
        <aside>
          <Houses houses={houses} prose={houseNotes} isMember={isMember} />
        </aside>
      </Columns>
    </>
  );
}

function NoCode({ q, isFiltered, isMember }: { q: string | undefined; isFiltered: boolean; isMember: boolean }) {
  if (!isFiltered) {
    return (
      <EmptyState title="No code is recorded yet.">
        <p>Read one off a package and record it, known or not: the next member who meets it starts from there.</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState title={q ? `Nobody has recorded ${q} yet.` : "No code fits this."}>
      {q && isMember && <ButtonLink href={pageAddress("/codes/new", { code: q })}>Record {q}, known or not</ButtonLink>}
    </EmptyState>
  );
}

function CodeTable({ label, codes }: { label: string; codes: readonly CodeLine[] }) {
  return (
    <Table
      label={label}
      columns={[
        "Code",
        "House",
        "What it is",
        "Seen last",
        { head: "Sightings", number: true },
        { head: "Claims", number: true },
      ]}
    >
      {codes.map((line) => (
        <tr key={line.id}>
          <th scope="row">
            <Code code={line.code} href={`/codes/${line.id}`} />
          </th>
          <td>{line.house?.name}</td>
          <td>
            {line.chip ? (
              <>
                <Code code={line.chip.name} href={`/chips/${line.chip.slug}`} /> {line.chip.function}
              </>
            ) : (
              <span className="soft">not known</span>
            )}
          </td>
          <td>
            {line.lastSeen && (
              <>
                {line.lastSeen.board?.name} {line.lastSeen.at && <Place at={line.lastSeen.at} />}
              </>
            )}
          </td>
          <NumberCell>{line.sightings || ""}</NumberCell>
          <NumberCell>{line.claims || ""}</NumberCell>
        </tr>
      ))}
    </Table>
  );
}

interface HousesProps {
  houses: readonly HouseView[];
  prose: readonly ProseTree[];
  isMember: boolean;
}

function Houses({ houses, prose, isMember }: HousesProps) {
  return (
    <Section id="houses" title="Houses" count={houses.length}>
      {houses.length === 0 && (
        <EmptyState title="No house yet.">
          <p>A house is a maker that prints codes of its own.</p>
        </EmptyState>
      )}
      <ul>
        {houses.map((one, index) => (
          <li key={one.slug}>
            <Link prefetch={false} href={pageAddress("/codes", { house: one.slug })}>
              {one.name}
            </Link>{" "}
            <span className="soft">{one.codes}</span>
            {one.notes && prose[index] && <Prose tree={prose[index]} />}
          </li>
        ))}
      </ul>
      {isMember && (
        <details>
          <summary>Add a house</summary>
          <HouseForm />
        </details>
      )}
    </Section>
  );
}
