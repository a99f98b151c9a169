import Link from "next/link";
import type { CaseView, CauseView, CheckView } from "#lib/services/cases/index.ts";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { KeyValue } from "#lib/ui/key-value.tsx";
import { Place } from "#lib/ui/place.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { Verdict } from "#lib/ui/verdict.tsx";
import { CURE_WORDS, FAILURE_WORDS } from "#lib/ui/words.ts";
import { checkWords, ReadingText, readingWords } from "./checks.tsx";
import styles from "./case.module.css";

interface AnswerProps {
  view: CaseView;
  zone: string;
  isMember: boolean;
}

/** What it was: each cause with what it explains, its cure and its proof. */
export function Answer({ view, zone, isMember }: AnswerProps) {
  if (view.causes.length === 0) {
    return (
      <EmptyState title={view.outcome === "open" ? "Not found yet." : "No cause is named."}>
        {isMember && (
          <p>
            <Link href={`/cases/${view.number}/bench`}>Go on measuring</Link>, or{" "}
            <Link href={`/cases/${view.number}/close`}>name the cause</Link>.
          </p>
        )}
      </EmptyState>
    );
  }
  return view.causes.map((cause) => <Cause key={cause.id} cause={cause} view={view} zone={zone} />);
}

export function Cause({ cause, view, zone }: { cause: CauseView; view: CaseView; zone: string }) {
  const explained = view.checks.filter((check) => cause.explains.includes(check.id));
  return (
    <article className={styles.cause}>
      <h3>
        {cause.at && (
          <>
            <Place at={cause.at} {...placeLink(view, cause.at)} />{" "}
          </>
        )}
        {cause.chip && (
          <>
            <Link prefetch={false} href={`/chips/${cause.chip.slug}`}>
              {cause.chip.name}
            </Link>{" "}
          </>
        )}
        {FAILURE_WORDS[cause.failure]}
      </h3>
      {cause.description && <p>{cause.description}</p>}
      <KeyValue
        items={[
          {
            name: "Printed on it",
            value: cause.code && <Code code={cause.code.code} href={`/codes/${cause.code.id}`} />,
          },
          { name: "Explains", value: explained.length > 0 && <Explained checks={explained} /> },
          { name: "Cure", value: cause.cure ? <Cure cure={cause.cure} /> : "none recorded" },
          { name: "Proof", value: <Proofs cause={cause} view={view} zone={zone} /> },
        ]}
      />
    </article>
  );
}

/** To the row of the part on the board's page; a net has none. */
function placeLink(view: CaseView, at: string): { href: string } | object {
  const designator = /^[A-Z]{0,4}\d+[A-Z]?(?=\.|$)/i.exec(at)?.[0];
  return view.board && designator ? { href: `/boards/${view.board}#place-${designator}` } : {};
}

function Explained({ checks }: { checks: readonly CheckView[] }) {
  return (
    <ul className={styles.plain}>
      {checks.map((check) => (
        <li key={check.id}>
          <Place at={check.at} to={check.to} /> {checkWords(check)}: <ReadingText text={readingWords(check)} />
        </li>
      ))}
    </ul>
  );
}

function Cure({ cure }: { cure: NonNullable<CauseView["cure"]> }) {
  return (
    <>
      {cure.action !== "other" && CURE_WORDS[cure.action]}
      {cure.action !== "other" && cure.description && ": "}
      {cure.description}
      {cure.fitted && (
        <span className={styles.under}>
          Fitted: <Code code={cure.fitted} {...(cure.fittedId && { href: `/codes/${cure.fittedId}` })} />
          {cure.from && `, from ${cure.from}`}
        </span>
      )}
      {!cure.fitted && cure.from && <span className={styles.under}>From {cure.from}</span>}
    </>
  );
}

function Proofs({ cause, view, zone }: { cause: CauseView; view: CaseView; zone: string }) {
  if (cause.proofs.length === 0) return "none yet";
  const originals = new Map(view.checks.map((check) => [check.id, check]));
  const repeats = view.checks.filter(
    (check) => check.repeats && (cause.explains.length === 0 || cause.explains.includes(check.repeats)),
  );
  return cause.proofs.map((proof) => (
    <div key={proof.id}>
      {proof.kind === "soak"
        ? `Ran for ${minutesText(proof.minutes ?? 0)}. `
        : repeats.length > 0 && "Measured again: "}
      {proof.kind === "checks-repeated" && repeats.length > 0 && (
        <ul className={styles.plain}>
          {repeats.map((check) => (
            <li key={check.id}>
              <Place at={check.at} to={check.to} /> was{" "}
              <ReadingText text={readingWords(originals.get(check.repeats ?? "") ?? check)} />, now{" "}
              <ReadingText text={readingWords(check)} /> <Verdict verdict={check.verdict} />
            </li>
          ))}
        </ul>
      )}
      {proof.note}
      <span className={styles.under}>
        {proof.by?.name ?? "A former member"}, <TimeText at={proof.at} zone={zone} />
      </span>
    </div>
  ));
}

export function minutesText(minutes: number): string {
  if (minutes < 120) return minutes === 1 ? "1 minute" : `${minutes} minutes`;
  const hours = Math.round(minutes / 6) / 10;
  return hours < 72 ? `${hours} hours` : `${Math.round(hours / 2.4) / 10} days`;
}
