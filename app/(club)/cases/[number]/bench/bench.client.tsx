"use client";

import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from "react";
import { v7 } from "uuid";
import type { BoardFacts, Caution, PlaceFacts } from "#lib/core/board/index.ts";
import type { BenchAdvice } from "#lib/ui/bench-advice.ts";
import type { BenchCheck } from "#lib/ui/bench-checks.ts";
import {
  benchBoard,
  checksToSend,
  entryOfFields,
  entryOfLine,
  lineFor,
  NO_OPTIONS,
  optionsForNext,
  type Entry,
  type EntryOptions,
} from "#lib/ui/bench-entry.ts";
import type { OutboxItem } from "#lib/ui/bench-outbox.ts";
import { stepPlace } from "#lib/ui/bench-places.ts";
import { Section } from "#lib/ui/section.tsx";
import { VERDICT_WORDS } from "#lib/ui/words.ts";
import { Advice } from "./advice.client.tsx";
import { useAdvice, useCaseChecks, useOutbox } from "./bench-data.client.tsx";
import { CautionList } from "./cautions.client.tsx";
import { CheckList } from "./check-list.client.tsx";
import { Dock, type EntryText } from "./dock.client.tsx";
import { LookUp } from "./look-up.client.tsx";
import type { BenchPhoto } from "./photo.client.tsx";
import styles from "./bench.module.css";

export interface BenchProps {
  caseNumber: number;
  caseId: string;
  /** Handle of whoever works here. */
  member: string;
  /** Null: the board has no record. */
  facts: BoardFacts | null;
  /** Sheet of the drawings by designator. */
  sheets: Readonly<Record<string, string>>;
  cautions: readonly Caution[];
  ticked: readonly string[];
  checks: readonly BenchCheck[];
  advice: BenchAdvice;
  photos: readonly BenchPhoto[];
  zone: string;
  /** The head of the page: within, since the entry can only stay in sight over what it stands in. */
  children: ReactNode;
}

const EMPTY_TEXT: EntryText = { mode: "line", line: "", at: "", reading: "", round: 0 };

