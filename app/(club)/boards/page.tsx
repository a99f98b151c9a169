import type { Metadata } from "next";
import Link from "next/link";
import { BOARD_KINDS, type BoardKind } from "#lib/core/shared/index.ts";
import { listBoards, type BoardLine } from "#lib/services/boards/index.ts";
import { ListBoards } from "#lib/services/boards/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { BOARD_KIND_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";

export const metadata: Metadata = { title: "Boards" };

export default async function BoardsPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  const asked = queryOfPage(await searchParams, ListBoards);
  const { boards, next } = await listBoards(ctx, { ...asked, limit: 200 });
  const { q, kind, cursor } = asked;
  const isFiltered = Boolean(q ?? kind);
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <PageHead title="Boards" lead="How a board is built, and how it fails.">
        {isMember && (
          <ButtonRow>
            <ButtonLink href="/boards/new" look="main">
              Record a board
            </ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <form action="/boards" aria-label="Narrow the list" className="no-print">
        <FieldRow>
          <TextField label="Name, maker or machine" name="q" defaultValue={q} />
          <SelectField
            label="Kind"
            name="kind"
            choices={choicesOf(BOARD_KINDS, BOARD_KIND_WORDS)}
            empty="Any"
            defaultValue={kind ?? ""}
          />
        </FieldRow>
        <ButtonRow>
          <SubmitButton look="quiet" pendingText="Looking …">
            Show these
          </SubmitButton>
          {isFiltered && (
            <ButtonLink href="/boards" look="quiet">
              Show all
            </ButtonLink>
          )}
        </ButtonRow>
      </form>
      {boards.length === 0 && <NoBoards isFiltered={isFiltered} isMember={isMember} />}
      {BOARD_KINDS.map((one) => ({ one, lines: boards.filter((board) => board.kind === one) }))
        .filter(({ lines }) => lines.length > 0)
        .map(({ one, lines }) => (
          <Kind key={one} kind={one} boards={lines} />
        ))}
      <Pager
        label="Boards"
        previous={cursor ? pageAddress("/boards", { q, kind }) : undefined}
        next={next ? pageAddress("/boards", { q, kind, cursor: next }) : undefined}
        text={cursor ? "Further boards" : ""}
      />
    </>
  );
}

function NoBoards({ isFiltered, isMember }: { isFiltered: boolean; isMember: boolean }) {
  if (isFiltered) {
    return (
      <EmptyState title="No board fits this.">
        <p>Try fewer letters, or any kind.</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState title="No board is recorded yet.">
      <p>
        {isMember ? (
          <>
            <Link href="/boards/new">Add the first board</Link>: its name, its rails and a pasted parts list are enough.
          </>
        ) : (
          "Members add boards: a name, the rails and a pasted parts list are enough."
        )}
      </p>
    </EmptyState>
  );
}

function Kind({ kind, boards }: { kind: BoardKind; boards: readonly BoardLine[] }) {
  const word = BOARD_KIND_WORDS[kind];
  return (
    <Section id={kind} title={`${word.slice(0, 1).toUpperCase()}${word.slice(1)}`} count={boards.length}>
      <Table
        label={`Boards: ${word}`}
        columns={[
          "Board",
          { head: "Cases", number: true, narrow: true },
          { head: "Cured", number: true, narrow: true },
          "Maker and machine",
          { head: "Year", number: true, narrow: true },
          { head: "Parts", number: true, narrow: true },
          { head: "Copies", number: true, narrow: true },
        ]}
      >
        {boards.map((board) => (
          <tr key={board.slug}>
            <th scope="row">
              <Link prefetch={false} href={`/boards/${board.slug}`}>
                {board.name}
              </Link>
            </th>
            <NumberCell>{board.cases || ""}</NumberCell>
            <NumberCell>{board.cured || ""}</NumberCell>
            <td>{[board.maker, board.machine].filter(Boolean).join(", ")}</td>
            <NumberCell>{board.year}</NumberCell>
            <NumberCell>{board.placements || ""}</NumberCell>
            <NumberCell>{board.copies || ""}</NumberCell>
          </tr>
        ))}
      </Table>
    </Section>
  );
}
