import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { quantityOf, readExpectation, readReading, type Expectation, type Reading } from "#lib/core/quantity/index.ts";
import {
  DECISION_LEVEL,
  JUDGE_VERSION,
  judge,
  type Direction,
  type Instrument,
  type Judgement,
  type Size,
} from "#lib/core/reading/index.ts";
import type { CheckKind, Technology, Verdict } from "#lib/core/shared/index.ts";

function expected(text: string, kind: CheckKind): Expectation {
  const read = readExpectation(text, kind);
  if (!read.ok) throw new Error(read.problem.reason);
  return read.value;
}
function measured(text: string, kind: CheckKind): Reading {
  const read = readReading(text, kind);
  if (!read.ok) throw new Error(read.problem.reason);
  return read.value;
}
function verdictOn(
  kind: CheckKind,
  wanted: string,
  found: string,
  more: { technology?: Technology; instrument?: Instrument } = {},
): Judgement {
  return judge({ kind, expected: expected(wanted, kind), measured: measured(found, kind), ...more });
}

/** ±(0.5 % of reading + 1 digit) on 20 V with 10 mV steps: a 3½-digit pocket meter. Invented, typical. */
const POCKET_METER: Instrument = { ranges: [{ unit: "V", upTo: 20, percent: 0.5, digits: 1, resolution: 0.01 }] };
const OWN_ERROR = "; the meter's own error is not counted.";

describe("whole judgements", () => {
  test("no instrument: the plain comparison, and it says so", () => {
    expect(verdictOn("dc-voltage", "5 V ±5 %", "4.62")).toEqual({
      verdict: "out-of-spec",
      limits: { low: 4.75, high: 5.25, unit: "V" },
      uncertainty: null,
      probabilityInSpec: null,
      direction: "low",
      size: "marginal",
      text: "4.62 V is below 4.75…5.25 V; the meter's own error is not counted.",
    });
  });

  test("an instrument whose error does not matter here", () => {
    expect(verdictOn("dc-voltage", "5 V ±5 %", "5.01 V", { instrument: POCKET_METER })).toEqual({
      verdict: "in-spec",
      limits: { low: 4.75, high: 5.25, unit: "V" },
      uncertainty: (5.01 * 0.005 + 0.01) / Math.sqrt(3),
      probabilityInSpec: 1,
      direction: null,
      size: null,
      text: "5.01 V is within 4.75…5.25 V, the meter's ±35 mV counted.",
    });
  });

  test("an instrument that cannot tell", () => {
    const judgement = verdictOn("dc-voltage", "5 V ±5 %", "4.74 V", { instrument: POCKET_METER });
    // u = (4.74 × 0.5 % + 10 mV)/√3 = 19.46 mV; Φ((5.25−4.74)/u) − Φ((4.75−4.74)/u) = 1 − Φ(0.514) = 0.3036 (recomputed with Python's math.erf).
    expect(judgement.probabilityInSpec).toBeCloseTo(0.3036, 3);
    expect(judgement).toMatchObject({
      verdict: "inconclusive",
      direction: null,
      size: null,
      text: "4.74 V against 4.75…5.25 V: with ±34 mV this meter cannot tell; probability in spec 0.30.",
    });
  });

  test("nothing expected is noted, nothing read is not taken", () => {
    const nothing = { limits: null, uncertainty: null, probabilityInSpec: null, direction: null, size: null };
    const reading = measured("4.62", "dc-voltage");
    expect(judge({ kind: "dc-voltage", expected: null, measured: reading })).toEqual({
      ...nothing,
      verdict: "noted",
      text: "Noted; what should be here is not known.",
    });
    expect(judge({ kind: "dc-voltage", expected: expected("5 V", "dc-voltage"), measured: null })).toEqual({
      ...nothing,
      verdict: "not-taken",
      text: "No reading was taken.",
    });
  });

  test("the version is a whole number that stored verdicts carry", () => {
    expect(Number.isInteger(JUDGE_VERSION) && JUDGE_VERSION > 0).toBe(true);
  });
});

