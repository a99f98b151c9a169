import type { Metadata } from "next";
import Link from "next/link";
import { clubOverview, type ClubOverview } from "#lib/services/overview/index.ts";
import { clubSettings } from "#lib/services/settings/index.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { Place } from "#lib/ui/place.tsx";
import { SearchBox } from "#lib/ui/search-box.client.tsx";
import { Columns, Section } from "#lib/ui/section.tsx";
import { Tag, TagList } from "#lib/ui/tag.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { BOARD_KIND_WORDS, FAILURE_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, pageAddress } from "#lib/web/page.ts";
import styles from "./first-page.module.css";

export async function generateMetadata(): Promise<Metadata> {
  return { title: { absolute: (await clubSettings(await pageCtx())).name } };
}

export default async function FirstPage() {
  const ctx = await pageCtx();
  const [club, overview, zone] = await Promise.all([clubSettings(ctx), clubOverview(ctx), clubZone()]);
  const isMember = ctx.actor.kind === "member";
  return (
    <>
      <header className={styles.ask}>
        <p className={styles.club}>
          <strong>{club.name}</strong>
          {club.meeting && <span>Club night: {club.meeting}</span>}
        </p>
        <h1>Has anyone met this?</h1>
        <SearchBox large placeholder="no picture, U7, 74LS244 …" />
        <p className={styles.how}>
          A symptom, a board, a place such as <Place at="U7.14" />, or a code however it is written.
        </p>
        {overview.symptoms.length > 0 && (
          <TagList label="Most met symptoms">
            {overview.symptoms.map(({ slug, label, cases }) => (
              <Tag key={slug} href={pageAddress("/cases", { symptom: slug })}>
                {label} <span className="soft">{cases}</span>
              </Tag>
            ))}
          </TagList>
        )}
      </header>
      {overview.isEmpty ? (
        <EmptyClub isMember={isMember} isSteward={ctx.actor.kind === "member" && ctx.actor.role === "steward"} />
      ) : (
        <Columns>
          <div>
            {isMember && <Mine mine={overview.mine} />}
            <Asking overview={overview} zone={zone} />
            <CuredLately cured={overview.cured} zone={zone} />
          </div>
          <aside>
            {!isMember && <Visitor name={club.name} />}
            <UnknownCodes overview={overview} />
            <Boards boards={overview.boards} />
          </aside>
        </Columns>
      )}
    </>
  );
}

