import { boardNames, expectationAt, placeFacts, type BoardFacts, type PlaceFacts } from "#lib/core/board/index.ts";
import { printPlace, readPlace } from "#lib/core/netlist/index.ts";
import { isNotTaken, readExpectation, readReading, type Expectation, type Reading } from "#lib/core/quantity/index.ts";
import { judge, JUDGE_VERSION, type Instrument } from "#lib/core/reading/index.ts";
import type { CheckKind, PowerState } from "#lib/core/shared/index.ts";
import { invalid } from "../errors.ts";
import type { CheckInput } from "./schema.ts";

/** Kinds that are made with the power off. Common practice, no source. */
const POWER_OFF_KINDS = new Set<CheckKind>([
  "visual",
  "continuity",
  "resistance",
  "diode",
  "capacitance",
  "esr",
  "contents",
]);

export function usualPower(kind: CheckKind): PowerState {
  return POWER_OFF_KINDS.has(kind) ? "off" : "on";
}

/** What the database keeps of a check besides whose and when. */
export interface JudgedCheck {
  kind: CheckKind;
  at: string;
  placeKnown: boolean;
  to: string;
  lead: string | null;
  when: string;
  power: PowerState;
  what: string | null;
  outcome: string | null;
  expected: string;
  expectedFrom: string;
  measured: string;
  value: number | null;
  unit: string | null;
  reading: string | null;
  unreadable: string;
  computedVerdict: string;
  chosenVerdict: string | null;
  chosenReason: string;
  because: string;
  direction: string | null;
  size: string | null;
  judgeVersion: number;
  note: string;
}

type Given = Omit<CheckInput, "id" | "takenAt" | "repeats" | "instrument">;

/**
 * Works a check out: the place in its one spelling, the expectation from the board's record where none was given, and
 * the verdict. A reading that cannot be read is kept as typed, with the reason; a place that cannot be read is refused.
 */
export function judgedCheck(
  facts: BoardFacts | null,
  given: Given,
  path: string,
  instrument?: Instrument,
): JudgedCheck {
  const found = placeOf(facts, given.at, `${path}at`);
  const to = given.to ? spelledPlace(facts, given.to, `${path}to`) : "";
  const { expectation, expected, expectedFrom } = expectationOf(found, given, path);
  const typed = given.measured ?? "";
  const read = typed === "" || isNotTaken(typed) ? null : readReading(typed, given.kind);
  const reading = read?.ok ? read.value : null;
  const judgement = judge({
    kind: given.kind,
    expected: expectation,
    measured: reading,
    ...(instrument && { instrument }),
    ...(found.chip && { technology: found.chip.technology }),
  });
  const unreadable = read && !read.ok ? (read.problem.question ?? read.problem.reason) : "";
  return {
    kind: given.kind,
    at: printPlace(found.place),
    placeKnown: facts === null || found.known,
    to,
    lead: given.lead ?? null,
    when: given.when ?? "",
    power: given.power ?? usualPower(given.kind),
    what: given.what ?? null,
    outcome: given.outcome ?? null,
    expected,
    expectedFrom,
    measured: typed,
    ...readingColumns(reading),
    unreadable,
    computedVerdict: unreadable ? "noted" : judgement.verdict,
    chosenVerdict: given.verdict ?? null,
    chosenReason: given.reason ?? "",
    because: unreadable ? `The reading could not be read: ${unreadable}` : judgement.text,
    direction: judgement.direction,
    size: judgement.size,
    judgeVersion: JUDGE_VERSION,
    note: given.note ?? "",
  };
}

function placeOf(facts: BoardFacts | null, typed: string, path: string): PlaceFacts {
  const place = readPlace(typed, facts ? boardNames(facts) : undefined);
  if (!place.ok) throw invalid(path, place.problem);
  if (facts) return placeFacts(facts, place.value);
  return {
    place: place.value,
    known: false,
    placement: null,
    chip: null,
    pin: null,
    connectorPin: null,
    net: null,
    rail: null,
  };
}

function spelledPlace(facts: BoardFacts | null, typed: string, path: string): string {
  return printPlace(placeOf(facts, typed, path).place);
}

function expectationOf(
  found: PlaceFacts,
  given: Given,
  path: string,
): { expectation: Expectation | null; expected: string; expectedFrom: string } {
  if (given.expected !== undefined && given.expected !== "") {
    const read = readExpectation(given.expected, given.kind);
    if (!read.ok) throw invalid(`${path}expected`, read.problem.question ?? read.problem.reason);
    return { expectation: read.value, expected: given.expected, expectedFrom: "the person" };
  }
  const known = given.expected === undefined && given.kind !== "trial" ? expectationAt(found, given.kind) : null;
  if (!known) return { expectation: null, expected: "", expectedFrom: "" };
  return { expectation: known.expectation, expected: known.text, expectedFrom: known.from };
}

function readingColumns(reading: Reading | null): Pick<JudgedCheck, "value" | "unit" | "reading"> {
  if (reading === null) return { value: null, unit: null, reading: null };
  switch (reading.form) {
    case "value":
      return { value: reading.quantity.value, unit: reading.quantity.unit, reading: null };
    case "over-limit":
      return { value: null, unit: null, reading: "over-limit" };
    case "state":
      return { value: null, unit: null, reading: reading.state };
    case "words":
      return { value: null, unit: null, reading: null };
  }
}
