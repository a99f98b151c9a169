"use client";

import Link from "next/link";
import { useId, type KeyboardEvent, type RefObject } from "react";
import type { Caution, PlaceFacts } from "#lib/core/board/index.ts";
import type { BenchBoard, Entry, EntryOptions } from "#lib/ui/bench-entry.ts";
import type { OutboxState } from "#lib/ui/bench-outbox.ts";
import { placeOffers, stepPlace } from "#lib/ui/bench-places.ts";
import { Button } from "#lib/ui/button.tsx";
import { classNames } from "#lib/ui/class-names.ts";
import { ComboBox } from "#lib/ui/combo-box.client.tsx";
import { TextField } from "#lib/ui/field.tsx";
import { Shape } from "#lib/ui/shape.tsx";
import { CHECK_KIND_WORDS, LEAD_WORDS, POWER_WORDS } from "#lib/ui/words.ts";
import { LookUp } from "./look-up.client.tsx";
import { NumberPad } from "./number-pad.client.tsx";
import { OptionFields } from "./option-fields.client.tsx";
import { PhotoButton, type BenchPhoto } from "./photo.client.tsx";
import { Preview } from "./preview.client.tsx";
import styles from "./bench.module.css";

export type EntryMode = "line" | "fields" | "pad";

/** What stands in the entry, in whichever form. */
export interface EntryText {
  mode: EntryMode;
  line: string;
  at: string;
  reading: string;
  /** Goes up when the place was set from elsewhere, for the box that keeps its own text. */
  round: number;
}

interface DockProps {
  text: EntryText;
  changeText: (next: Partial<EntryText>) => void;
  options: EntryOptions;
  changeOptions: (next: Partial<EntryOptions>) => void;
  entry: Entry;
  /** Set when somebody tried to record what cannot be recorded yet. */
  problem: string;
  board: BenchBoard;
  cautions: readonly Caution[];
  sheets: Readonly<Record<string, string>>;
  /** The place whose record is looked up. */
  found: PlaceFacts | null;
  outbox: OutboxState;
  caseNumber: number;
  caseId: string;
  lineInput: RefObject<HTMLInputElement | null>;
  onRecord: () => void;
  onRetry: () => void;
  onPhoto: (photo: BenchPhoto) => void;
}

const MODES: readonly { mode: EntryMode; label: string }[] = [
  { mode: "line", label: "Line" },
  { mode: "fields", label: "Fields" },
  { mode: "pad", label: "Pad" },
];

/** Where checks are entered: always within reach at the end of the window. */
export function Dock(props: DockProps) {
  const { text, changeText, options, changeOptions, entry, problem, board, cautions, sheets, found } = props;
  const { outbox, caseNumber, caseId, onRecord, onRetry, onPhoto } = props;
  const check = entry.state === "empty" ? undefined : entry.checks[0];
  const fieldProblem = entry.state === "unfinished" && entry.field !== null ? entry : null;
  return (
    <section className={classNames(styles.dock, "no-print")} aria-label="Enter a check" data-dock>
      <WaitingCount outbox={outbox} caseNumber={caseNumber} onRetry={onRetry} />
      <div aria-live="polite">
        <Preview entry={entry} cautions={cautions} sheets={sheets} isShort={text.mode === "pad"} />
      </div>
      {found && board.facts && text.mode !== "pad" && (
        <details className={styles.dockLookUp}>
          <summary>Look up {placeName(found)}</summary>
          <LookUp found={found} facts={board.facts} sheets={sheets} />
        </details>
      )}
      {problem && (
        <p className={styles.problem} role="alert">
          <Shape name="cross" /> {problem}
        </p>
      )}
      {/* The method keeps an Enter that comes before the script from loading the page anew. */}
      <form
        method="dialog"
        onSubmit={(event) => {
          event.preventDefault();
          onRecord();
        }}
      >
        {text.mode === "line" && <LineInput {...props} />}
        {text.mode === "fields" && (
          <div className={styles.fieldsMode}>
            <PlaceAndReading {...props} />
            <OptionFields options={options} change={changeOptions} check={check} problem={fieldProblem} />
            <Button look="main" type="submit">
              Record
            </Button>
          </div>
        )}
        {text.mode === "pad" && (
          <NumberPad
            at={text.at}
            reading={text.reading}
            kind={check?.kind ?? options.kind ?? "dc-voltage"}
            onReading={(reading) => changeText({ reading })}
            previous={stepPlace(board, text.at, -1)}
            next={stepPlace(board, text.at, 1)}
            onStep={(at) => changeText({ at, reading: "", round: text.round + 1 })}
            onSave={onRecord}
            placeBox={<PlaceBox {...props} />}
            kindChoice={<PadKind {...props} />}
          />
        )}
        {text.mode === "line" && <Kept options={options} change={changeOptions} />}
        <div className={styles.tools}>
          <fieldset className={styles.modes} aria-label="How to enter">
            {MODES.map(({ mode, label }) => (
              <button
                key={mode}
                type="button"
                aria-pressed={text.mode === mode}
                onClick={() => changeText(modeChange(text, mode, check?.at))}
              >
                {label}
              </button>
            ))}
          </fieldset>
          <PhotoButton caseId={caseId} onPhoto={onPhoto} />
        </div>
      </form>
    </section>
  );
}