function Asking({ overview, zone }: { overview: ClubOverview; zone: string }) {
  const { asking, askingInAll } = overview;
  return (
    <Section
      id="asking"
      title="Who can help?"
      count={askingInAll}
      aside={
        askingInAll > asking.length && (
          <Link prefetch={false} href="/cases?asksHelp=true">
            All of them
          </Link>
        )
      }
    >
      {asking.length === 0 ? (
        <EmptyState title="Nobody waits for help.">
          <p>Stuck on a board? Say in its case what you need: a reading from a good one, a part, a second look.</p>
        </EmptyState>
      ) : (
        <ul className={styles.lines}>
          {asking.map((one) => (
            <li key={one.number}>
              <p className={styles.title}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  {one.title}
                </Link>
              </p>
              <p className={styles.words}>{one.asks}</p>
              <p className={styles.facts}>
                <span>{one.board?.name ?? "board without a record"}</span>
                <span>
                  {one.by}, <TimeText at={one.openedAt} zone={zone} />
                </span>
              </p>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function CuredLately({ cured, zone }: { cured: ClubOverview["cured"]; zone: string }) {
  return (
    <Section
      id="cured"
      title="Cured lately"
      aside={
        cured.length > 0 && (
          <Link prefetch={false} href="/cases?outcome=cured">
            All cured
          </Link>
        )
      }
    >
      {cured.length === 0 ? (
        <EmptyState title="Nothing is cured yet.">
          <p>A case counts as cured with a proof: the failed checks repeated, or a soak test.</p>
        </EmptyState>
      ) : (
        <ul className={styles.lines}>
          {cured.map((one) => (
            <li key={one.number}>
              <p className={styles.title}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  {one.title}
                </Link>
              </p>
              {one.lesson && <p className={styles.words}>{one.lesson}</p>}
              <p className={styles.facts}>
                {one.cause && (
                  <span>
                    {one.cause.at && <Place at={one.cause.at} />} {one.cause.chip} {FAILURE_WORDS[one.cause.failure]}
                  </span>
                )}
                <span>{one.board?.name ?? "board without a record"}</span>
                <TimeText at={one.when} zone={zone} />
              </p>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Mine({ mine }: { mine: ClubOverview["mine"] }) {
  return (
    <Section id="mine" title="On your bench">
      {mine.length === 0 ? (
        <p className="soft">Nothing is open. A new board waits for its first case.</p>
      ) : (
        <ul className={styles.lines}>
          {mine.map((one) => (
            <li key={one.number}>
              <p className={styles.title}>
                <Link prefetch={false} href={`/cases/${one.number}/bench`}>
                  {one.number} · {one.title}
                </Link>
              </p>
              <p className={styles.facts}>
                <OutcomeMark outcome={one.outcome} />
                {one.isDraft && <strong>draft</strong>}
                <span>{one.board?.name}</span>
              </p>
            </li>
          ))}
        </ul>
      )}
      <ButtonRow>
        <ButtonLink href="/cases/new" look="main">
          Open a case
        </ButtonLink>
        <ButtonLink href="/cases/quick">Record a finished repair</ButtonLink>
      </ButtonRow>
    </Section>
  );
}

function Visitor({ name }: { name: string }) {
  return (
    <Section id="visitor" title="You are reading as a visitor">
      <p>
        Everything here can be read without an account. Members of {name} open cases, enter readings and offer spares;
        new ones come in by a link from a steward.
      </p>
      <ButtonRow>
        <ButtonLink href="/signin">Sign in</ButtonLink>
      </ButtonRow>
    </Section>
  );
}

function UnknownCodes({ overview }: { overview: ClubOverview }) {
  const { unknownCodes, unknownCodesInAll } = overview;
  return (
    <Section
      id="unknown-codes"
      title="Codes without a name"
      count={unknownCodesInAll}
      aside={
        unknownCodesInAll > unknownCodes.length && (
          <Link prefetch={false} href="/codes?unknown=true">
            All of them
          </Link>
        )
      }
    >
      {unknownCodes.length === 0 ? (
        <p className="soft">
          Every recorded code is known. Met another? <Link href="/codes/new">Record it</Link>, known or not.
        </p>
      ) : (
        <ul className={styles.codes}>
          {unknownCodes.map((one) => (
            <li key={one.id}>
              <Code code={one.code} href={`/codes/${one.id}`} />
              {one.board && (
                <span className={styles.seen}>
                  {one.board.name} {one.at && <Place at={one.at} />}
                </span>
              )}
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}

function Boards({ boards }: { boards: ClubOverview["boards"] }) {
  return (
    <Section id="boards" title="Boards">
      {boards.length === 0 ? (
        <p className="soft">
          No board is recorded yet. <Link href="/boards/new">Paste a parts list</Link> to begin one.
        </p>
      ) : (
        <dl className={styles.kinds}>
          {boards.map(({ kind, count, most }) => (
            <div key={kind}>
              <dt>
                <Link prefetch={false} href={pageAddress("/boards", { kind })}>
                  {BOARD_KIND_WORDS[kind]}
                </Link>{" "}
                <span className="soft">{count}</span>
              </dt>
              {most.map((board) => (
                <dd key={board.slug}>
                  <Link prefetch={false} href={`/boards/${board.slug}`}>
                    {board.name}
                  </Link>{" "}
                  <span className="soft">{board.cases === 1 ? "1 case" : `${board.cases} cases`}</span>
                </dd>
              ))}
            </div>
          ))}
        </dl>
      )}
    </Section>
  );
}

function EmptyClub({ isMember, isSteward }: { isMember: boolean; isSteward: boolean }) {
  return (
    <EmptyState title="Nothing is recorded yet. The first repair makes this useful.">
      {isMember ? (
        <ol>
          <li>
            <Link href="/imports">Import a symbol library</Link>: it brings chips with their pins.
          </li>
          <li>
            <Link href="/boards/new">Record a board</Link> by pasting its parts list, one part a line.
          </li>
          <li>
            <Link href="/cases/new">Open a case</Link> for what lies on your bench, or{" "}
            <Link href="/cases/quick">record a repair you finished</Link> in four lines.
          </li>
          {isSteward && (
            <li>
              <Link href="/desk#invitations">Invite the others</Link> with a link.
            </li>
          )}
        </ol>
      ) : (
        <p>
          Members fill it. <Link href="/signin">Sign in</Link>, or ask a steward of the club for an invitation.
        </p>
      )}
    </EmptyState>
  );
}
