"use client";

import { memo, useState, type ReactNode } from "react";
import { checkCautions, type Caution } from "#lib/core/board/index.ts";
import { previewOf, shownReading, type BenchCheck } from "#lib/ui/bench-checks.ts";
import type { BenchBoard } from "#lib/ui/bench-entry.ts";
import type { OutboxItem } from "#lib/ui/bench-outbox.ts";
import { Button } from "#lib/ui/button.tsx";
import { classNames } from "#lib/ui/class-names.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Place } from "#lib/ui/place.tsx";
import { QuantityText } from "#lib/ui/quantity-text.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { timeText } from "#lib/ui/time-text.tsx";
import { Verdict } from "#lib/ui/verdict.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, TRIAL_WORDS, VERDICT_WORDS } from "#lib/ui/words.ts";
import type { CaseChecks } from "./bench-data.client.tsx";
import { CheckEdit } from "./check-edit.client.tsx";
import type { BenchPhoto } from "./photo.client.tsx";
import styles from "./bench.module.css";

interface CheckListProps {
  data: CaseChecks;
  /** Readings of this case that the server does not have yet. */
  waiting: readonly OutboxItem[];
  board: BenchBoard;
  cautions: readonly Caution[];
  caseId: string;
  member: string;
  zone: string;
  onRepeat: (check: BenchCheck) => void;
  onCorrect: (item: OutboxItem) => void;
  onDrop: (item: OutboxItem) => void;
  onPhoto: (photo: BenchPhoto) => void;
}

/** The checks of the case in order; below them those that wait for the server. */
export function CheckList(props: CheckListProps) {
  const { data, waiting, board, cautions, caseId, member, zone, onRepeat, onCorrect, onDrop, onPhoto } = props;
  const [open, setOpen] = useState<string | null>(null);
  const number = new Map(data.checks.map((check, index) => [check.id, index + 1]));
  const here = data.checks.filter((check) => !data.going.some((gone) => gone.id === check.id));
  const repeated = new Map(data.checks.flatMap((check) => (check.repeats ? [[check.repeats, check] as const] : [])));
  if (data.checks.length === 0 && waiting.length === 0) {
    return (
      <EmptyState title="No check yet.">
        <p>
          Look first, with the power off: burnt, leaking, cracked, a chip turned round. Then the rails. Type a place and
          what you read, for instance <kbd>+5V 4.91</kbd>, and press Enter.
        </p>
      </EmptyState>
    );
  }
  return (
    <>
      <ol className={styles.checks}>
        {here.map((check, index) => (
          <li key={check.id} className={rowClass(check.verdict)} value={number.get(check.id)}>
            {open === check.id ? (
              <CheckEdit
                check={check}
                caseId={caseId}
                save={data.save}
                onDone={() => setOpen(null)}
                onDelete={() => {
                  setOpen(null);
                  data.remove(check);
                }}
                onPhoto={onPhoto}
              />
            ) : (
              <CheckRow
                check={check}
                number={number.get(check.id) ?? 0}
                repeats={check.repeats ? (number.get(check.repeats) ?? null) : null}
                repeatedAs={repeated.get(check.id) ?? null}
                repeatedNumber={number.get(repeated.get(check.id)?.id ?? "") ?? null}
                caution={newCaution(cautions, check, here[index - 1])}
                who={whoAndWhen(check, here[index - 1], member, zone)}
                onEdit={setOpen}
                onRepeat={onRepeat}
              />
            )}
          </li>
        ))}
        {waiting.map((item) => (
          <WaitingRows key={item.id} item={item} board={board} onCorrect={onCorrect} onDrop={onDrop} />
        ))}
      </ol>
      {data.going.map((check) => (
        <output key={check.id} className={styles.undo}>
          <span>
            Deleted: <Place at={check.at} /> <QuantityText text={check.measured} />
          </span>
          <Button onClick={() => data.undo(check.id)}>Undo</Button>
        </output>
      ))}
    </>
  );
}

/** A reading without an expectation is noted, and the word says so already. */
function hasReason({ verdict, unreadable }: BenchCheck): boolean {
  return verdict !== "noted" || unreadable !== "";
}

function whoAndWhen(check: BenchCheck, before: BenchCheck | undefined, member: string, zone: string): string {
  const [day, clock] = dayAndClock(check, zone);
  const isSamePerson = before?.by?.handle === check.by?.handle;
  const isSameDay = before !== undefined && dayAndClock(before, zone)[0] === day;
  const name = check.by?.handle === member ? "You" : (check.by?.name ?? "A member who left");
  return [before && isSamePerson ? "" : name, isSameDay ? "" : day, clock].filter(Boolean).join(", ");
}

function dayAndClock({ takenAt }: BenchCheck, zone: string): [day: string, clock: string] {
  const day = timeText(takenAt, zone);
  return [
    day,
    timeText(takenAt, zone, true)
      .slice(day.length)
      .replace(/^[, ]+/, ""),
  ];
}

