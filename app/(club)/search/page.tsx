import type { Metadata } from "next";
import Link from "next/link";
import { ServiceError } from "#lib/services/errors.ts";
import type { Ctx } from "#lib/services/context.ts";
import { searchPage, type IndexState, type SearchPage } from "#lib/services/search/index.ts";
import { SearchInput } from "#lib/services/search/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Notice } from "#lib/ui/notice.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { SearchBox } from "#lib/ui/search-box.client.tsx";
import { Columns, Section } from "#lib/ui/section.tsx";
import { Tag, TagList } from "#lib/ui/tag.tsx";
import { OUTCOME_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import { FOUND_WORDS } from "./found-words.ts";
import { Hits } from "./hits.tsx";
import styles from "./search.module.css";

interface SearchPageProps {
  searchParams: Promise<SearchParams>;
}
type Asked = { q?: string; kind?: string; board?: string; outcome?: string; cursor?: string };

export async function generateMetadata({ searchParams }: SearchPageProps): Promise<Metadata> {
  const { q } = queryOfPage(await searchParams, SearchInput);
  return { title: q ? `Search: ${q}` : "Search" };
}

export default async function ResultsPage({ searchParams }: SearchPageProps) {
  const ctx = await pageCtx();
  const { limit: _limit, ...asked } = queryOfPage(await searchParams, SearchInput);
  const found = await searched(ctx, asked);
  const { cursor, ...state } = asked;
  const q = asked.q?.trim() ?? "";
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <h1 className="visually-hidden">{q ? `Search: ${q}` : "Search"}</h1>
      <div className={styles.box}>
        <SearchBox key={q} defaultValue={q} />
      </div>
      <IndexLine state={found.state} />
      <DidYouMean codes={found.didYouMean} state={state} />
      <Kinds found={found} state={state} />
      {found.total === 0 ? (
        <NothingFound found={found} state={state} q={q} isMember={isMember} />
      ) : (
        <Columns>
          <div>
            <p className={styles.total}>
              <output>{totalWords(found, q)}</output>
              <a className={styles.toNarrow} href="#narrow">
                Narrow by board or outcome
              </a>
            </p>
            {found.groups.map((group) => (
              <Section
                key={group.kind}
                id={group.kind}
                title={FOUND_WORDS[group.kind].many}
                count={group.total}
                aside={
                  group.total > group.hits.length && asked.kind !== group.kind ? (
                    <Link prefetch={false} href={pageAddress("/search", { ...state, kind: group.kind })}>
                      All {group.total} {FOUND_WORDS[group.kind].lower}
                    </Link>
                  ) : undefined
                }
              >
                <Hits hits={group.hits} />
              </Section>
            ))}
            <Pager
              label="Results"
              previous={cursor ? pageAddress("/search", state) : undefined}
              next={found.next ? pageAddress("/search", { ...state, cursor: found.next }) : undefined}
              text={cursor ? "Back leads to the best" : ""}
            />
            {q && (found.unrecorded !== null || !found.isCode) && (
              <NotAmongThese code={found.unrecorded} q={q} isMember={isMember} />
            )}
          </div>
          <aside className="no-print" id="narrow">
            <Narrow found={found} state={state} />
          </aside>
        </Columns>
      )}
    </>
  );
}

/** A cursor that no search gave out is as if it were not there. */
async function searched(ctx: Ctx, asked: Asked): Promise<SearchPage> {
  try {
    return await searchPage(ctx, asked);
  } catch (error) {
    if (!(error instanceof ServiceError) || error.code !== "invalid" || !asked.cursor) throw error;
    const { cursor: _cursor, ...rest } = asked;
    return searchPage(ctx, rest);
  }
}

function totalWords({ total, more }: SearchPage, q: string): string {
  const count = more ? `${total}+` : String(total);
  return q ? `${count} found` : `${count} records, the newest first`;
}

function IndexLine({ state }: { state: IndexState }) {
  switch (state) {
    case "ready":
      return null;
    case "building":
      return (
        <output className={styles.line}>
          The search is still reading the records in: some may be missing for a minute.
        </output>
      );
    case "unavailable":
      return (
        <Notice kind="warning" title="The search does not answer just now. No record is lost.">
          <p>
            Try again in a minute, or look through <Link href="/cases">cases</Link>, <Link href="/boards">boards</Link>,{" "}
            <Link href="/chips">chips</Link> and <Link href="/codes">codes</Link>. A steward sees on the desk what is
            wrong.
          </p>
        </Notice>
      );
  }
}

