"use client";

import type { Caution } from "#lib/core/board/index.ts";
import { KIND_SOURCE_WORDS } from "#lib/ui/bench-kind.ts";
import type { Entry, UnderstoodCheck } from "#lib/ui/bench-entry.ts";
import { classNames } from "#lib/ui/class-names.ts";
import { Place } from "#lib/ui/place.tsx";
import { QuantityText } from "#lib/ui/quantity-text.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { Verdict } from "#lib/ui/verdict.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, TRIAL_WORDS } from "#lib/ui/words.ts";
import { CheckCautions } from "./cautions.client.tsx";
import styles from "./bench.module.css";

interface PreviewProps {
  entry: Entry;
  cautions: readonly Caution[];
  /** Sheet of the drawings by designator. */
  sheets: Readonly<Record<string, string>>;
  /** Two lines at most, where the keys need the room. */
  isShort?: boolean;
}

/** What was understood of the line so far: place, kind, expectation, verdict and why. */
export function Preview({ entry, cautions, sheets, isShort = false }: PreviewProps) {
  if (entry.state === "empty") return null;
  const [first] = entry.checks;
  return (
    <div className={styles.preview}>
      {first && isShort && <ShortCheck check={first} cautions={cautions} />}
      {first && !isShort && entry.checks.length === 1 && <OneCheck check={first} cautions={cautions} sheets={sheets} />}
      {first && entry.checks.length > 1 && <RunOfChecks checks={entry.checks} cautions={cautions} />}
      {entry.state === "unfinished" && !isOnlyMissing(entry) && <p className={styles.hint}>{entry.problem}</p>}
    </div>
  );
}

/** Half a line needs no complaint: the place is understood, and the reading is still to come. */
function isOnlyMissing(entry: Extract<Entry, { state: "unfinished" }>): boolean {
  return entry.field === null && entry.checks.length === 1 && entry.checks[0]?.measured === "";
}

function ShortCheck({ check, cautions }: { check: UnderstoodCheck; cautions: readonly Caution[] }) {
  const name = check.found?.pin?.name ?? check.found?.connectorPin ?? check.found?.net?.name;
  return (
    <>
      <p className={styles.understood}>
        <Place at={check.at} unknown={!check.known} />
        {name && <span>{name}</span>}
        {check.expected !== "" && (
          <span>
            expected <QuantityText text={check.expected} />
          </span>
        )}
        {check.measured !== "" && <Verdict verdict={check.verdict} large />}
        {check.unreadable !== "" && <span className={styles.unknownPlace}>{check.unreadable}</span>}
      </p>
      <CheckCautions cautions={cautions} check={check} />
    </>
  );
}

function OneCheck({ check, cautions, sheets }: { check: UnderstoodCheck } & Omit<PreviewProps, "entry">) {
  const isTyped = check.measured !== "";
  return (
    <>
      <p className={styles.understood}>
        <Place at={check.at} to={check.to} unknown={!check.known} />
        {!check.known && <UnknownPlace />}
        <PlaceWords check={check} sheets={sheets} />
      </p>
      <p className={styles.understood}>
        <KindText check={check} />
        {check.expected !== "" && (
          <span>
            expected <QuantityText text={check.expected} />
            <span className={styles.from}> ({check.expectedFrom})</span>
          </span>
        )}
        {check.expected === "" && check.kind !== "trial" && (
          <span className={styles.from}>what should be here is not on record</span>
        )}
      </p>
      {isTyped && (
        <p className={styles.verdictLine}>
          <QuantityText text={check.shown} strong />
          <Verdict verdict={check.verdict} large />
          {(check.verdict !== "noted" || check.unreadable !== "") && <span>{check.because}</span>}
        </p>
      )}
      <CheckCautions cautions={cautions} check={check} />
    </>
  );
}

function KindText({ check }: { check: UnderstoodCheck }) {
  const isGuess = check.kindFrom !== "typed" && check.kindFrom !== "chosen";
  return (
    <span>
      {check.what ? `${TRIAL_WORDS[check.what]}, a trial` : CHECK_KIND_WORDS[check.kind]}
      {check.lead && `, ${LEAD_WORDS[check.lead]}`}
      {isGuess && <span className={styles.from}> (guessed, {KIND_SOURCE_WORDS[check.kindFrom]})</span>}
    </span>
  );
}

export function UnknownPlace() {
  return (
    <span className={styles.unknownPlace}>
      <Shape name="question" /> not on this board’s record; it is kept all the same
    </span>
  );
}

/** What the record says of the place, in a few words: chip, pin, net, sheet. */
export function PlaceWords({ check, sheets }: { check: UnderstoodCheck; sheets: Readonly<Record<string, string>> }) {
  const { found } = check;
  if (!found) return null;
  const designator = found.place.kind === "net" ? "" : found.place.designator.toUpperCase();
  const words = [
    found.chip?.name ?? found.placement?.value,
    found.pin && `pin ${found.pin.number} ${found.pin.name}`,
    found.connectorPin !== null && `contact ${found.connectorPin}`,
    found.net && `net ${found.net.name}`,
    found.rail && !found.net && `rail, ${found.rail.nominal} V${found.rail.ac ? " a.c." : ""}`,
    sheets[designator] && `sheet ${sheets[designator]}`,
  ].filter(Boolean);
  return words.length > 0 ? <span className={styles.placeWords}>{words.join(" · ")}</span> : null;
}

function RunOfChecks({ checks, cautions }: { checks: readonly UnderstoodCheck[]; cautions: readonly Caution[] }) {
  const [first] = checks;
  const typed = checks.filter((check) => check.measured !== "");
  const unknown = checks.filter((check) => !check.known).length;
  return (
    <>
      <p className={styles.understood}>
        <b>
          {typed.length === checks.length ? `${checks.length} checks` : `${typed.length} of ${checks.length} readings`}
        </b>
        {first && <KindText check={first} />}
        {unknown > 0 && <span className={styles.unknownPlace}>{unknown} not on this board’s record</span>}
      </p>
      <ol className={styles.run}>
        {checks.map((check) => (
          <li key={check.at} className={classNames(check.verdict === "out-of-spec" && styles.failedRun)}>
            <span className={styles.runPlace}>
              <Place at={check.at} unknown={!check.known} />
              {check.found?.pin && <span className={styles.from}>{check.found.pin.name}</span>}
            </span>
            {check.measured === "" ? (
              <span className={styles.from}>…</span>
            ) : (
              <>
                <QuantityText text={check.shown} strong />
                {check.unreadable === "" ? (
                  <Verdict verdict={check.verdict} />
                ) : (
                  <span className={styles.unknownPlace}>cannot be read: {check.unreadable}</span>
                )}
              </>
            )}
          </li>
        ))}
      </ol>
      {first && <CheckCautions cautions={cautions} check={first} />}
    </>
  );
}
