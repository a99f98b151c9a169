import { describe, expect, test } from "vitest";
import { movesBetween, isThin, matchWord, type BenchAdvice } from "#lib/ui/bench-advice.ts";
import {
  checksOf,
  correctionOf,
  differingFields,
  draftOf,
  refreshed,
  shownReading,
  withChecks,
  type BenchCheck,
  type CheckDraft,
} from "#lib/ui/bench-checks.ts";

function check(id: string, overrides: Partial<BenchCheck> = {}): BenchCheck {
  return {
    id,
    position: 0,
    kind: "dc-voltage",
    at: "U7.14",
    placeKnown: true,
    to: "",
    lead: null,
    when: "",
    power: "on",
    what: null,
    outcome: null,
    expected: "5 V ±5 %",
    expectedFrom: "the board's record",
    measured: "4.2",
    unreadable: "",
    verdict: "out-of-spec",
    computedVerdict: "out-of-spec",
    chosenVerdict: null,
    chosenReason: "",
    because: "",
    outdated: false,
    note: "",
    takenAt: "2026-01-01T00:00:00.000Z",
    by: null,
    repeats: null,
    version: 1,
    ...overrides,
  };
}

describe("the list of checks", () => {
  const a = check("a");
  const b = check("b", { position: 1 });

  test("stays the same where nothing changed, so that nothing is drawn again", () => {
    const have = [a, b];
    expect(refreshed(have, [check("a"), check("b", { position: 1 })])).toBe(have);
  });

  test("takes what others entered, changed and deleted", () => {
    const newer = check("b", { position: 1, version: 2, measured: "4.9" });
    const c = check("c", { position: 2 });
    const next = refreshed([a, b], [newer, c]);
    expect(next).toEqual([newer, c]);
    expect(refreshed([a, b], [check("a"), newer])[0]).toBe(a);
  });

  test("takes a stored check in its place, and never an older state over a newer one", () => {
    expect(withChecks([b], [a])).toEqual([a, b]);
    const newer = check("a", { version: 3 });
    expect(withChecks([newer, b], [check("a", { version: 2 })])).toEqual([newer, b]);
  });

  test("is read from an answer with one check, with a run, and from nonsense", () => {
    expect([checksOf(a), checksOf({ checks: [a, b, { id: 1 }] }), checksOf("no"), checksOf(null)]).toEqual([
      [a],
      [a, b],
      [],
      [],
    ]);
  });

  test("shows readings as understood, or as typed where they were not", () => {
    expect(shownReading({ kind: "diode", measured: "612" })).toBe("612 mV");
    expect(shownReading({ kind: "dc-voltage", measured: "4.8 parsecs" })).toBe("4.8 parsecs");
    expect(shownReading({ kind: "dc-voltage", measured: "" })).toBe("not taken");
  });
});

describe("a correction", () => {
  const before = draftOf(check("a", { lead: "red", note: "n" }));
  const cases: [what: string, change: Partial<CheckDraft>, body: Record<string, string | null>][] = [
    ["nothing", {}, {}],
    ["the reading", { measured: " 4.9 " }, { measured: "4.9" }],
    ["a lead taken away", { lead: "" }, { lead: null }],
    ["a note emptied", { note: "" }, { note: "" }],
    ["another place: its expectation is looked up anew", { at: "U7.1" }, { at: "U7.1" }],
    [
      "another place with an expectation of one's own",
      { at: "U7.1", expected: "high" },
      { at: "U7.1", expected: "high" },
    ],
    ["a chosen verdict", { verdict: "in-spec", reason: " worn meter " }, { verdict: "in-spec", reason: "worn meter" }],
    [
      "a trial",
      { kind: "trial", what: "reseat", measured: "no change" },
      { kind: "trial", what: "reseat", measured: "no change", outcome: "no-change" },
    ],
  ];
  test.each(cases)("of %s", (_what, change, body) => {
    expect(correctionOf(before, { ...before, ...change })).toEqual(body);
  });

  test("takes a chosen verdict back with its reason", () => {
    const chosen = draftOf(check("a", { chosenVerdict: "in-spec", chosenReason: "worn meter" }));
    expect(correctionOf(chosen, { ...chosen, verdict: "", reason: "" })).toEqual({ verdict: null });
  });

  test("names the fields in which two versions differ", () => {
    expect(differingFields(before, { ...before, measured: "5", note: "m" })).toEqual(["measured", "note"]);
  });
});

describe("advice", () => {
  const advice = (scores: [number, number][], causes: [string, number][], somethingElse = 0.2): BenchAdvice => ({
    similar: scores.map(([number, score]) => ({
      case: number,
      title: "",
      score,
      matched: [],
      contradicted: [],
      unchecked: [],
      board: null,
      cause: "",
      cure: "",
      helped: 0,
      didNotHelp: 0,
    })),
    causes: causes.map(([at, probability]) => ({ at, chip: null, failure: "dead", probability, because: [] })),
    somethingElse,
    next: [],
    basis: { cases: 3, evidenceBits: 1 },
  });

  test("the first answer marks nothing", () => {
    expect(movesBetween(null, advice([[1, 0.5]], [["U7", 0.6]])).similar.size).toBe(0);
  });

  test("what came, gained and lost is marked; what hardly moved is not", () => {
    const before = advice(
      [
        [1, 0.5],
        [2, 0.4],
      ],
      [
        ["U7", 0.5],
        ["U8", 0.3],
      ],
    );
    const after = advice(
      [
        [1, 0.51],
        [3, 0.4],
      ],
      [
        ["U7", 0.7],
        ["U8", 0.1],
      ],
    );
    const moves = movesBetween(before, after);
    expect([...moves.similar]).toEqual([["3", "new"]]);
    expect([...moves.causes]).toEqual([
      ["U7  dead", "up"],
      ["U8  dead", "down"],
    ]);
  });

  test("an estimate is thin without causes, with mostly something else, or with hardly any evidence", () => {
    const good = advice([], [["U7", 0.8]]);
    expect([
      isThin(good),
      isThin(advice([], [])),
      isThin(advice([], [["U7", 0.3]], 0.7)),
      isThin({ ...good, basis: { cases: 1, evidenceBits: 0.1 } }),
    ]).toEqual([false, true, true, true]);
  });

  test("a score has a word", () => {
    expect([0.9, 0.5, 0.2, 0.05].map(matchWord)).toEqual(["strong match", "good match", "some match", "faint match"]);
  });
});
