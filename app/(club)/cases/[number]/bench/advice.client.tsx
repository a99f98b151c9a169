"use client";

import Link from "next/link";
import { causeKey, isThin, matchWord, MOVE_WORDS, type BenchAdvice, type Move } from "#lib/ui/bench-advice.ts";
import { Bar } from "#lib/ui/bar.tsx";
import { Button } from "#lib/ui/button.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Section } from "#lib/ui/section.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { CHECK_KIND_WORDS, FAILURE_WORDS, POWER_WORDS } from "#lib/ui/words.ts";
import styles from "./bench.module.css";

interface AdviceProps {
  advice: BenchAdvice;
  moves: { similar: ReadonlyMap<string, Move>; causes: ReadonlyMap<string, Move> };
  /** The last question got no answer: what is shown is from before. */
  isOld: boolean;
  hasFailed: boolean;
  chipNames: Readonly<Record<string, string>>;
  onTake: (check: BenchAdvice["next"][number]) => void;
}

/** What past cases say to the checks made so far. */
export function Advice({ advice, moves, isOld, hasFailed, chipNames, onTake }: AdviceProps) {
  return (
    <>
      {isOld && <p className={styles.from}>The server does not answer; this is what it said last.</p>}
      <Section id="next" title="Worth checking next">
        <NextChecks next={advice.next} onTake={onTake} />
      </Section>
      <Section id="causes" title="What it may be">
        <Causes advice={advice} moves={moves.causes} chipNames={chipNames} />
      </Section>
      <Section id="similar" title="Who had this">
        <Similar similar={advice.similar} moves={moves.similar} hasFailed={hasFailed} />
      </Section>
    </>
  );
}

function NextChecks({ next, onTake }: { next: BenchAdvice["next"]; onTake: AdviceProps["onTake"] }) {
  if (next.length === 0) {
    return (
      <p className={styles.from}>No check of a past case would tell the causes apart yet. Go on in trade order.</p>
    );
  }
  return (
    <ul className={styles.next}>
      {next.map((check) => (
        <li key={`${check.kind} ${check.at}`}>
          <div>
            <p className={styles.nextHead}>
              <Place at={check.at} /> {CHECK_KIND_WORDS[check.kind]}
              {check.expected && <>, expected {check.expected}</>}
            </p>
            <p className={styles.from}>
              {POWER_WORDS[check.power]}, about {check.minutes} min. {check.because}
            </p>
          </div>
          <Button aria-label={`Take ${check.at} into the entry line`} onClick={() => onTake(check)}>
            Take
          </Button>
        </li>
      ))}
    </ul>
  );
}

function Moved({ move }: { move: Move | undefined }) {
  return move ? <span className={styles.moved}>{MOVE_WORDS[move]}</span> : null;
}

interface CausesProps {
  advice: BenchAdvice;
  moves: ReadonlyMap<string, Move>;
  chipNames: Readonly<Record<string, string>>;
}

/** Causes shown at once; the rest opens. */
const SHOWN_CAUSES = 5;

function Causes({ advice, moves, chipNames }: CausesProps) {
  const { causes, somethingElse, basis } = advice;
  if (causes.length === 0)
    return <p className={styles.from}>Not enough to say: no past case and no failed check points anywhere.</p>;
  const row = (cause: BenchAdvice["causes"][number]) => (
    <li key={causeKey(cause)}>
      <p className={styles.causeHead}>
        {cause.at && <Place at={cause.at} />} {cause.chip && (chipNames[cause.chip] ?? cause.chip)}{" "}
        {FAILURE_WORDS[cause.failure]} <Moved move={moves.get(causeKey(cause))} />
      </p>
      <Bar value={cause.probability} />
      {cause.because.length > 0 && <p className={styles.from}>{cause.because.join("; ")}</p>}
    </li>
  );
  return (
    <>
      {isThin(advice) && (
        <p className={styles.thin}>
          <Shape name="question" /> Not enough to say yet: measure on before you unsolder anything.
        </p>
      )}
      <ol className={styles.causes}>{causes.slice(0, SHOWN_CAUSES).map(row)}</ol>
      {causes.length > SHOWN_CAUSES && (
        <details className={styles.more}>
          <summary>{causes.length - SHOWN_CAUSES} more</summary>
          <ol className={styles.causes}>{causes.slice(SHOWN_CAUSES).map(row)}</ol>
        </details>
      )}
      <div className={styles.causes}>
        <p className={styles.causeHead}>Something else</p>
        <Bar value={somethingElse} />
      </div>
      <p className={styles.from}>
        A first estimate from {basis.cases} past {basis.cases === 1 ? "case" : "cases"} and the parts that the failed
        checks point at.
      </p>
    </>
  );
}