/** The place goes along into the other form; what was typed in each stays. */
function modeChange(text: EntryText, mode: EntryMode, at: string | undefined): Partial<EntryText> {
  const moves = text.mode === "line" && mode !== "line" && at !== undefined;
  return { mode, ...(moves && { at, round: text.round + 1 }) };
}

function placeName({ place, chip }: PlaceFacts): string {
  const name = place.kind === "net" ? place.net : place.designator.toUpperCase();
  return chip ? `${name} (${chip.name})` : name;
}

function LineInput({ text, changeText, entry, lineInput }: DockProps) {
  const id = useId();
  return (
    <div className={styles.line}>
      <label className="visually-hidden" htmlFor={id}>
        Place and reading, for instance U7.14 4.87
      </label>
      <input
        ref={lineInput}
        id={id}
        className={styles.lineInput}
        value={text.line}
        placeholder="U7.14 4.87"
        autoComplete="off"
        autoCapitalize="characters"
        autoCorrect="off"
        spellCheck={false}
        enterKeyHint="done"
        onChange={(event) => changeText({ line: event.target.value })}
        onKeyDown={(event: KeyboardEvent) => event.key === "Escape" && changeText({ line: "" })}
      />
      <Button look="main" type="submit">
        {entry.state === "ready" && entry.checks.length > 1 ? `Record ${entry.checks.length}` : "Record"}
      </Button>
    </div>
  );
}

/** A box with the board's places, that also takes any other. */
function PlaceBox({ text, changeText, board }: DockProps) {
  return (
    <div
      onInput={(event) => {
        const input = event.target;
        if (input instanceof HTMLInputElement && input.name === "at") changeText({ at: input.value });
      }}
    >
      <ComboBox
        key={text.round}
        label="Place"
        name="at"
        mono
        ownWords
        defaultText={text.at}
        options={board.facts ? placeOffers(board.facts, text.at) : []}
        placeholder="U7.14"
        onChoose={(chosen) => changeText({ at: chosen.value ?? chosen.text })}
      />
    </div>
  );
}

function PlaceAndReading(props: DockProps) {
  const { text, changeText } = props;
  return (
    <div className={styles.placeAndReading}>
      <PlaceBox {...props} />
      <TextField
        label="Reading"
        name="reading"
        mono
        value={text.reading}
        placeholder="4.87, 4k7, OL, noise"
        onChange={(event) => changeText({ reading: event.target.value })}
      />
    </div>
  );
}