/** The page for the bench: what was measured, what to make of it, and the next check always at hand. */
export function Bench(props: BenchProps) {
  const { caseNumber, caseId, member, facts, sheets, cautions, ticked, zone } = props;
  const board = useMemo(() => benchBoard(facts), [facts]);
  const [said, setSaid] = useState("");
  const data = useCaseChecks(caseNumber, props.checks, setSaid);
  const { stored } = data;
  const onStored = useCallback(
    (item: OutboxItem, checks: BenchCheck[]) => {
      if (item.case === caseNumber) stored(checks);
    },
    [caseNumber, stored],
  );
  const { outbox, state: waiting } = useOutbox(member, onStored);
  const advice = useAdvice(caseNumber, props.advice, data.checks);
  const [photos, setPhotos] = useState(props.photos);

  const [text, setText] = useState(EMPTY_TEXT);
  const [options, setOptions] = useState(NO_OPTIONS);
  const [problem, setProblem] = useState("");
  /** The refused reading that is being corrected: it goes when its replacement is recorded. */
  const [correcting, setCorrecting] = useState<string | null>(null);
  /** Goes up with each record, so that the list then shows its end. */
  const [recorded, setRecorded] = useState(0);
  const lineInput = useRef<HTMLInputElement>(null);
  const end = useRef<HTMLDivElement>(null);

  const entry = useMemo<Entry>(
    () =>
      text.mode === "line"
        ? entryOfLine(text.line, options, board)
        : entryOfFields({ at: text.at, measured: text.reading }, options, board),
    [text, options, board],
  );
  const found = useLastFound(entry);

  const focusLine = useCallback(() => lineInput.current?.focus({ preventScroll: true }), []);
  useEffect(() => {
    // On a phone the focus would open the keyboard over a page that nobody has read yet.
    if (window.matchMedia("(hover: hover)").matches) focusLine();
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== "/" || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      event.preventDefault();
      setText((now) => ({ ...now, mode: "line" }));
      requestAnimationFrame(focusLine);
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [focusLine]);

  useEffect(() => {
    // The entry lies over the end of the window, so the list has to end above it.
    const dock = end.current?.closest("div[data-bench]")?.querySelector<HTMLElement>("[data-dock]");
    if (recorded === 0 || !end.current || !dock) return;
    end.current.style.scrollMarginBottom = `${dock.offsetHeight}px`;
    end.current.scrollIntoView({ block: "nearest" });
  }, [recorded]);

  function changeText(next: Partial<EntryText>) {
    setText((now) => ({ ...now, ...next }));
    setProblem("");
  }

  function changeOptions(next: Partial<EntryOptions>) {
    setOptions((now) => ({ ...now, ...next }));
    setProblem("");
  }

  /** Puts a check into the entry line, ready for its reading. */
  function begin(line: string, given: Partial<EntryOptions>) {
    setText((now) => ({ ...now, mode: "line", line }));
    setOptions({ ...NO_OPTIONS, ...given });
    setProblem("");
    requestAnimationFrame(() => {
      focusLine();
      lineInput.current?.setSelectionRange(line.length, line.length);
    });
  }

  function record() {
    if (!outbox) return;
    if (entry.state === "empty") return setProblem("Nothing was typed. Write for example: U7.14 4.87 V");
    if (entry.state === "unfinished") return setProblem(entry.problem);
    const checks = checksToSend(entry.checks, options, { newId: v7, now: new Date().toISOString() });
    const [first] = entry.checks;
    const line = text.mode === "line" ? text.line : `${text.at} ${text.reading}`;
    outbox.add({ id: v7(), case: caseNumber, line, checks, refused: null });
    if (correcting) outbox.drop(correcting);
    setCorrecting(null);
    setProblem("");
    setOptions(optionsForNext(options));
    setText((now) => cleared(now, stepPlace(board, now.at, 1)));
    if (first && checks.length === 1) setSaid(`Recorded ${first.at} ${first.shown}, ${VERDICT_WORDS[first.verdict]}.`);
    else setSaid(`Recorded ${checks.length} checks.`);
    setRecorded((now) => now + 1);
  }

  function correct(item: OutboxItem) {
    const [check] = item.checks;
    const guessed = entryOfLine(item.line, NO_OPTIONS, board);
    const isGuess = guessed.state !== "empty" && guessed.checks[0]?.kind === check?.kind;
    setCorrecting(item.id);
    begin(item.line, {
      kind: isGuess ? null : (check?.kind ?? null),
      what: check?.what ?? null,
      expected: check?.expected ?? "",
      when: check?.when ?? "",
      power: check?.power ?? null,
      note: check?.note ?? "",
      repeats: check?.repeats ?? null,
    });
  }

  const own = waiting.items.filter((item) => item.case === caseNumber);
  const addPhoto = (photo: BenchPhoto) => setPhotos((now) => [...now, photo]);
  return (
    <div className={styles.bench} data-bench>
      <div className={styles.work}>
        <div>{props.children}</div>
        <CautionList caseNumber={caseNumber} cautions={cautions} ticked={ticked} />
        <div className={styles.listArea}>
          <Section id="checks" title="Checks" count={data.checks.length - data.going.length}>
            <CheckList
              data={data}
              waiting={own}
              board={board}
              cautions={cautions}
              caseId={caseId}
              member={member}
              zone={zone}
              onRepeat={(check) =>
                begin(lineFor(check), {
                  repeats: check.id,
                  lead: check.lead,
                  when: check.when,
                  expected: check.expectedFrom === "the person" ? check.expected : "",
                })
              }
              onCorrect={correct}
              onDrop={(item) => outbox?.drop(item.id)}
              onPhoto={addPhoto}
            />
          </Section>
          <Photos photos={photos} />
          <div ref={end} className={styles.listEnd} />
        </div>
        <Dock
          text={text}
          changeText={changeText}
          options={options}
          changeOptions={changeOptions}
          entry={entry}
          problem={problem}
          board={board}
          cautions={cautions}
          sheets={sheets}
          found={found}
          outbox={waiting}
          caseNumber={caseNumber}
          caseId={caseId}
          lineInput={lineInput}
          onRecord={record}
          onRetry={() => outbox?.retry()}
          onPhoto={addPhoto}
        />
      </div>
      <div className={styles.side}>
        {facts && (
          <div className={styles.sideLookUp}>
            <Section id="here" title="Under the probe">
              {found ? (
                <LookUp found={found} facts={facts} sheets={sheets} />
              ) : (
                <p className={styles.from}>Type a place to see its chip, pin and net.</p>
              )}
            </Section>
          </div>
        )}
        <Advice
          advice={advice.advice}
          moves={advice.moves}
          isOld={advice.isOld}
          hasFailed={data.checks.some((check) => check.verdict === "out-of-spec")}
          chipNames={chipNames(facts)}
          onTake={(check) => begin(lineFor(check), {})}
        />
      </div>
      <output className="visually-hidden">{said}</output>
    </div>
  );
}

/** After a check: the line is empty, the pad stands on the next pin. */
function cleared(text: EntryText, next: string | null): EntryText {
  switch (text.mode) {
    case "line":
      return { ...text, line: "" };
    case "fields":
      return { ...text, reading: "" };
    case "pad":
      return { ...text, reading: "", at: next ?? text.at, round: text.round + 1 };
  }
}

/** The place that is being typed; the last one while nothing is. */
function useLastFound(entry: Entry): PlaceFacts | null {
  const [last, setLast] = useState<PlaceFacts | null>(null);
  const checks = entry.state === "empty" ? [] : entry.checks;
  const here = (checks.find((check) => check.measured === "") ?? checks.at(-1))?.found ?? null;
  if (here !== null && here !== last && JSON.stringify(here.place) !== JSON.stringify(last?.place)) setLast(here);
  return here ?? last;
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && (target.isContentEditable || /^(input|textarea|select)$/i.test(target.tagName))
  );
}

function chipNames(facts: BoardFacts | null): Record<string, string> {
  return Object.fromEntries(Object.values(facts?.chips ?? {}).map((chip) => [chip.slug, chip.name]));
}

function Photos({ photos }: { photos: readonly BenchPhoto[] }) {
  if (photos.length === 0) return null;
  return (
    <ul className={styles.photos} aria-label="Photos of this case">
      {photos.map((photo, index) => (
        <li key={photo.id}>
          <a href={photo.url}>
            {/* The club's own file: Next's image service would only make it again. */}
            {/* oxlint-disable-next-line nextjs/no-img-element */}
            <img src={photo.thumb ?? photo.url} alt={`${index + 1}, ${photo.name}`} loading="lazy" />
          </a>
        </li>
      ))}
    </ul>
  );
}