interface SimilarProps {
  similar: BenchAdvice["similar"];
  moves: ReadonlyMap<string, Move>;
  hasFailed: boolean;
}

/** Cases shown at once; the rest opens. */
const SHOWN_CASES = 4;
const SHOWN_REASONS = 3;

function Similar({ similar, moves, hasFailed }: SimilarProps) {
  if (similar.length === 0) {
    return (
      <p className={styles.from}>
        {hasFailed
          ? "Nobody in this club recorded checks that failed like these. Yours will be the first."
          : "Nothing yet. Past cases are ranked by the checks that failed: enter the first readings."}
      </p>
    );
  }
  const row = (one: BenchAdvice["similar"][number]) => (
    <SimilarCase key={one.case} one={one} move={moves.get(String(one.case))} />
  );
  return (
    <>
      <ol className={styles.similar}>{similar.slice(0, SHOWN_CASES).map(row)}</ol>
      {similar.length > SHOWN_CASES && (
        <details className={styles.more}>
          <summary>{similar.length - SHOWN_CASES} more</summary>
          <ol className={styles.similar}>{similar.slice(SHOWN_CASES).map(row)}</ol>
        </details>
      )}
    </>
  );
}

function SimilarCase({ one, move }: { one: BenchAdvice["similar"][number]; move: Move | undefined }) {
  return (
    <li>
      <p className={styles.causeHead}>
        <Link prefetch={false} href={`/cases/${one.case}`}>
          {one.title}
        </Link>{" "}
        <span className={styles.from}>case {one.case}</span> <Moved move={move} />
      </p>
      <Bar value={one.score} word={matchWord(one.score)} />
      <Reasons label="Alike" words={one.matched.slice(0, SHOWN_REASONS)} shape="equals" />
      <Reasons label="Against" words={one.contradicted.slice(0, SHOWN_REASONS)} shape="cross" />
      {one.cause && (
        <p>
          <b>Cause:</b> {one.cause}
        </p>
      )}
      {one.cure && (
        <p>
          <b>Cure:</b> {one.cure}
        </p>
      )}
      <MoreReasons one={one} />
    </li>
  );
}

function Reasons({ label, words, shape }: { label: string; words: readonly string[]; shape: "equals" | "cross" }) {
  if (words.length === 0) return null;
  return (
    <p className={styles.reason}>
      <Shape name={shape} />
      <span>
        {label}: {words.join("; ")}
      </span>
    </p>
  );
}

function MoreReasons({ one }: { one: BenchAdvice["similar"][number] }) {
  const rest = {
    alike: one.matched.slice(SHOWN_REASONS),
    against: one.contradicted.slice(SHOWN_REASONS),
    unchecked: one.unchecked,
  };
  const votes = one.helped + one.didNotHelp;
  if (rest.alike.length + rest.against.length + rest.unchecked.length + votes === 0) return null;
  return (
    <details className={styles.more}>
      <summary>More reasons</summary>
      <Reasons label="Alike" words={rest.alike} shape="equals" />
      <Reasons label="Against" words={rest.against} shape="cross" />
      {rest.unchecked.length > 0 && <p>Not checked in both: {rest.unchecked.join("; ")}</p>}
      {votes > 0 && (
        <p>
          Helped {one.helped}, did not help {one.didNotHelp}.
        </p>
      )}
    </details>
  );
}