describe("conformance, JCGM 106:2012", () => {
  /** Standard uncertainty 0.05 V whatever is read. */
  const fixed: Instrument = { ranges: [{ unit: "V", percent: 0, digits: 1, resolution: 0.05 * Math.sqrt(3) }] };

  test("clause 7 example: -5.47 V against ≤ -5.40 V with u = 0.05 V is in spec with 0.9192", () => {
    const base = {
      kind: "dc-voltage",
      expected: expected("≤ -5.40 V", "dc-voltage"),
      measured: measured("-5.47 V", "dc-voltage"),
      instrument: fixed,
    } as const;
    expect(judge({ ...base, decisionLevel: 0.9 })).toMatchObject({ verdict: "in-spec" });
    const judgement = judge(base);
    expect(judgement.probabilityInSpec).toBeCloseTo(0.9192, 4);
    expect(judgement.uncertainty).toBeCloseTo(0.05, 12);
    // 0.9192 is less than the usual level of 0.95.
    expect([DECISION_LEVEL, judgement.verdict]).toEqual([0.95, "inconclusive"]);
  });

  test("a reading exactly at the limit has probability one half and is never in spec, whatever the level", () => {
    for (const decisionLevel of [0, 0.5, 0.6, 0.95, 1]) {
      const judgement = judge({
        kind: "dc-voltage",
        expected: expected("≥ 2.4 V", "dc-voltage"),
        measured: measured("2.4 V", "dc-voltage"),
        instrument: fixed,
        decisionLevel,
      });
      expect([judgement.probabilityInSpec, judgement.verdict]).toEqual([0.5, "inconclusive"]);
    }
  });

  test.each(["4.75", "5.25"])("without an instrument %s V is not in spec either", (text) => {
    expect(verdictOn("dc-voltage", "5 V ±5 %", text)).toMatchObject({
      verdict: "inconclusive",
      text: `${text} V is exactly at the limit of 4.75…5.25 V${OWN_ERROR}`,
    });
  });

  test("a limit that a percentage makes is met exactly, for all its rounding", () => {
    const atLimit = ["3.465", "3.135"].map((text) => verdictOn("dc-voltage", "3.3 V ±5 %", text).verdict);
    expect(atLimit).toEqual(["inconclusive", "inconclusive"]);
  });

  test("a reading in the middle of limits too narrow for the meter is undecided, not wrong", () => {
    expect(verdictOn("dc-voltage", "5.00 V ±0.001 V", "5.00 V", { instrument: fixed })).toMatchObject({
      verdict: "inconclusive",
      direction: null,
    });
  });

  test("the smallest range that holds the reading counts, and only one for this unit and kind", () => {
    const meter: Instrument = {
      ranges: [
        { unit: "V", upTo: 200, percent: 0, digits: 1, resolution: 0.1, kinds: ["dc-voltage"] },
        { unit: "V", upTo: 20, percent: 0, digits: 1, resolution: 0.01, kinds: ["dc-voltage"] },
        { unit: "V", upTo: 20, percent: 0, digits: 9, resolution: 0.01, kinds: ["ac-voltage"] },
        { unit: "ohm", upTo: 20, percent: 9, digits: 9, resolution: 1 },
      ],
    };
    const largest = (kind: CheckKind, text: string) => {
      const { uncertainty } = verdictOn(kind, "5 V ±5 %", text, { instrument: meter });
      return uncertainty === null ? null : Number((uncertainty * Math.sqrt(3)).toPrecision(6));
    };
    expect([
      largest("dc-voltage", "20"),
      largest("dc-voltage", "20.1"),
      largest("ac-voltage", "5"),
      largest("dc-voltage", "300"),
    ]).toEqual([0.01, 0.1, 0.09, null]);
    expect(verdictOn("dc-voltage", "5 V ±5 %", "300", { instrument: meter }).text).toBe(
      "300 V is above 4.75…5.25 V; no accuracy of this instrument on record for it.",
    );
  });
});

