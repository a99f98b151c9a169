import type { Metadata } from "next";
import Link from "next/link";
import { CONTENTS_KINDS, TECHNOLOGIES } from "#lib/core/shared/index.ts";
import { listChips } from "#lib/services/chips/index.ts";
import { ListChips } from "#lib/services/chips/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { CONTENTS_WORDS, TECHNOLOGY_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";

export const metadata: Metadata = { title: "Chips" };

export default async function ChipsPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  const asked = queryOfPage(await searchParams, ListChips);
  const { chips, total, next } = await listChips(ctx, { ...asked, limit: 100 });
  const { q, technology, contents, cursor } = asked;
  const filter = { q, technology, contents };
  const isFiltered = Boolean(q ?? technology ?? contents);
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <PageHead title="Chips" lead="What a part does, what each of its pins is for, and which boards carry it.">
        {isMember && (
          <ButtonRow>
            <ButtonLink href="/chips/new" look="main">
              Record a chip
            </ButtonLink>
            <ButtonLink href="/imports">Import a symbol library</ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <form action="/chips" aria-label="Narrow the list" className="no-print">
        <FieldRow>
          <TextField
            label="Number, name or what it does"
            name="q"
            mono
            defaultValue={q}
            hint="However it is written: SN74LS244N, 74 ls 244"
          />
          <SelectField
            label="Technology"
            name="technology"
            choices={choicesOf(TECHNOLOGIES, TECHNOLOGY_WORDS)}
            empty="Any"
            defaultValue={technology ?? ""}
          />
          <SelectField
            label="Contents"
            name="contents"
            choices={choicesOf(CONTENTS_KINDS, CONTENTS_WORDS)}
            empty="Any"
            defaultValue={contents ?? ""}
          />
        </FieldRow>
        <ButtonRow>
          <SubmitButton look="quiet" pendingText="Looking …">
            Show these
          </SubmitButton>
          {isFiltered && (
            <ButtonLink href="/chips" look="quiet">
              Show all
            </ButtonLink>
          )}
        </ButtonRow>
      </form>
      {chips.length === 0 ? (
        <EmptyState title={isFiltered ? "No chip fits this." : "No chip is recorded yet."}>
          {isFiltered ? (
            <p>
              Try fewer letters. A house code is under <Link href="/codes">codes</Link>.
            </p>
          ) : (
            <p>
              {isMember
                ? "Record one, or import a symbol library."
                : "Members record chips or import a symbol library."}
            </p>
          )}
        </EmptyState>
      ) : (
        <Table
          label="Chips"
          caption={`${total} ${total === 1 ? "chip" : "chips"}`}
          columns={[
            "Chip",
            "What it does",
            "Technology",
            "Packages",
            { head: "Codes", number: true },
            { head: "Boards", number: true },
          ]}
        >
          {chips.map((chip) => (
            <tr key={chip.id}>
              <th scope="row">
                <Code code={chip.name} href={`/chips/${chip.slug}`} />
              </th>
              <td>{chip.function}</td>
              <td>{chip.technology === "unknown" ? "" : TECHNOLOGY_WORDS[chip.technology]}</td>
              <td>{chip.packages.join(", ")}</td>
              <NumberCell>{chip.codes || ""}</NumberCell>
              <NumberCell>{chip.boards || ""}</NumberCell>
            </tr>
          ))}
        </Table>
      )}
      <Pager
        label="Chips"
        previous={cursor ? pageAddress("/chips", filter) : undefined}
        next={next ? pageAddress("/chips", { ...filter, cursor: next }) : undefined}
        text={`${total} in all`}
      />
    </>
  );
}
