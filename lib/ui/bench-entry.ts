import { boardNames, expectationAt, placeFacts, type BoardFacts, type PlaceFacts } from "#lib/core/board/index.ts";
import { printPlace, readCheckRun, readPlace, type BoardNames, type CheckEntry } from "#lib/core/netlist/index.ts";
import {
  isNotTaken,
  printReading,
  readExpectation,
  readReading,
  type Expectation,
  type Reading,
} from "#lib/core/quantity/index.ts";
import { judge } from "#lib/core/reading/index.ts";
import {
  TRIAL_OUTCOMES,
  type CheckKind,
  type Lead,
  type PowerState,
  type Trial,
  type TrialOutcome,
  type Verdict,
} from "#lib/core/shared/index.ts";
import { guessKind, type KindSource } from "./bench-kind.ts";

/** The board under the probe, with what is looked up again at every letter worked out once. */
export interface BenchBoard {
  /** Null: a board without a record. */
  facts: BoardFacts | null;
  names: BoardNames | undefined;
}

export function benchBoard(facts: BoardFacts | null): BenchBoard {
  return { facts, names: facts ? boardNames(facts) : undefined };
}

/** What is said of a check besides place and reading. An empty text or null: not said. */
export interface EntryOptions {
  kind: CheckKind | null;
  what: Trial | null;
  expected: string;
  to: string;
  lead: Lead | null;
  when: string;
  power: PowerState | null;
  note: string;
  /** Id of the check that this one repeats. */
  repeats: string | null;
}

export const NO_OPTIONS: EntryOptions = {
  kind: null,
  what: null,
  expected: "",
  to: "",
  lead: null,
  when: "",
  power: null,
  note: "",
  repeats: null,
};

/** What stays for the next check: how one measures does, what belongs to one place does not. */
export function optionsForNext({ kind, what, lead, when, power }: EntryOptions): EntryOptions {
  return { ...NO_OPTIONS, kind, what, lead, when, power };
}

/** One check as understood while it is typed. */
export interface UnderstoodCheck {
  at: string;
  found: PlaceFacts | null;
  /** False: the board's record has no such place. True also where there is no record. */
  known: boolean;
  to: string;
  kind: CheckKind;
  kindFrom: KindSource;
  what: Trial | null;
  outcome: TrialOutcome | null;
  lead: Lead | null;
  /** As typed; empty: not typed yet. */
  measured: string;
  /** The reading as understood, in its usual spelling. */
  shown: string;
  /** Why the reading could not be read; it is kept as typed all the same. */
  unreadable: string;
  expected: string;
  expectedFrom: string;
  verdict: Verdict;
  because: string;
}

export type EntryField = "place" | "expected" | "to" | "what";

/** What a line, or a set of fields, comes to. `checks` of an unfinished one are what could be read so far. */
export type Entry =
  | { state: "empty" }
  | { state: "unfinished"; checks: UnderstoodCheck[]; problem: string; field: EntryField | null }
  | { state: "ready"; checks: UnderstoodCheck[] };

/** A reading of a run that is not there yet; the reader of lines takes it for "not taken". */
const NOT_YET = "?";
/** Longest run that is shown while its readings are still being typed. */
const LONGEST_SHOWN_RUN = 48;

/** Reads one typed line: see `readCheckRun` for what it may say. */
export function entryOfLine(line: string, options: EntryOptions, board: BenchBoard): Entry {
  if (line.trim() === "") return { state: "empty" };
  const run = readCheckRun(line, board.names);
  if (run.ok) return entryOf(run.value, options, board);
  const checks = unfinishedRun(line, board.names).map((one) => understood(one, options, board));
  return { state: "unfinished", checks, problem: run.problem, field: null };
}

/** Reads place and reading from fields of their own. */
export function entryOfFields(
  { at, measured }: { at: string; measured: string },
  options: EntryOptions,
  board: BenchBoard,
): Entry {
  if (at.trim() === "" && measured.trim() === "") return { state: "empty" };
  const place = readPlace(at, board.names);
  if (!place.ok) return { state: "unfinished", checks: [], problem: place.problem, field: "place" };
  const one: CheckEntry = { place: place.value, at: printPlace(place.value), measured: measured.trim() };
  const entry = entryOf([one], options, board);
  if (entry.state !== "ready" || one.measured !== "") return entry;
  return {
    ...entry,
    state: "unfinished",
    problem: `${one.at} has no reading yet. Write - where none could be taken.`,
    field: null,
  };
}

function entryOf(run: readonly CheckEntry[], options: EntryOptions, board: BenchBoard): Entry {
  const checks = run.map((one) => understood(one, options, board));
  const wrong = checks.map((check) => problemOf(check, options, board)).find((problem) => problem !== null);
  return wrong ? { state: "unfinished", checks, ...wrong } : { state: "ready", checks };
}

/** The line as far as it is typed: places whose readings are missing have an empty one. */
function unfinishedRun(line: string, names: BoardNames | undefined): CheckEntry[] {
  const blank = (run: CheckEntry[]) =>
    run.map((one) => (one.measured === NOT_YET ? { ...one, measured: "" } : { ...one }));
  for (let missing = 1; missing <= LONGEST_SHOWN_RUN; missing++) {
    const run = readCheckRun(`${line}${` ${NOT_YET}`.repeat(missing)}`, names);
    if (run.ok) return blank(run.value);
  }
  const first = line.trim().split(/\s+/)[0] ?? "";
  const place = readPlace(first, names);
  return place.ok ? [{ place: place.value, at: printPlace(place.value), measured: "" }] : [];
}

