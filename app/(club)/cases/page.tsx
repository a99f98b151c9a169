import type { Metadata } from "next";
import Link from "next/link";
import { BOARD_KINDS, CASE_OUTCOMES } from "#lib/core/shared/index.ts";
import { listCases, symptomVocabulary } from "#lib/services/cases/index.ts";
import { ListCases } from "#lib/services/cases/schema.ts";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { CheckboxField, choicesOf, FieldRow, SelectField } from "#lib/ui/field.tsx";
import { Pager } from "#lib/ui/pager.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SubmitButton } from "#lib/ui/submit-button.client.tsx";
import { BOARD_KIND_WORDS, OUTCOME_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, pageAddress, queryOfPage, type SearchParams } from "#lib/web/page.ts";
import { CaseList } from "./case-list.tsx";
import styles from "./cases.module.css";

export const metadata: Metadata = { title: "Cases" };

const PAGE = 30;

export default async function CasesPage({ searchParams }: { searchParams: Promise<SearchParams> }) {
  const ctx = await pageCtx();
  const asked = queryOfPage(await searchParams, ListCases);
  const { cursor, limit: _limit, ...filter } = asked;
  const [{ cases, total, next }, symptoms, zone] = await Promise.all([
    listCases(ctx, { ...asked, limit: PAGE }),
    symptomVocabulary(ctx),
    clubZone(),
  ]);
  const member = ctx.actor.kind === "member" ? ctx.actor : null;
  const isFiltered = Object.values(filter).some(Boolean);
  return (
    <>
      <PageHead title="Cases" lead="Boards that failed, what was measured, what it was, and what cured it.">
        {member && (
          <ButtonRow>
            <ButtonLink href="/cases/new" look="main">
              Open a case
            </ButtonLink>
            <ButtonLink href="/cases/quick">Record a finished repair</ButtonLink>
          </ButtonRow>
        )}
      </PageHead>
      <form action="/cases" aria-label="Narrow the list" className="no-print">
        {asked.board && <input type="hidden" name="board" value={asked.board} />}
        {asked.chip && <input type="hidden" name="chip" value={asked.chip} />}
        <FieldRow>
          <SelectField
            label="Outcome"
            name="outcome"
            choices={choicesOf(CASE_OUTCOMES, OUTCOME_WORDS)}
            empty="Any"
            defaultValue={asked.outcome ?? ""}
          />
          <SelectField
            label="Kind of board"
            name="boardKind"
            choices={choicesOf(BOARD_KINDS, BOARD_KIND_WORDS)}
            empty="Any"
            defaultValue={asked.boardKind ?? ""}
          />
          <SelectField
            label="Symptom"
            name="symptom"
            choices={symptoms.map(({ slug, label }) => ({ value: slug, label }))}
            empty="Any"
            defaultValue={asked.symptom ?? ""}
          />
        </FieldRow>
        <div className={styles.narrow}>
          <CheckboxField
            label="asks for help"
            name="asksHelp"
            value="true"
            defaultChecked={asked.asksHelp !== undefined}
          />
          {member && (
            <>
              <CheckboxField
                label="mine"
                name="author"
                value={member.handle}
                defaultChecked={asked.author === member.handle}
              />
              <CheckboxField label="my drafts" name="drafts" value="true" defaultChecked={asked.drafts !== undefined} />
            </>
          )}
          <SubmitButton look="main" pendingText="Looking …">
            Narrow
          </SubmitButton>
          {isFiltered && (
            <Link prefetch={false} href="/cases">
              Show all
            </Link>
          )}
        </div>
      </form>
      <p className="soft" aria-live="polite">
        {total === 1 ? "1 case" : `${total} cases`}
        {(asked.board ?? asked.chip) && `, ${asked.board ?? asked.chip} only`}
      </p>
      {cases.length === 0 ? (
        <NoCases isFiltered={isFiltered} isMember={member !== null} />
      ) : (
        <CaseList cases={cases} zone={zone} />
      )}
      <Pager
        label="Cases"
        previous={cursor && pageAddress("/cases", filter)}
        next={next === null ? undefined : pageAddress("/cases", { ...filter, cursor: String(next) })}
        text={cursor ? "Back leads to the newest" : ""}
      />
    </>
  );
}

function NoCases({ isFiltered, isMember }: { isFiltered: boolean; isMember: boolean }) {
  if (isFiltered) {
    return (
      <EmptyState title="No case fits this.">
        <p>
          Take a filter away, or <Link href="/search">search by words</Link>.
        </p>
      </EmptyState>
    );
  }
  return (
    <EmptyState title="No case yet.">
      <p>
        {isMember ? (
          <>
            <Link href="/cases/new">Open one</Link> for the board on your bench, or{" "}
            <Link href="/cases/quick">record a repair you finished</Link> in four lines.
          </>
        ) : (
          "Members record them: sign in to begin."
        )}
      </p>
    </EmptyState>
  );
}
