import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  isNotTaken,
  printReading,
  READING_STATES,
  readReading,
  type Reading,
  type ReadingState,
} from "#lib/core/quantity/index.ts";
import { CHECK_KINDS, type CheckKind } from "#lib/core/shared/index.ts";

const OVER: Reading = { form: "over-limit" };
const state = (name: ReadingState): Reading => ({ form: "state", state: name });
const words = (text: string): Reading => ({ form: "words", text });
const ohms = (value: number, digits: number, resolution: number): Reading => ({
  form: "value",
  quantity: { value, unit: "ohm", digits, resolution },
});
const volts = (value: number, digits: number, resolution: number): Reading => ({
  form: "value",
  quantity: { value, unit: "V", digits, resolution },
});

describe("readings as they are written", () => {
  test.each<[kind: CheckKind, text: string, reading: Reading]>([
    ["dc-voltage", "4.87", volts(4.87, 3, 0.01)],
    ["dc-voltage", "4,87V", volts(4.87, 3, 0.01)],
    ["dc-voltage", "OL", OVER],
    ["dc-voltage", "stuck low", state("stuck-low")],
    ["dc-voltage", "open", state("open")],
    ["resistance", "4k7", ohms(4700, 2, 100)],
    ["resistance", "12 kohm", ohms(12000, 2, 1000)],
    ["resistance", "OL", OVER],
    ["resistance", "ol", OVER],
    ["resistance", "O.L", OVER],
    ["resistance", "0L", OVER],
    ["resistance", "over", OVER],
    ["resistance", "overload", OVER],
    ["resistance", "over range", OVER],
    ["resistance", "out of range", OVER],
    ["resistance", "infinite", OVER],
    ["resistance", "∞", OVER],
    ["resistance", "1 .", OVER],
    ["resistance", "1.", OVER],
    ["resistance", "open", OVER],
    ["resistance", "Open Circuit", OVER],
    ["resistance", "short", state("short")],
    ["resistance", "1", ohms(1, 1, 1)],
    ["continuity", "beep", state("short")],
    ["continuity", "no beep", state("open")],
    ["continuity", "no continuity", OVER],
    ["continuity", "0.3", ohms(0.3, 1, 0.1)],
    ["diode", "612", volts(0.612, 3, 0.001)],
    ["diode", "OL", OVER],
    ["diode", "1.", OVER],
    ["diode", "3", volts(0.003, 1, 0.001)],
    ["diode", "short", state("short")],
    ["ripple", "noise", state("noise")],
    ["frequency", "none", state("no-activity")],
    ["frequency", "no clock", state("no-activity")],
    ["level", "high", state("high")],
    ["level", "H", state("high")],
    ["level", "lo", state("low")],
    ["level", "1.6 V", volts(1.6, 2, 0.1)],
    ["level", "floating", state("floating")],
    ["level", "hi-z", state("floating")],
    ["activity", "active", state("toggling")],
    ["activity", "toggling", state("toggling")],
    ["activity", "stuck-high", state("stuck-high")],
    ["activity", "Stuck  High", state("stuck-high")],
    ["activity", "pulses", state("pulsing")],
    ["activity", "noise only", state("noise")],
    ["activity", "dead", state("no-activity")],
    ["activity", "no activity", state("no-activity")],
    ["activity", "steady", state("steady")],
    ["activity", "ok", state("ok")],
    ["activity", "clock", state("clock")],
    [
      "activity",
      "clock 4 MHz",
      { form: "state", state: "clock", frequency: { value: 4e6, unit: "Hz", digits: 1, resolution: 1e6 } },
    ],
    ["trial", "cured", state("cured")],
    ["trial", "no change", state("no-change")],
    ["trial", "changed", state("changed")],
    ["visual", "ok", state("ok")],
    ["visual", "R12 burnt, trace lifted", words("R12 burnt, trace lifted")],
    ["visual", "open", words("open")],
    ["visual", "x".repeat(500), words("x".repeat(500))],
    ["self-test", "3 beeps", words("3 beeps")],
    ["self-test", "fail", state("not-ok")],
    ["contents", "CBF43926", words("CBF43926")],
    ["node-signature", "0001", words("0001")],
    ["node-signature", "826P", words("826P")],
    ["waveform", "sawtooth, flat top", words("sawtooth, flat top")],
    ["waveform", "noise", state("noise")],
    [
      "waveform",
      "3.2 Vpp",
      { form: "value", quantity: { value: 3.2, unit: "V", digits: 2, resolution: 0.1, form: "peak-to-peak" } },
    ],
  ])("%s: %j", (kind, text, reading) => {
    expect(readReading(text, kind)).toEqual({ ok: true, value: reading });
  });

  test("the run of a bus on a diode test, one short and one open among healthy pins", () => {
    const run = "612 610 611 3 612 OL 608 610".split(" ").map((text) => readReading(text, "diode"));
    const shown = run.map((each) => (each.ok ? printReading(each.value) : each.problem.reason));
    expect(shown).toEqual(["612 mV", "610 mV", "611 mV", "3 mV", "612 mV", "OL", "608 mV", "610 mV"]);
  });
});

describe("what cannot be read says why", () => {
  test.each<[kind: CheckKind, text: string, problem: { reason: string; question?: string }]>([
    ["dc-voltage", "", { reason: "No reading was typed." }],
    ["dc-voltage", "-", { reason: "No reading was typed." }],
    ["dc-voltage", "somewhat low", { reason: "“somewhat low” is neither a number nor a state known here." }],
    ["dc-voltage", "5 V ".repeat(50), { reason: "This is too long to be a reading." }],
    ["resistance", "4.7 V", { reason: "“4.7 V” is a voltage; this check is read in Ω." }],
    ["trial", "maybe", { reason: "“maybe” is no outcome of a trial. Write changed, no change or cured." }],
    [
      "diode",
      "1",
      {
        reason: "“1” can be read in two ways.",
        question: "Over the meter's range, or 1 mV? Write OL or 0.001.",
      },
    ],
    ["level", "1", { reason: "“1” can be read in two ways.", question: "Logic 1, or one volt? Write high or 1 V." }],
    [
      "dc-voltage",
      "1.",
      {
        reason: "“1.” can be read in two ways.",
        question: "Over the meter's range, or exactly one? Write OL, or the number with its unit.",
      },
    ],
  ])("%s: %j", (kind, text, problem) => {
    expect(readReading(text, kind)).toEqual({ ok: false, problem });
  });

  test.each(["", " ", "-", "–", "?", "n/a", "skipped", "Not taken"])("%j is a gap in a run", (text) => {
    expect(isNotTaken(text)).toBe(true);
  });
});

describe("laws", () => {
  test("every state prints as it is read", () => {
    const read = READING_STATES.map((name) => readReading(printReading(state(name)), "activity"));
    expect(read).toEqual(READING_STATES.map((name) => ({ ok: true, value: state(name) })));
  });

  test("whatever was read prints as something that reads the same", () => {
    const pieces = fc.constantFrom(
      "5",
      "0.6",
      "4k7",
      "OL",
      "high",
      "noise",
      "clock ",
      "2 MHz",
      " V",
      "m",
      "p",
      "1",
      ".",
    );
    const text = fc.array(pieces, { minLength: 1, maxLength: 3 }).map((each) => each.join(""));
    fc.assert(
      fc.property(text, fc.constantFrom(...CHECK_KINDS), (typed, kind) => {
        const read = readReading(typed, kind);
        expect(read.ok ? readReading(printReading(read.value), kind) : read).toEqual(read);
      }),
      { numRuns: 2000 },
    );
  });
});