function understood(one: CheckEntry, options: EntryOptions, { facts, names }: BenchBoard): UnderstoodCheck {
  const found = facts ? placeFacts(facts, one.place) : null;
  const { kind, from } = kindOf(one, options, found, facts);
  const what = kind === "trial" ? (one.trial ?? options.what) : null;
  const { expectation, expected, expectedFrom } = expectationOf(found, kind, options);
  const read = isNotTaken(one.measured) ? null : readReading(one.measured, kind);
  const reading = read?.ok ? read.value : null;
  const judgement = judge({
    kind,
    expected: expectation,
    measured: reading,
    ...(found?.chip && { technology: found.chip.technology }),
  });
  const unreadable = read && !read.ok ? (read.problem.question ?? read.problem.reason) : "";
  return {
    at: one.at,
    found,
    known: found === null || found.known,
    to: one.to ?? spelled(options.to, names),
    kind,
    kindFrom: from,
    what,
    outcome: kind === "trial" ? outcomeOf(reading) : null,
    lead: one.lead ?? options.lead,
    measured: one.measured,
    shown: reading ? printReading(reading) : one.measured,
    unreadable,
    expected,
    expectedFrom,
    verdict: unreadable ? "noted" : judgement.verdict,
    because: unreadable ? `The reading could not be read: ${unreadable}` : judgement.text,
  };
}

function kindOf(one: CheckEntry, options: EntryOptions, found: PlaceFacts | null, facts: BoardFacts | null) {
  if (one.kind !== undefined) return { kind: one.kind, from: "typed" as const };
  if (options.kind !== null) return { kind: options.kind, from: "chosen" as const };
  return guessKind(one.measured, found, facts?.highestVoltage ?? null);
}

function expectationOf(
  found: PlaceFacts | null,
  kind: CheckKind,
  options: EntryOptions,
): { expectation: Expectation | null; expected: string; expectedFrom: string } {
  const typed = options.expected.trim();
  if (typed !== "") {
    const read = readExpectation(typed, kind);
    return { expectation: read.ok ? read.value : null, expected: typed, expectedFrom: "as you typed it" };
  }
  const known = found && kind !== "trial" ? expectationAt(found, kind) : null;
  if (!known) return { expectation: null, expected: "", expectedFrom: "" };
  return { expectation: known.expectation, expected: known.text, expectedFrom: known.from };
}

function outcomeOf(reading: Reading | null): TrialOutcome | null {
  if (reading?.form !== "state") return null;
  return TRIAL_OUTCOMES.find((outcome) => outcome === reading.state) ?? null;
}

function spelled(to: string, names: BoardNames | undefined): string {
  const place = readPlace(to, names);
  return place.ok ? printPlace(place.value) : to.trim();
}

/** What the server would refuse: a reading never is. */
function problemOf(
  check: UnderstoodCheck,
  options: EntryOptions,
  { names }: BenchBoard,
): { problem: string; field: EntryField } | null {
  if (check.kind === "trial" && check.what === null)
    return { field: "what", problem: "What was tried? Choose it, or write it before the outcome: U7 reseat no change" };
  const expected = options.expected.trim();
  if (expected !== "") {
    const read = readExpectation(expected, check.kind);
    if (!read.ok)
      return {
        field: "expected",
        problem: `What is expected cannot be read. ${read.problem.question ?? read.problem.reason}`,
      };
  }
  if (options.to.trim() !== "") {
    const to = readPlace(options.to, names);
    if (!to.ok) return { field: "to", problem: `The second point cannot be read. ${to.problem}` };
  }
  return null;
}

/** A check as the interface takes it. */
export interface CheckToSend {
  id: string;
  kind: CheckKind;
  at: string;
  to?: string;
  lead?: Lead;
  when?: string;
  power?: PowerState;
  expected?: string;
  measured: string;
  what?: Trial;
  outcome?: TrialOutcome;
  note?: string;
  takenAt: string;
  repeats?: string;
}

/** The checks of a ready entry as they are sent and kept. `now` is RFC 3339. */
export function checksToSend(
  checks: readonly UnderstoodCheck[],
  options: EntryOptions,
  { newId, now }: { newId: () => string; now: string },
): CheckToSend[] {
  const { expected, when, power, note, repeats } = options;
  return checks.map((check) => ({
    id: newId(),
    kind: check.kind,
    at: check.at,
    ...(check.to !== "" && { to: check.to }),
    ...(check.lead !== null && { lead: check.lead }),
    ...(when.trim() !== "" && { when: when.trim() }),
    ...(power !== null && { power }),
    ...(expected.trim() !== "" && { expected: expected.trim() }),
    // A place that was left out is sent as one: its dash is no reading.
    measured: isNotTaken(check.measured) ? "" : check.measured,
    ...(check.what !== null && { what: check.what }),
    ...(check.outcome !== null && { outcome: check.outcome }),
    ...(note.trim() !== "" && { note: note.trim() }),
    takenAt: now,
    ...(repeats !== null && checks.length === 1 && { repeats }),
  }));
}

/** A line that begins a check of this kind here, for a proposal that was taken up or a check to repeat. */
export function lineFor(check: { at: string; kind: CheckKind; what?: Trial | null; to?: string }): string {
  const kind = check.kind === "trial" ? (check.what ?? "trial") : check.kind;
  return `${check.at} ${kind}${check.to ? ` to ${check.to}` : ""} `;
}