type Row = [kind: CheckKind, wanted: string, found: string, Verdict, Direction | null, Size | null, text: string];

describe("numbers against limits", () => {
  test.each<Row>([
    ["dc-voltage", "5 V ±5 %", "5.02", "in-spec", null, null, `5.02 V is within 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "5 V ±5 %", "3.9", "out-of-spec", "low", "clear", `3.9 V is below 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "5 V ±5 %", "0.3", "out-of-spec", "low", "absent", `0.3 V is below 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "5 V ±5 %", "5.4", "out-of-spec", "high", "marginal", `5.4 V is above 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "5 V ±5 %", "9", "out-of-spec", "high", "clear", `9 V is above 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "5 V ±5 %", "-5", "out-of-spec", "low", "clear", `-5 V is below 4.75…5.25 V${OWN_ERROR}`],
    ["dc-voltage", "-12 V ±10 %", "-12.1", "in-spec", null, null, `-12.1 V is within -13.2…-10.8 V${OWN_ERROR}`],
    ["dc-voltage", "-12 V ±10 %", "-9", "out-of-spec", "low", "clear", `-9 V falls short of -13.2…-10.8 V${OWN_ERROR}`],
    [
      "dc-voltage",
      "-12 V ±10 %",
      "-0.4",
      "out-of-spec",
      "low",
      "absent",
      `-0.4 V falls short of -13.2…-10.8 V${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "-12 V ±10 %",
      "0.2",
      "out-of-spec",
      "low",
      "absent",
      `0.2 V falls short of -13.2…-10.8 V${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "-12 V ±10 %",
      "-14",
      "out-of-spec",
      "high",
      "marginal",
      `-14 V goes beyond -13.2…-10.8 V${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "-12 V ±10 %",
      "12",
      "out-of-spec",
      "low",
      "clear",
      `12 V has the wrong sign for -13.2…-10.8 V${OWN_ERROR}`,
    ],
    ["dc-voltage", "≥ 21.6 V", "31", "in-spec", null, null, `31 V meets ≥ 21.6 V${OWN_ERROR}`],
    ["dc-voltage", "≥ 21.6 V", "20", "out-of-spec", "low", "marginal", `20 V is below 21.6 V${OWN_ERROR}`],
    [
      "dc-voltage",
      "5 V",
      "4.9",
      "in-spec",
      null,
      null,
      `4.9 V is within 4.75…5.25 V (no tolerance given, ±5 % taken)${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "12 V",
      "11",
      "in-spec",
      null,
      null,
      `11 V is within 10.8…13.2 V (no tolerance given, ±10 % taken)${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "0 V",
      "0.3",
      "out-of-spec",
      "high",
      "clear",
      `0.3 V is above -0.1…0.1 V (no tolerance given, ±0.1 V taken)${OWN_ERROR}`,
    ],
    [
      "dc-voltage",
      "5 V ±5 %",
      "OL",
      "inconclusive",
      null,
      null,
      "OL: the meter's range was exceeded; measure again on a higher one.",
    ],
    ["dc-voltage", "5 V ±5 %", "short", "out-of-spec", "low", "absent", "“short” is below 4.75…5.25 V."],
    ["dc-voltage", "5 V ±5 %", "low", "out-of-spec", "low", "clear", "“low” is below 4.75…5.25 V."],
    ["dc-voltage", "5 V ±5 %", "high", "inconclusive", null, null, "“high” may be inside or outside of 4.75…5.25 V."],
    [
      "dc-voltage",
      "5 V ±5 %",
      "noise",
      "inconclusive",
      null,
      null,
      "“noise” does not say enough to hold it against 4.75…5.25 V.",
    ],
    ["dc-voltage", "5 V ±5 %", "~5", "inconclusive", null, null, "≈5 V may be inside or outside of 4.75…5.25 V."],
    ["dc-voltage", "5 V ±5 %", "~5.0", "in-spec", null, null, "≈5.0 V is within 4.75…5.25 V."],
    ["dc-voltage", "5 V ±5 %", "<1", "out-of-spec", "low", "clear", "<1 V is below 4.75…5.25 V."],
    [
      "dc-voltage",
      "5 V ±5 %",
      "5 V a.c.",
      "inconclusive",
      null,
      null,
      "5 Vrms is an a.c. figure and this check is d.c.",
    ],
    ["dc-voltage", "5 V ±5 %", "ok", "in-spec", null, null, "Found ok by the person who looked."],
    ["dc-voltage", "5 V ±5 %", "bad", "out-of-spec", null, "clear", "Found not ok by the person who looked."],
    ["ripple", "≤ 50 mVpp", "20 mVpp", "in-spec", null, null, `20 mVpp meets ≤ 50 mVpp${OWN_ERROR}`],
    ["ripple", "≤ 50 mVpp", "80 mV", "out-of-spec", "high", "clear", `80 mV is above 50 mVpp${OWN_ERROR}`],
    ["ripple", "≤ 50 mVpp", "54 mVpp", "out-of-spec", "high", "marginal", `54 mVpp is above 50 mVpp${OWN_ERROR}`],
    [
      "ripple",
      "≤ 50 mVpp",
      "20 mVrms",
      "inconclusive",
      null,
      null,
      "20 mVrms cannot be held against ≤ 50 mVpp without knowing the waveform.",
    ],
    [
      "ripple",
      "50 mVpp",
      "20 mVpp",
      "in-spec",
      null,
      null,
      `20 mVpp meets ≤ 50 mVpp (taken as the most allowed)${OWN_ERROR}`,
    ],
    [
      "frequency",
      "3.58 MHz ±100 ppm",
      "3.579545 MHz",
      "out-of-spec",
      "low",
      "marginal",
      `3.579545 MHz is below 3.579642…3.580358 MHz${OWN_ERROR}`,
    ],
    [
      "frequency",
      "3.58 MHz ±1 %",
      "3.579545 MHz",
      "in-spec",
      null,
      null,
      `3.579545 MHz is within 3.5442…3.6158 MHz${OWN_ERROR}`,
    ],
    [
      "frequency",
      "4 MHz",
      "none",
      "out-of-spec",
      "low",
      "absent",
      "“no activity” is below 3.96…4.04 MHz (no tolerance given, ±1 % taken).",
    ],
    [
      "frequency",
      "4 MHz",
      "toggling",
      "inconclusive",
      null,
      null,
      "“toggling” does not say enough to hold it against 3.96…4.04 MHz (no tolerance given, ±1 % taken).",
    ],
    ["continuity", "< 2 ohm to GND", "0.3", "in-spec", null, null, `0.3 Ω meets ≤ 2 Ω${OWN_ERROR}`],
    [
      "continuity",
      "< 2 ohm to GND",
      "2",
      "inconclusive",
      null,
      null,
      `2 Ω is exactly at the limit of ≤ 2 Ω${OWN_ERROR}`,
    ],
    ["continuity", "< 2 ohm to GND", "beep", "in-spec", null, null, "“short” meets ≤ 2 Ω."],
    ["continuity", "< 2 ohm to GND", "OL", "out-of-spec", "high", "absent", "OL is above 2 Ω."],
    ["continuity", "< 2 ohm to GND", "no beep", "out-of-spec", "high", "clear", "“open” is above 2 Ω."],
    ["continuity", "< 2 ohm to GND", "<1 ohm", "in-spec", null, null, "<1 Ω meets ≤ 2 Ω."],
    ["resistance", "≥ 1 MΩ", ">20M", "in-spec", null, null, ">20 MΩ meets ≥ 1 MΩ."],
    ["resistance", "≥ 50 MΩ", ">20M", "inconclusive", null, null, ">20 MΩ may be inside or outside of ≥ 50 MΩ."],
    ["resistance", "≥ 1 MΩ", "OL", "in-spec", null, null, "OL meets ≥ 1 MΩ, if the meter's range reaches that far."],
    ["resistance", "4k7 ±5 %", "4k65", "in-spec", null, null, `4.65 kΩ is within 4.465…4.935 kΩ${OWN_ERROR}`],
    ["diode", "0.61 V ±0.05 V", "612", "in-spec", null, null, `612 mV is within 0.56…0.66 V${OWN_ERROR}`],
    ["diode", "0.61 V ±0.05 V", "3", "out-of-spec", "low", "absent", `3 mV is below 0.56…0.66 V${OWN_ERROR}`],
    ["diode", "0.61 V ±0.05 V", "OL", "out-of-spec", "high", "absent", "OL is above 0.56…0.66 V."],
    [
      "capacitance",
      "100 µF +80/-20 %",
      "70 uF",
      "out-of-spec",
      "low",
      "marginal",
      `70 µF is below 80…180 µF${OWN_ERROR}`,
    ],
    ["esr", "1 ohm", "4", "out-of-spec", "high", "clear", `4 Ω is above 1 Ω (taken as the most allowed)${OWN_ERROR}`],
    [
      "waveform",
      "5 V ±5 %",
      "100 Hz",
      "inconclusive",
      null,
      null,
      "100 Hz is a frequency and cannot be held against 4.75…5.25 V.",
    ],
  ])("%s, %j expected, %j read: %s", (kind, wanted, found, verdict, direction, size, text) => {
    const judgement = verdictOn(kind, wanted, found);
    expect([judgement.verdict, judgement.direction, judgement.size, judgement.text]).toEqual([
      verdict,
      direction,
      size,
      text,
    ]);
  });
});

// What a state means is common practice, no source.
describe("states and words", () => {
  test.each<Row>([
    ["activity", "active", "toggling", "in-spec", null, null, "“toggling” is what “active” asks for."],
    ["activity", "active", "pulsing", "in-spec", null, null, "“pulsing” is what “active” asks for."],
    ["activity", "active", "stuck low", "out-of-spec", "low", "clear", "“stuck low” where “active” is expected."],
    ["activity", "active", "stuck high", "out-of-spec", "high", "clear", "“stuck high” where “active” is expected."],
    ["activity", "active", "noise", "out-of-spec", null, "clear", "“noise” where “active” is expected."],
    ["activity", "active", "dead", "out-of-spec", null, "absent", "“no activity” where “active” is expected."],
    ["activity", "active", "floating", "out-of-spec", null, "clear", "“floating” where “active” is expected."],
    ["activity", "active", "3.58 MHz", "in-spec", null, null, "3.58 MHz: the line moves, as expected."],
    ["activity", "active", "0 Hz", "out-of-spec", null, "absent", "0 Hz: the line does not move where it should."],
    [
      "activity",
      "active",
      "1.7 V",
      "inconclusive",
      null,
      null,
      "1.7 V does not show whether the line moves: look with a scope or a logic probe.",
    ],
    ["frequency", "active", "4 MHz", "in-spec", null, null, "4 MHz: the line moves, as expected."],
    ["activity", "steady", "high", "in-spec", null, null, "“high” is what “steady” asks for."],
    ["activity", "steady", "pulsing", "out-of-spec", null, "clear", "“pulsing” where “steady” is expected."],
    ["activity", "steady", "2 Hz", "out-of-spec", null, "clear", "2 Hz: the line moves where it should not."],
    [
      "activity",
      "clock 4 MHz",
      "clock",
      "inconclusive",
      null,
      null,
      "“clock” against “clock 4 MHz”: it moves, but the frequency was not measured.",
    ],
    ["activity", "clock 4 MHz ±1 %", "clock 4 MHz", "in-spec", null, null, `4 MHz is within 3.96…4.04 MHz${OWN_ERROR}`],
    [
      "activity",
      "clock 4 MHz ±1 %",
      "3.5 MHz",
      "out-of-spec",
      "low",
      "clear",
      `3.5 MHz is below 3.96…4.04 MHz${OWN_ERROR}`,
    ],
    ["activity", "clock", "no clock", "out-of-spec", null, "absent", "“no activity” where “clock” is expected."],
    ["level", "high", "high", "in-spec", null, null, "“high” is what “high” asks for."],
    ["level", "high", "stuck low", "out-of-spec", "low", "clear", "“stuck low” where “high” is expected."],
    ["level", "high", "steady", "inconclusive", null, null, "“steady” against “high” does not decide."],
    ["level", "low", "toggling", "out-of-spec", null, "clear", "“toggling” where “low” is expected."],
    ["continuity", "no short", "OL", "in-spec", null, null, "OL is no short."],
    ["continuity", "no short", "short", "out-of-spec", "low", "clear", "“short” where “no short” is expected."],
    ["continuity", "no short", "0.4", "out-of-spec", "low", "clear", "0.4 Ω is a short (below 2 Ω)."],
    [
      "continuity",
      "no short",
      "12",
      "inconclusive",
      null,
      null,
      "12 Ω is low, but no short until a good board reads otherwise.",
    ],
    ["continuity", "no short", "470", "in-spec", null, null, "470 Ω is no short."],
    ["continuity", "open", "470", "out-of-spec", "low", "clear", "470 Ω is a path where open is expected."],
    ["continuity", "open", "300k", "inconclusive", null, null, "300 kΩ is neither plainly open nor plainly connected."],
    ["continuity", "open", ">20M", "in-spec", null, null, ">20 MΩ is open."],
    ["continuity", "short", "0.4", "in-spec", null, null, "0.4 Ω is a connection (below 2 Ω)."],
    ["continuity", "short", "OL", "out-of-spec", "high", "absent", "OL is open where a connection is expected."],
    ["continuity", "short", "470", "out-of-spec", "high", "clear", "470 Ω is no connection (that is below 2 Ω)."],
    ["diode", "no short", "3", "out-of-spec", "low", "clear", "3 mV is a short (below 20 mV)."],
    ["diode", "no short", "612", "in-spec", null, null, "612 mV is no short."],
    ["diode", "open", "612", "out-of-spec", "low", "clear", "612 mV is a path where open is expected."],
    ["trial", "cured", "no change", "out-of-spec", null, "clear", "“no change” where “cured” is expected."],
    ["visual", "no burnt parts", "ok", "in-spec", null, null, "Found ok by the person who looked."],
    [
      "visual",
      "no burnt parts",
      "R3 burnt",
      "inconclusive",
      null,
      null,
      "“R3 burnt” against “no burnt parts”: these are words, decide yourself.",
    ],
    ["self-test", "1 beep", "1  Beep", "in-spec", null, null, "“1  Beep” is what is expected."],
    ["node-signature", "826P", "826p", "in-spec", null, null, "“826p” is what is expected."],
    ["node-signature", "826P", "UUUU", "out-of-spec", null, "clear", "“UUUU” is not “826P”."],
    ["contents", "CBF43926", "0xcbf43926", "in-spec", null, null, "“0xcbf43926” is what is expected."],
    [
      "contents",
      "CBF43926",
      "unreadable",
      "inconclusive",
      null,
      null,
      "“unreadable” against “CBF43926”: these are words, decide yourself.",
    ],
  ])("%s, %j expected, %j read: %s", (kind, wanted, found, verdict, direction, size, text) => {
    const judgement = verdictOn(kind, wanted, found);
    expect([judgement.verdict, judgement.direction, judgement.size, judgement.text]).toEqual([
      verdict,
      direction,
      size,
      text,
    ]);
  });
});

describe("a d.c. voltage as a logic level", () => {
  const between =
    "a moving line, an open input and two outputs that fight all read so; look with a scope or a logic probe";
  const TTL_TAKEN = "(TTL levels taken: low to 0.8 V, high from 2 V)";
  const LS_LEVELS = "(LS levels: low to 0.8 V, high from 2 V)";

  test.each<[wanted: string, found: string, Technology | undefined, Verdict, Direction | null, text: string]>([
    ["high", "3.4 V", "LS", "in-spec", null, `3.4 V is high ${LS_LEVELS}.`],
    ["low", "0.2 V", "LS", "in-spec", null, `0.2 V is low ${LS_LEVELS}.`],
    ["high", "0.2 V", "LS", "out-of-spec", "low", `0.2 V is low where high is expected ${LS_LEVELS}.`],
    ["low", "3.4 V", undefined, "out-of-spec", "high", `3.4 V is high where low is expected ${TTL_TAKEN}.`],
    ["high", "1.6 V", "LS", "inconclusive", null, `1.6 V is between the levels ${LS_LEVELS}: ${between}.`],
    ["low", "0.8 V", undefined, "inconclusive", null, `0.8 V is exactly at a limit ${TTL_TAKEN}: ${between}.`],
    ["high", "2.0 V", "unknown", "inconclusive", null, `2.0 V is exactly at a limit ${TTL_TAKEN}: ${between}.`],
    ["high", "12 V", "LS", "out-of-spec", "high", "12 V is outside of the supply and no logic level."],
    ["low", "-5 V", "LS", "out-of-spec", "low", "-5 V is outside of the supply and no logic level."],
    ["high", "-1.7 V", "ECL", "inconclusive", null, "No logic levels are on record for ECL."],
    ["high", "3 Vpp", "LS", "inconclusive", null, "3 Vpp is no exact d.c. level."],
  ])("%s expected, %s read on %s: %s", (wanted, found, technology, verdict, direction, text) => {
    const judgement = verdictOn("level", wanted, found, technology ? { technology } : {});
    expect([judgement.verdict, judgement.direction, judgement.text]).toEqual([verdict, direction, text]);
  });

  test("the limits shown are those of the level that is wanted", () => {
    expect(verdictOn("level", "high", "3.4 V", { technology: "HC" }).limits).toEqual({ low: 3.15, unit: "V" });
    expect(verdictOn("level", "low", "0.4 V", { technology: "HC" }).limits).toEqual({ high: 1.35, unit: "V" });
  });

  test("every reading from 0.8 to 2.0 V on TTL is undecided", () => {
    const verdicts = Array.from({ length: 121 }, (_, step) => `${(0.8 + step / 100).toFixed(2)} V`).flatMap((text) => [
      verdictOn("level", "high", text, { technology: "TTL" }).verdict,
      verdictOn("level", "low", text, { technology: "TTL" }).verdict,
    ]);
    expect(new Set(verdicts)).toEqual(new Set(["inconclusive"]));
  });
});

describe("laws", () => {
  const RANK: Record<Verdict, number> = { "in-spec": 2, inconclusive: 1, "out-of-spec": 0, noted: -1, "not-taken": -1 };
  const FIVE_VOLTS = expected("5 V ±5 %", "dc-voltage");
  const volts = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const meter = (percent: number, error: number): Instrument => ({
    ranges: [{ unit: "V", percent, digits: 1, resolution: error }],
  });
  const judgeVolts = (value: number, against: Expectation, instrument?: Instrument) =>
    judge({
      kind: "dc-voltage",
      expected: against,
      measured: { form: "value", quantity: quantityOf(value, "V") },
      ...(instrument ? { instrument } : {}),
    });
  /** Rounding of Φ. */
  const EPSILON = 1e-14;

  test("a wider error never raises the probability of an in-range reading", () => {
    fc.assert(
      fc.property(volts(4.75, 5.25), volts(1e-4, 2), volts(0, 2), volts(0, 5), (value, error, more, percent) => {
        const narrow = judgeVolts(value, FIVE_VOLTS, meter(percent, error)).probabilityInSpec ?? NaN;
        const wide = judgeVolts(value, FIVE_VOLTS, meter(percent * 1.5, error + more)).probabilityInSpec ?? NaN;
        expect(wide).toBeLessThanOrEqual(narrow + EPSILON);
      }),
      { numRuns: 1000 },
    );
  });

  test("going towards the middle of the limits never makes the verdict worse", () => {
    const instrument = fc.option(volts(1e-4, 0.5), { nil: undefined });
    fc.assert(
      fc.property(volts(-1, 1), volts(0, 1), instrument, (offset, share, error) => {
        const tool = error === undefined ? undefined : meter(0, error);
        const far = judgeVolts(5 + offset, FIVE_VOLTS, tool);
        const near = judgeVolts(5 + offset * share, FIVE_VOLTS, tool);
        expect(RANK[near.verdict]).toBeGreaterThanOrEqual(RANK[far.verdict]);
      }),
      { numRuns: 1000 },
    );
  });

  test("more is never worse against a lower limit, less never against an upper one", () => {
    const [least, most] = [expected("≥ 2.4 V", "dc-voltage"), expected("≤ 2.4 V", "dc-voltage")];
    fc.assert(
      fc.property(volts(0, 5), volts(0, 5), fc.option(volts(0.01, 0.5), { nil: undefined }), (a, b, error) => {
        const tool = error === undefined ? undefined : meter(0.5, error);
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(RANK[judgeVolts(more, least, tool).verdict]).toBeGreaterThanOrEqual(
          RANK[judgeVolts(less, least, tool).verdict],
        );
        expect(RANK[judgeVolts(less, most, tool).verdict]).toBeGreaterThanOrEqual(
          RANK[judgeVolts(more, most, tool).verdict],
        );
      }),
      { numRuns: 1000 },
    );
  });

  test("a negative rail is judged as its mirror image", () => {
    const negative = expected("-5 V ±5 %", "dc-voltage");
    const essence = ({ verdict, direction, size }: Judgement) => ({ verdict, direction, size });
    fc.assert(
      fc.property(volts(-10, 10), fc.option(volts(0.001, 0.5), { nil: undefined }), (value, error) => {
        const tool = error === undefined ? undefined : meter(0.5, error);
        expect(essence(judgeVolts(-value, negative, tool))).toEqual(essence(judgeVolts(value, FIVE_VOLTS, tool)));
      }),
      { numRuns: 1000 },
    );
  });

  test("whatever is read against whatever is expected, there is one sentence and a side only when out of spec", () => {
    const kinds = fc.constantFrom<CheckKind>(
      "continuity",
      "resistance",
      "diode",
      "dc-voltage",
      "ripple",
      "frequency",
      "level",
      "activity",
      "waveform",
    );
    const wanted = fc.constantFrom(
      "5 V ±5 %",
      "≤ 50 mVpp",
      "< 2 ohm",
      "4 MHz ±1 %",
      "high",
      "low",
      "active",
      "steady",
      "clock 4 MHz",
      "no short",
      "open",
      "short",
      "floating",
      "changed",
    );
    const found = fc.constantFrom(
      "5 V",
      "50 mVpp",
      "1.6 V",
      "4 MHz",
      "0.3 ohm",
      ">20 MΩ",
      "OL",
      "short",
      "open",
      "noise",
      "stuck low",
      "toggling",
      "steady",
      "floating",
      "no change",
      "clock 4 MHz",
    );
    fc.assert(
      fc.property(kinds, wanted, found, (kind, expectedText, foundText) => {
        const [expectation, reading] = [readExpectation(expectedText, kind), readReading(foundText, kind)];
        fc.pre(expectation.ok && reading.ok);
        if (!expectation.ok || !reading.ok) return;
        const { verdict, direction, size, text } = judge({
          kind,
          expected: expectation.value,
          measured: reading.value,
        });
        expect(text).toMatch(/^\S.*[^.]\.$/);
        expect(size === null).toBe(verdict !== "out-of-spec");
        expect(direction === null || verdict === "out-of-spec").toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
});
