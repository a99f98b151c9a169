import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CHECK_KINDS } from "#lib/core/shared/index.ts";
import { judgedCheck } from "#lib/services/cases/index.ts";
import { CheckInput } from "#lib/services/cases/schema.ts";
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
import { board as facts } from "./bench-board.ts";

const board = benchBoard(facts);
const unrecorded = benchBoard(null);

function checksIn(entry: Entry) {
  return entry.state === "empty" ? [] : entry.checks;
}

function read(line: string, options: Partial<EntryOptions> = {}) {
  return entryOfLine(line, { ...NO_OPTIONS, ...options }, board);
}

describe("a typed line", () => {
  const lines: [line: string, at: string, kind: string, from: string, shown: string, verdict: string][] = [
    ["U7.8 4.87", "U7.8", "dc-voltage", "usual", "4.87 V", "in-spec"],
    ["U7.8 4.2V", "U7.8", "dc-voltage", "unit", "4.2 V", "out-of-spec"],
    ["+5V 4.91", "+5V", "dc-voltage", "usual", "4.91 V", "in-spec"],
    ["+5V 80mVpp", "+5V", "ripple", "unit", "80 mVpp", "noted"],
    ["U7.1 noise", "U7.1", "activity", "reading", "noise", "out-of-spec"],
    ["U7.2 stuck low", "U7.2", "activity", "reading", "stuck low", "out-of-spec"],
    ["U7.5 low", "U7.5", "level", "reading", "low", "out-of-spec"],
    ["U7.1 3.58 MHz", "U7.1", "frequency", "unit", "3.58 MHz", "in-spec"],
    ["R3 4k7", "R3", "resistance", "reading", "4.7 kΩ", "noted"],
    ["U7.2 612", "U7.2", "diode", "reading", "612 mV", "noted"],
    ["U7.2 OL", "U7.2", "continuity", "reading", "OL", "noted"],
    ["R3 looks burnt", "R3", "visual", "reading", "looks burnt", "noted"],
    ["U7.3 diode red 0.61", "U7.3", "diode", "typed", "0.61 V", "noted"],
    ["U7 reseat no change", "U7", "trial", "typed", "no change", "noted"],
  ];
  test.each(lines)("%s", (line, at, kind, from, shown, verdict) => {
    const entry = read(line);
    expect(entry.state).toBe("ready");
    expect(checksIn(entry).map((one) => [one.at, one.kind, one.kindFrom, one.shown, one.verdict])).toEqual([
      [at, kind, from, shown, verdict],
    ]);
  });

  test("a run makes one check for each pin", () => {
    const entry = read("U7.5-8 diode 612 610 OL 3");
    expect(entry.state).toBe("ready");
    expect(checksIn(entry).map((one) => [one.at, one.kind, one.shown])).toEqual([
      ["U7.5", "diode", "612 mV"],
      ["U7.6", "diode", "610 mV"],
      ["U7.7", "diode", "OL"],
      ["U7.8", "diode", "3 mV"],
    ]);
  });

  test("half a run shows what is there and how many are missing", () => {
    const entry = read("U7.5-8 diode 612 610");
    expect(entry.state).toBe("unfinished");
    expect(checksIn(entry).map((one) => [one.at, one.measured])).toEqual([
      ["U7.5", "612"],
      ["U7.6", "610"],
      ["U7.7", ""],
      ["U7.8", ""],
    ]);
  });

  test("a place alone is looked up already, with what one expects there", () => {
    const [check] = checksIn(read("U7.8"));
    expect(check).toMatchObject({ at: "U7.8", kind: "dc-voltage", kindFrom: "place", measured: "", known: true });
    expect(check?.expected).toBe("5 V ±5 %");
    expect(checksIn(read("U7.1"))[0]).toMatchObject({ kind: "activity", expected: "active" });
  });

  test("a place that the record lacks is marked and taken", () => {
    expect(read("U99.3 4.87")).toMatchObject({ state: "ready", checks: [{ at: "U99.3", known: false }] });
  });

  test("where there is no record no place is marked", () => {
    const entry = entryOfLine("U99.3 4.87", NO_OPTIONS, unrecorded);
    expect(entry).toMatchObject({ state: "ready", checks: [{ at: "U99.3", known: true, verdict: "noted" }] });
  });

  test("a reading that cannot be read says why and can be recorded", () => {
    const entry = read("U7.8 4.87 parsecs");
    expect(entry.state).toBe("ready");
    const [check] = checksIn(entry);
    expect(check).toMatchObject({ measured: "4.87 parsecs", verdict: "noted" });
    expect(check?.unreadable).toContain("parsecs");
  });

  test("what was chosen beats the guess, what is typed beats both", () => {
    expect(checksIn(read("U7.2 612", { kind: "resistance" }))[0]).toMatchObject({ kindFrom: "chosen", shown: "612 Ω" });
    expect(checksIn(read("U7.2 diode 612", { kind: "resistance" }))[0]).toMatchObject({ kindFrom: "typed" });
  });

  test("an expectation of one's own beats the record's", () => {
    expect(checksIn(read("U7.8 4.2", { expected: "4.2 V ±5 %" }))[0]).toMatchObject({
      verdict: "in-spec",
      expectedFrom: "as you typed it",
    });
  });

  const refused: [what: string, line: string, options: Partial<EntryOptions>, field: string][] = [
    ["an expectation that cannot be read", "U7.8 4.2", { expected: "4..2 ±" }, "expected"],
    ["a second point that is none", "U7.8 4.2", { to: "4.2" }, "to"],
    ["a trial that does not say what was tried", "U7 cured", { kind: "trial" }, "what"],
  ];
  test.each(refused)("%s stops the record and names the field", (_what, line, options, field) => {
    expect(read(line, options)).toMatchObject({ state: "unfinished", field });
  });

  test("nothing typed is nothing", () => {
    expect(read("   ")).toEqual({ state: "empty" });
  });
});