function DidYouMean({ codes, state }: { codes: readonly string[]; state: Asked }) {
  if (codes.length === 0) return null;
  return (
    <p className={styles.line}>
      Nobody has recorded this code. On a worn print it could be{" "}
      {codes.map((code, index) => (
        <span key={code}>
          {index > 0 && " or "}
          <Code code={code} href={pageAddress("/search", { ...state, q: code })} />
        </span>
      ))}
      .
    </p>
  );
}

/** The kinds as a row: the first filter, and on a phone the only one above the results. */
function Kinds({ found, state }: { found: SearchPage; state: Asked }) {
  if (found.kinds.length === 0) return null;
  return (
    <nav aria-label="Kind of record">
      <TagList>
        {[
          <Tag key="all" href={pageAddress("/search", { ...state, kind: undefined })} chosen={!state.kind}>
            Everything
          </Tag>,
          ...found.kinds.map(({ value, count }) => (
            <Tag key={value} href={pageAddress("/search", { ...state, kind: value })} chosen={state.kind === value}>
              {FOUND_WORDS[value].many} <span className="soft">{count}</span>
            </Tag>
          )),
        ]}
      </TagList>
    </nav>
  );
}

function Narrow({ found, state }: { found: SearchPage; state: Asked }) {
  return (
    <>
      {found.boards.length > 0 && (
        <Section id="by-board" title="Board">
          <ul className={styles.facet}>
            {found.boards.map(({ value, name, count }) => (
              <Facet
                key={value}
                href={pageAddress("/search", { ...state, board: state.board === value ? undefined : value })}
                chosen={state.board === value}
                name={name}
                count={count}
              />
            ))}
          </ul>
        </Section>
      )}
      {found.outcomes.length > 0 && (
        <Section id="by-outcome" title="Outcome of the case">
          <ul className={styles.facet}>
            {found.outcomes.map(({ value, count }) => (
              <Facet
                key={value}
                href={pageAddress("/search", { ...state, outcome: state.outcome === value ? undefined : value })}
                chosen={state.outcome === value}
                name={OUTCOME_WORDS[value]}
                count={count}
              />
            ))}
          </ul>
        </Section>
      )}
    </>
  );
}

function Facet({ href, chosen, name, count }: { href: string; chosen: boolean; name: string; count: number }) {
  return (
    <li>
      <Link
        prefetch={false}
        href={href}
        className={chosen ? styles.chosen : undefined}
        aria-current={chosen || undefined}
      >
        {name}
      </Link>{" "}
      <span className="soft">{chosen ? "only these; press to take away" : count}</span>
    </li>
  );
}

interface NothingFoundProps {
  found: SearchPage;
  state: Asked;
  q: string;
  isMember: boolean;
}

function NothingFound({ found, state, q, isMember }: NothingFoundProps) {
  if (found.state === "unavailable") return null;
  const isNarrowed = Boolean(state.kind ?? state.board ?? state.outcome);
  return (
    <EmptyState
      title={q ? `Nothing is recorded for “${q}”${isNarrowed ? " among these" : ""}.` : "Nothing is here yet."}
    >
      {isNarrowed && (
        <p>
          <Link prefetch={false} href={pageAddress("/search", { q })}>
            Search everything instead
          </Link>
        </p>
      )}
      {q && !found.isCode && <p>Try fewer words, or only the code, the board or the place.</p>}
      {q && <WhatToDo code={found.unrecorded} q={q} isMember={isMember} />}
    </EmptyState>
  );
}

function NotAmongThese({ code, q, isMember }: { code: string | null; q: string; isMember: boolean }) {
  return (
    <div className={styles.end}>
      <p>Not among these?</p>
      <WhatToDo code={code} q={q} isMember={isMember} />
    </div>
  );
}

/** A search that found nothing is worth a record: the next one starts there. */
function WhatToDo({ code, q, isMember }: { code: string | null; q: string; isMember: boolean }) {
  if (!isMember) {
    return (
      <p>
        Members record what is missing: <Link href="/signin">sign in</Link> to open a case or record a code.
      </p>
    );
  }
  return (
    <ButtonRow>
      {code ? (
        <ButtonLink href={pageAddress("/codes/new", { code })}>Record the code {code}, known or not</ButtonLink>
      ) : (
        <ButtonLink href={pageAddress("/cases/new", { symptom: q.slice(0, 80) })}>
          Open a case with these words
        </ButtonLink>
      )}
    </ButtonRow>
  );
}