function rowClass(verdict: BenchCheck["verdict"]): string {
  return classNames(
    styles.check,
    verdict === "out-of-spec" && styles.failed,
    verdict === "inconclusive" && styles.doubtful,
  );
}

/** The caution of this place, said once for checks that follow each other. */
function newCaution(cautions: readonly Caution[], check: BenchCheck, before: BenchCheck | undefined): string {
  const ofPlace = (one: BenchCheck) => checkCautions(cautions, one).filter((caution) => caution.key !== "unpowered");
  const said = before ? ofPlace(before).map((caution) => caution.key) : [];
  const fresh = ofPlace(check).filter((caution) => !said.includes(caution.key));
  return fresh.map((caution) => caution.text).join(" ");
}

interface CheckRowProps {
  check: BenchCheck;
  number: number;
  repeats: number | null;
  repeatedAs: BenchCheck | null;
  repeatedNumber: number | null;
  caution: string;
  /** By whom and when, as far as it differs from the check before. */
  who: string;
  onEdit: (id: string) => void;
  onRepeat: (check: BenchCheck) => void;
}

const CheckRow = memo(function CheckRow(props: CheckRowProps) {
  const { check, number, repeats, repeatedAs, repeatedNumber, caution, who, onEdit, onRepeat } = props;
  const isFailed = check.verdict === "out-of-spec";
  return (
    <>
      <RowHead number={number} verdict={check.verdict}>
        <Place at={check.at} to={check.to} unknown={!check.placeKnown} />
        <QuantityText text={shownReading(check)} strong />
      </RowHead>
      <div className={styles.about}>
        <p>
          {kindText(check)}
          {check.expected !== "" && (
            <>
              , expected <QuantityText text={check.expected} />
            </>
          )}
          . {hasReason(check) && check.because} {who}
        </p>
        {check.chosenVerdict && (
          <p>
            Chosen by a person; computed is {VERDICT_WORDS[check.computedVerdict]}. Why: {check.chosenReason}
          </p>
        )}
        {check.note !== "" && <p className={styles.note}>{check.note}</p>}
        {repeats !== null && <p>Repeats check {repeats}.</p>}
        {repeatedAs && (
          <p className={styles.repeated}>
            Repeated as check {repeatedNumber}: <Verdict verdict={repeatedAs.verdict} />
          </p>
        )}
        {caution !== "" && (
          <p className={styles.checkCaution}>
            <Shape name="triangle" />
            <span>{caution}</span>
          </p>
        )}
      </div>
      <div className={styles.rowButtons}>
        {isFailed && !repeatedAs && (
          <Button aria-label={`Repeat ${check.at}`} onClick={() => onRepeat(check)}>
            Repeat
          </Button>
        )}
        <Button look="quiet" aria-label={`Change ${check.at} ${check.measured}`} onClick={() => onEdit(check.id)}>
          Change
        </Button>
      </div>
    </>
  );
});

function RowHead({
  number,
  verdict,
  children,
}: {
  number: number | null;
  verdict: BenchCheck["verdict"];
  children: ReactNode;
}) {
  return (
    <div className={styles.rowHead}>
      <span className={styles.rowNumber} aria-hidden="true">
        {number ?? "…"}
      </span>
      {children}
      <Verdict verdict={verdict} />
    </div>
  );
}

function kindText({ kind, what, lead, when }: Pick<BenchCheck, "kind" | "what" | "lead" | "when">): string {
  const name = what ? `${TRIAL_WORDS[what]}, a trial` : CHECK_KIND_WORDS[kind];
  return [name, lead && LEAD_WORDS[lead], when].filter(Boolean).join(", ");
}

interface WaitingRowsProps {
  item: OutboxItem;
  board: BenchBoard;
  onCorrect: (item: OutboxItem) => void;
  onDrop: (item: OutboxItem) => void;
}

/** Readings that only this browser has, with the verdict as it will be. */
function WaitingRows({ item, board, onCorrect, onDrop }: WaitingRowsProps) {
  return (
    <>
      {item.checks.map((check) => {
        const preview = previewOf(check, board);
        return (
          <li key={check.id} className={classNames(rowClass(preview?.verdict ?? "noted"), styles.waiting)}>
            <RowHead number={null} verdict={preview?.verdict ?? "noted"}>
              <Place at={check.at} to={check.to ?? ""} unknown={preview?.known === false} />
              <QuantityText text={shownReading(check)} strong />
            </RowHead>
            <div className={styles.about}>
              <p>
                {item.refused === null ? (
                  <>
                    <Shape name="hourglass" /> kept in this browser until the server has it
                  </>
                ) : (
                  <b>
                    <Shape name="cross" /> refused: {item.refused}
                  </b>
                )}
              </p>
            </div>
            <div className={styles.rowButtons} />
          </li>
        );
      })}
      {item.refused !== null && (
        <li className={styles.refusedButtons}>
          <Button look="main" onClick={() => onCorrect(item)}>
            Correct it
          </Button>
          <Button look="danger" onClick={() => onDrop(item)}>
            Drop it
          </Button>
        </li>
      )}
    </>
  );
}