describe("fields of their own", () => {
  test("say the same as the line", () => {
    const fields = entryOfFields({ at: "u7 pin 8", measured: "4.87" }, NO_OPTIONS, board);
    expect(fields).toEqual(read("U7.8 4.87"));
  });

  test("without a reading they are unfinished; a dash is a reading that was not taken", () => {
    expect(entryOfFields({ at: "U7.8", measured: "" }, NO_OPTIONS, board).state).toBe("unfinished");
    expect(entryOfFields({ at: "U7.8", measured: "-" }, NO_OPTIONS, board)).toMatchObject({
      state: "ready",
      checks: [{ verdict: "not-taken" }],
    });
  });
});

describe("what is sent", () => {
  const send = (line: string, options: Partial<EntryOptions> = {}) => {
    const all = { ...NO_OPTIONS, ...options };
    let next = 0;
    return checksToSend(checksIn(entryOfLine(line, all, board)), all, {
      newId: () => `id-${++next}`,
      now: "2026-01-01T00:00:00.000Z",
    });
  };

  test("says only what was said", () => {
    expect(send("U7.8 4.87")).toEqual([
      { id: "id-1", kind: "dc-voltage", at: "U7.8", measured: "4.87", takenAt: "2026-01-01T00:00:00.000Z" },
    ]);
  });

  test("says all that was said", () => {
    const options = { lead: "black", when: "warm", power: "off", note: "third try", repeats: "first" } as const;
    expect(send("U7.8 to U7.4 resistance 12k", options)).toEqual([
      {
        id: "id-1",
        kind: "resistance",
        at: "U7.8",
        to: "U7.4",
        measured: "12k",
        lead: "black",
        when: "warm",
        power: "off",
        note: "third try",
        repeats: "first",
        takenAt: "2026-01-01T00:00:00.000Z",
      },
    ]);
  });

  test("a trial carries its outcome", () => {
    expect(send("U7 swap cured")[0]).toMatchObject({
      kind: "trial",
      what: "swap",
      outcome: "cured",
      measured: "cured",
    });
  });

  test("a run never repeats one check", () => {
    expect(send("U7.1-2 diode 610 612", { repeats: "first" }).every((one) => one.repeats === undefined)).toBe(true);
  });

  test("how one measures stays for the next check, what belongs to one place goes", () => {
    const options = { ...NO_OPTIONS, kind: "diode", lead: "red", expected: "0.6 V", note: "n", repeats: "r" } as const;
    expect(optionsForNext(options)).toEqual({ ...NO_OPTIONS, kind: "diode", lead: "red" });
  });
});

test("a proposal that was taken up becomes the check that it proposed", () => {
  for (const kind of CHECK_KINDS.filter((one) => one !== "trial")) {
    expect(checksIn(read(lineFor({ at: "U7.2", kind })))[0]).toMatchObject({ at: "U7.2", kind });
  }
  expect(checksIn(read(`${lineFor({ at: "U7", kind: "trial", what: "lift-pin" })}changed`))[0]).toMatchObject({
    kind: "trial",
    what: "lift-pin",
    outcome: "changed",
  });
});

// The server judges again when it takes a check; what was shown while typing must be what it then says.
test("the page shows what the server will say", () => {
  const places = fc.constantFrom(
    "U7.1",
    "U7.2",
    "U7.5",
    "U7.8",
    "u7 pin 4",
    "+5V",
    "+12V",
    "R3",
    "J1.1",
    "U99.3",
    "gnd",
  );
  const readings = fc.oneof(
    fc.constantFrom(
      "4.87",
      "4,2 V",
      "0.8V",
      "612",
      "OL",
      "noise",
      "stuck low",
      "high",
      "4k7",
      "1.",
      "-",
      "3.58 MHz",
      "ok",
    ),
    fc.double({ min: -20, max: 20, noNaN: true }).map((value) => value.toFixed(2)),
    fc.string({ maxLength: 20 }),
  );
  const kinds = fc.constantFrom(null, ...CHECK_KINDS.filter((kind) => kind !== "trial"));
  fc.assert(
    fc.property(places, readings, kinds, fc.constantFrom("", "5 V ±10 %", "high"), (at, measured, kind, expected) => {
      const options = { ...NO_OPTIONS, kind, expected };
      const entry = entryOfFields({ at, measured }, options, board);
      if (entry.state !== "ready") return;
      const [sent] = checksToSend(entry.checks, options, {
        newId: () => "01a2102a-7e57-7646-a4d5-2db1d5b3bcde",
        now: "2026-01-01T00:00:00.000Z",
      });
      const { id: _id, takenAt: _takenAt, ...given } = CheckInput.parse(sent);
      const stored = judgedCheck(facts, given, "");
      const [shown] = entry.checks;
      expect({
        at: shown?.at,
        known: shown?.known,
        kind: shown?.kind,
        verdict: shown?.verdict,
        because: shown?.because,
        expected: shown?.expected,
        unreadable: shown?.unreadable,
      }).toEqual({
        at: stored.at,
        known: stored.placeKnown,
        kind: stored.kind,
        verdict: stored.computedVerdict,
        because: stored.because,
        expected: stored.expected,
        unreadable: stored.unreadable,
      });
    }),
    { numRuns: 500 },
  );
});