function PadKind({ entry, options, changeOptions }: DockProps) {
  const check = entry.state === "empty" ? undefined : entry.checks[0];
  return (
    <select
      className={styles.padKind}
      aria-label="Kind"
      value={options.kind ?? ""}
      onChange={(event) => changeOptions({ kind: PAD_KINDS.find((kind) => kind === event.target.value) ?? null })}
    >
      <option value="">{check ? `guess: ${CHECK_KIND_WORDS[check.kind]}` : "guess the kind"}</option>
      {PAD_KINDS.map((kind) => (
        <option key={kind} value={kind}>
          {CHECK_KIND_WORDS[kind]}
        </option>
      ))}
    </select>
  );
}

/** Kinds that are read off a meter or probe pin by pin. */
const PAD_KINDS = [
  "dc-voltage",
  "diode",
  "continuity",
  "resistance",
  "level",
  "activity",
  "frequency",
  "ripple",
  "ac-voltage",
  "current",
  "capacitance",
  "esr",
] as const;

/** What was chosen and stays for the next check, each with a way to let go of it. */
function Kept({ options, change }: { options: EntryOptions; change: DockProps["changeOptions"] }) {
  const kept: { words: string; without: Partial<EntryOptions> }[] = [
    ...(options.kind ? [{ words: CHECK_KIND_WORDS[options.kind], without: { kind: null, what: null } }] : []),
    ...(options.lead ? [{ words: LEAD_WORDS[options.lead], without: { lead: null } }] : []),
    ...(options.when ? [{ words: options.when, without: { when: "" } }] : []),
    ...(options.power ? [{ words: POWER_WORDS[options.power], without: { power: null } }] : []),
    ...(options.expected ? [{ words: `expected ${options.expected}`, without: { expected: "" } }] : []),
    ...(options.to ? [{ words: `to ${options.to}`, without: { to: "" } }] : []),
    ...(options.note ? [{ words: "with a note", without: { note: "" } }] : []),
    ...(options.repeats ? [{ words: "repeats a failed check", without: { repeats: null } }] : []),
  ];
  if (kept.length === 0) return null;
  return (
    <ul className={styles.kept} aria-label="Also said of this check">
      {kept.map(({ words, without }) => (
        <li key={words}>
          {words}
          <button type="button" aria-label={`Not ${words}`} onClick={() => change(without)}>
            ×
          </button>
        </li>
      ))}
    </ul>
  );
}

function WaitingCount({ outbox, caseNumber, onRetry }: Pick<DockProps, "outbox" | "caseNumber" | "onRetry">) {
  const readings = outbox.items
    .filter((item) => item.refused === null)
    .reduce((sum, item) => sum + item.checks.length, 0);
  const refused = outbox.items.filter((item) => item.refused !== null);
  const elsewhere = [...new Set(refused.map((item) => item.case))].filter((number) => number !== caseNumber);
  const isLong = outbox.isCutOff || outbox.isSignedOut || !outbox.isKept;
  return (
    <output className={styles.waitingCount}>
      {readings > 0 && (
        <span className={styles.waitingLine}>
          <Shape name="hourglass" />
          <span>
            {readings === 1 ? "1 reading waits" : `${readings} readings wait`} for the server
            {outbox.isSignedOut && (
              <>
                : you are signed out. <Link href={`/signin?next=/cases/${caseNumber}/bench`}>Sign in</Link> and they are
                sent
              </>
            )}
            {!outbox.isKept && ". This browser keeps nothing: leave this page open until they are sent"}.
          </span>
          {isLong && <Button onClick={onRetry}>Try now</Button>}
        </span>
      )}
      {elsewhere.map((number) => (
        <span key={number} className={styles.waitingLine}>
          <Shape name="cross" />
          <span>
            A reading of <Link href={`/cases/${number}/bench`}>case {number}</Link> was refused and waits for you there.
          </span>
        </span>
      ))}
    </output>
  );
}
