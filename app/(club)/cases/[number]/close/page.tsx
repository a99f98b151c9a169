import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { readBoard } from "#lib/services/boards/index.ts";
import {
  checksToRepeat,
  lastRepeat,
  readCase,
  type CaseView,
  type CauseView,
  type CheckView,
} from "#lib/services/cases/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import type { ComboOption } from "#lib/ui/combo-options.ts";
import { Notice } from "#lib/ui/notice.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { PageHead, Section } from "#lib/ui/section.tsx";
import { PLACEMENT_KIND_WORDS } from "#lib/ui/words.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";
import { Cause } from "../answer.tsx";
import { checkWords, readingWords } from "../checks.tsx";
import { CauseForm, type CauseValues, type CheckLine } from "./cause-form.client.tsx";
import { EndingForm } from "./ending-form.client.tsx";
import { KnownCause } from "./known-cause.client.tsx";
import { Proving, type CheckToRepeat } from "./proof-form.client.tsx";
import styles from "./close.module.css";

export const metadata: Metadata = { title: "What was it?" };

export default async function ClosePage({ params }: { params: Promise<{ number: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { number } = await params;
  const view = await orNotFound(() => readCase(ctx, caseNumber(number)));
  const [places, zone] = await Promise.all([placesOf(ctx, view), clubZone()]);
  const lines = checkLines(view.checks);
  const shared = { caseNumber: view.number, places, checks: lines };
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Cases", href: "/cases" },
              { text: `Case ${view.number}: ${view.title}`, href: `/cases/${view.number}` },
            ]}
          />
        }
        title="What was it?"
        lead="Name each cause, what cured it, and what proves that the cure holds."
        meta={<OutcomeMark outcome={view.outcome} />}
      />
      <Section id="causes" title="Causes" count={view.causes.length}>
        {view.causes.map((cause) => (
          <div key={cause.id} className={styles.cause}>
            <KnownCause {...shared} cause={causeValues(cause)}>
              <Cause cause={cause} view={view} zone={zone} />
              {cause.cure ? (
                <Proving
                  isProved={cause.proofs.length > 0}
                  caseNumber={view.number}
                  cause={cause.id}
                  checks={toRepeat(cause, view.checks)}
                />
              ) : (
                <Notice kind="info" title="No cure is recorded yet: change this cause once it is cured." />
              )}
            </KnownCause>
          </div>
        ))}
        {view.causes.length === 0 ? (
          <CauseForm {...shared} />
        ) : (
          <details>
            <summary>There was another cause as well</summary>
            <CauseForm {...shared} />
          </details>
        )}
      </Section>
      <Section id="ending" title="How it stands">
        <EndingForm
          caseNumber={view.number}
          version={view.version}
          ending={{ title: view.title, lesson: view.lesson, asksHelp: view.asksHelp, outcome: view.outcome }}
          isProved={view.causes.some((cause) => cause.proofs.length > 0)}
        />
        <ButtonRow>
          <ButtonLink href={`/cases/${view.number}/write`}>Write the story</ButtonLink>
          <ButtonLink href={`/cases/${view.number}`}>
            {view.state === "draft" ? "Look at it and publish" : "Back to the case"}
          </ButtonLink>
        </ButtonRow>
      </Section>
    </>
  );
}

async function placesOf(ctx: Ctx, view: CaseView): Promise<ComboOption[]> {
  if (!view.board) return [];
  const board = await readBoard(ctx, view.board);
  return [
    ...board.placements.map((one) => ({
      value: one.designator,
      label: one.designator,
      hint: one.chip?.name || one.value || PLACEMENT_KIND_WORDS[one.kind],
    })),
    ...board.rails.map((rail) => ({ value: rail.name, label: rail.name, hint: "rail" })),
  ];
}

/** Failed checks first; checks made after the cure explain nothing. */
function checkLines(checks: readonly CheckView[]): CheckLine[] {
  const lines = checks
    .filter((check) => check.repeats === null)
    .map((check) => ({
      id: check.id,
      failed: check.verdict === "out-of-spec",
      text: `${check.at} ${checkWords(check)}: ${readingWords(check) || "not taken"}`,
    }));
  return lines.toSorted((a, b) => Number(b.failed) - Number(a.failed));
}

function toRepeat(cause: CauseView, checks: readonly CheckView[]): CheckToRepeat[] {
  return checksToRepeat(cause, checks).map((check) => {
    const last = lastRepeat(check, checks);
    return {
      id: check.id,
      at: check.at,
      to: check.to,
      what: checkWords(check),
      expected: check.expected,
      was: readingWords(check),
      last: last ? { text: readingWords(last), verdict: last.verdict, because: last.because } : null,
    };
  });
}

function causeValues(cause: CauseView): CauseValues {
  return {
    id: cause.id,
    version: cause.version,
    at: cause.at,
    chip: cause.chip,
    code: cause.code?.code ?? "",
    failure: cause.failure,
    description: cause.description,
    explains: cause.explains,
    action: cause.cure?.action ?? "",
    cureText: cause.cure?.description ?? "",
    fitted: cause.cure?.fitted ?? "",
    from: cause.cure?.from ?? "",
  };
}
