import { isNotTaken, printReading, readReading } from "#lib/core/quantity/index.ts";
import type { CheckKind, Lead, PowerState, Trial, TrialOutcome, Verdict } from "#lib/core/shared/index.ts";
import { NO_OPTIONS, type BenchBoard, type CheckToSend, type UnderstoodCheck, entryOfFields } from "./bench-entry.ts";

/** A recorded check, as the interface answers it. */
export interface BenchCheck {
  id: string;
  position: number;
  kind: CheckKind;
  at: string;
  placeKnown: boolean;
  to: string;
  lead: Lead | null;
  when: string;
  power: PowerState;
  what: Trial | null;
  outcome: TrialOutcome | null;
  expected: string;
  expectedFrom: string;
  measured: string;
  unreadable: string;
  verdict: Verdict;
  computedVerdict: Verdict;
  chosenVerdict: Verdict | null;
  chosenReason: string;
  because: string;
  outdated: boolean;
  note: string;
  takenAt: string;
  by: { handle: string; name: string } | null;
  repeats: string | null;
  version: number;
}

/** The checks that an answer holds; what is none of ours is passed over. */
export function checksOf(answer: unknown): BenchCheck[] {
  const list = typeof answer === "object" && answer !== null && "checks" in answer ? answer.checks : [answer];
  return Array.isArray(list) ? list.filter(isCheck) : [];
}

export function isCheck(raw: unknown): raw is BenchCheck {
  if (typeof raw !== "object" || raw === null) return false;
  const { id, at, kind, version, verdict } = raw as Record<string, unknown>;
  const texts = [id, at, kind, verdict].every((one) => typeof one === "string");
  return texts && typeof version === "number";
}

/**
 * The list after an answer that holds the whole case: the server's order and state. Checks that did not change stay the
 * same objects, so that only what changed is drawn again.
 */
export function refreshed(have: readonly BenchCheck[], all: readonly BenchCheck[]): readonly BenchCheck[] {
  const known = new Map(have.map((check) => [check.id, check]));
  const next = all.map((check) => {
    const before = known.get(check.id);
    const same = before && before.version === check.version && before.outdated === check.outdated;
    return same && before.position === check.position ? before : check;
  });
  return next.length === have.length && next.every((check, index) => check === have[index]) ? have : next;
}

/** The list with these checks added or replaced. A newer state that is there already stays. */
export function withChecks(have: readonly BenchCheck[], fresh: readonly BenchCheck[]): readonly BenchCheck[] {
  const byId = new Map(have.map((check) => [check.id, check]));
  for (const check of fresh) {
    const before = byId.get(check.id);
    if (!before || before.version <= check.version) byId.set(check.id, check);
  }
  return [...byId.values()].toSorted((a, b) => a.position - b.position);
}

/** The reading as understood (`612 mV`); as typed where it could not be. */
export function shownReading({ measured, kind }: Pick<BenchCheck, "measured" | "kind">): string {
  if (isNotTaken(measured)) return "not taken";
  const read = readReading(measured, kind);
  return read.ok ? printReading(read.value) : measured;
}

/** What the server will make of a check that it does not have yet. */
export function previewOf(check: CheckToSend, board: BenchBoard): UnderstoodCheck | null {
  const options = {
    ...NO_OPTIONS,
    kind: check.kind,
    what: check.what ?? null,
    expected: check.expected ?? "",
    to: check.to ?? "",
    lead: check.lead ?? null,
  };
  const entry = entryOfFields({ at: check.at, measured: check.measured }, options, board);
  return entry.state === "empty" ? null : (entry.checks[0] ?? null);
}

/** Fields of a check that a person may correct, as texts of a form. */
export interface CheckDraft {
  kind: CheckKind;
  at: string;
  to: string;
  lead: Lead | "";
  when: string;
  power: PowerState;
  what: Trial | "";
  expected: string;
  measured: string;
  verdict: Verdict | "";
  reason: string;
  note: string;
}

export const DRAFT_WORDS: Record<keyof CheckDraft, string> = {
  kind: "Kind",
  at: "Place",
  to: "Second point",
  lead: "Lead",
  when: "Condition",
  power: "Power",
  what: "What was tried",
  expected: "Expected",
  measured: "Reading",
  verdict: "Chosen verdict",
  reason: "Why this verdict",
  note: "Note",
};

export function draftOf(check: BenchCheck): CheckDraft {
  return {
    kind: check.kind,
    at: check.at,
    to: check.to,
    lead: check.lead ?? "",
    when: check.when,
    power: check.power,
    what: check.what ?? "",
    expected: check.expected,
    measured: check.measured,
    verdict: check.chosenVerdict ?? "",
    reason: check.chosenReason,
    note: check.note,
  };
}

/** Names of the fields in which two drafts differ. */
export function differingFields(a: CheckDraft, b: CheckDraft): (keyof CheckDraft)[] {
  const fields = Object.keys(DRAFT_WORDS) as (keyof CheckDraft)[];
  return fields.filter((field) => a[field] !== b[field]);
}

const OUTCOMES: ReadonlyMap<string, TrialOutcome> = new Map([
  ["changed", "changed"],
  ["no change", "no-change"],
  ["no-change", "no-change"],
  ["cured", "cured"],
]);

/** The body of a correction: only what differs from what was read. Null takes a field away. */
export function correctionOf(before: CheckDraft, after: CheckDraft): Record<string, string | null> {
  const nullable: ReadonlySet<keyof CheckDraft> = new Set(["lead", "what", "verdict"]);
  const body: Record<string, string | null> = {};
  for (const field of differingFields(before, after)) {
    const value = after[field].trim();
    body[field] = value === "" && nullable.has(field) ? null : value;
  }
  // An expectation that was filled in belongs to its place and kind; moved elsewhere, it is looked up anew.
  if (("kind" in body || "at" in body) && before.expected === after.expected) delete body["expected"];
  if ("measured" in body && after.kind === "trial")
    body["outcome"] = OUTCOMES.get(after.measured.trim().toLowerCase()) ?? null;
  if ("kind" in body && after.kind !== "trial") Object.assign(body, { what: null, outcome: null });
  if (body["verdict"] === null) delete body["reason"];
  if (after.verdict !== "" && "verdict" in body) body["reason"] = after.reason.trim();
  return body;
}
