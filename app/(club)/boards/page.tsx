import type { Metadata } from "next";
import Link from "next/link";
import { Fragment } from "react";
import { BOARD_KINDS } from "#lib/core/shared/index.ts";
import { listBoards, type BoardLine } from "#lib/services/boards/index.ts";
import { ListBoards } from "#lib/services/boards/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { choicesOf, FieldRow, SelectField, TextField } from "#lib/ui/field.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { BOARD_KIND_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import styles from "./board.module.css";

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
      {boards.length > 0 && <BoardsByKind boards={boards} />}
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

/** One table, so that the columns of all kinds stand below each other. */
function BoardsByKind({ boards }: { boards: readonly BoardLine[] }) {
  const groups = BOARD_KINDS.map((kind) => ({ kind, lines: boards.filter((board) => board.kind === kind) }));
  return (
    <Table
      label="Boards by kind"
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
      {groups
        .filter(({ lines }) => lines.length > 0)
        .map(({ kind, lines }) => (
          <Fragment key={kind}>
            <tr className={styles.group} id={kind}>
              <th scope="rowgroup" colSpan={7}>
                {BOARD_KIND_WORDS[kind]} <span className="soft">{lines.length}</span>
              </th>
            </tr>
            {lines.map((board) => (
              <BoardRow key={board.slug} board={board} />
            ))}
          </Fragment>
        ))}
    </Table>
  );
}

function BoardRow({ board }: { board: BoardLine }) {
  return (
    <tr>
      <th scope="row" className={styles.name}>
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
  );
}
