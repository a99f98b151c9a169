import {
  EXPECTED_WORDS,
  printExpectation,
  printQuantity,
  printState,
  type ExpectedState,
  type Expectation,
  type Near,
  type Quantity,
  type Reading,
  type ReadingState,
} from "../quantity/index.ts";
import { judgeAgainstLimits } from "./against-limits.ts";
import { judgeConnection } from "./connection.ts";
import { inconclusive, judged, type Direction, type JudgeInput, type Judgement, type Size } from "./judgement.ts";
import { judgeLevel } from "./level-verdict.ts";
import { limitsOfNear } from "./limits.ts";

type StateExpectation = Extract<Expectation, { form: "state" }>;
type Input = JudgeInput & { measured: Reading };

const STANDING: readonly ReadingState[] = ["high", "low", "stuck-high", "stuck-low", "steady", "no-activity"];
const MOVING: readonly ReadingState[] = ["toggling", "pulsing", "clock"];
const NOT_DRIVEN: readonly ReadingState[] = ["noise", "floating"];

/** Which states satisfy an expected one and which contradict it; the others do not decide. Common practice, no source. */
const AGREEMENT: Record<ExpectedState, { fits: readonly ReadingState[]; against: readonly ReadingState[] }> = {
  high: { fits: ["high", "stuck-high"], against: ["low", "stuck-low", "short", ...MOVING, ...NOT_DRIVEN] },
  low: { fits: ["low", "stuck-low"], against: ["high", "stuck-high", ...MOVING, ...NOT_DRIVEN] },
  active: { fits: MOVING, against: [...STANDING, ...NOT_DRIVEN, "short", "open"] },
  steady: { fits: STANDING, against: [...MOVING, ...NOT_DRIVEN] },
  clock: { fits: ["clock", "toggling"], against: [...STANDING, ...NOT_DRIVEN, "short", "open"] },
  pulsing: { fits: ["pulsing", "toggling"], against: [...STANDING, ...NOT_DRIVEN, "short", "open"] },
  "no-activity": { fits: STANDING, against: MOVING },
  floating: { fits: ["floating", "open"], against: ["stuck-high", "stuck-low", "short", ...MOVING] },
  "no-short": { fits: ["open"], against: ["short"] },
  short: { fits: ["short"], against: ["open"] },
  open: { fits: ["open"], against: ["short"] },
  ok: { fits: ["ok"], against: ["not-ok"] },
  changed: { fits: ["changed", "cured"], against: ["no-change"] },
  "no-change": { fits: ["no-change"], against: ["changed", "cured"] },
  cured: { fits: ["cured"], against: ["no-change", "changed"] },
};

/** Holds a reading against an expected state. */
export function judgeAgainstState(input: Input, expected: StateExpectation): Judgement {
  const { measured } = input;
  switch (measured.form) {
    case "words":
      return inconclusive(`Words cannot be held against “${nameOf(expected.state)}”: decide yourself.`);
    case "over-limit":
      return judgeOverLimit(expected.state);
    case "state":
      return judgeState(input, measured, expected);
    case "value":
      return judgeValue(input, measured.quantity, expected);
  }
}

function nameOf(state: ExpectedState): string {
  return EXPECTED_WORDS[state];
}

function judgeOverLimit(expected: ExpectedState): Judgement {
  if (expected === "open") return judged("in-spec", "OL is open, as expected.");
  if (expected === "no-short") return judged("in-spec", "OL is no short.");
  if (expected === "short")
    return judged("out-of-spec", "OL is open where a connection is expected.", { direction: "high", size: "absent" });
  return inconclusive(`OL cannot be held against “${nameOf(expected)}”: the meter's range was exceeded.`);
}

function judgeState(
  input: Input,
  { state, frequency }: Extract<Reading, { form: "state" }>,
  expected: StateExpectation,
): Judgement {
  if (state === "clock" && frequency && expected.frequency) return judgeFrequency(input, frequency, expected.frequency);
  const { fits, against } = AGREEMENT[expected.state];
  const wanted = printExpectation(expected);
  const pair = `“${printState(state)}” against “${wanted}”`;
  if (fits.includes(state)) {
    if (expected.frequency) return inconclusive(`${pair}: it moves, but the frequency was not measured.`);
    return judged("in-spec", `“${printState(state)}” is what “${wanted}” asks for.`);
  }
  if (against.includes(state))
    return judged("out-of-spec", `“${printState(state)}” where “${wanted}” is expected.`, wrongnessOf(state));
  return inconclusive(`${pair} does not decide.`);
}

function wrongnessOf(state: ReadingState): { direction: Direction | null; size: Size } {
  if (state === "low" || state === "stuck-low" || state === "short") return { direction: "low", size: "clear" };
  if (state === "high" || state === "stuck-high" || state === "open") return { direction: "high", size: "clear" };
  return { direction: null, size: state === "no-activity" || state === "steady" ? "absent" : "clear" };
}

function judgeFrequency(input: Input, quantity: Quantity, near: Near): Judgement {
  const measured: Reading = { form: "value", quantity };
  return judgeAgainstLimits({ ...input, measured }, limitsOfNear(near, "frequency"));
}

function judgeValue(input: Input, quantity: Quantity, { state, frequency }: StateExpectation): Judgement {
  switch (state) {
    case "high":
    case "low":
      return quantity.unit === "Hz" ? judgeMovement(quantity, false) : judgeLevel(input, quantity, state);
    case "active":
    case "clock":
    case "pulsing":
      if (quantity.unit === "Hz")
        return frequency ? judgeFrequency(input, quantity, frequency) : judgeMovement(quantity, true);
      return inconclusive(
        `${printQuantity(quantity)} does not show whether the line moves: look with a scope or a logic probe.`,
      );
    case "steady":
    case "no-activity":
      if (quantity.unit === "Hz") return judgeMovement(quantity, false);
      return inconclusive(
        `${printQuantity(quantity)} does not show whether the line stands still: a meter shows the average.`,
      );
    case "short":
    case "no-short":
    case "open":
      return judgeConnection(input.kind, quantity, state);
    case "floating":
    case "ok":
    case "changed":
    case "no-change":
    case "cured":
      return inconclusive(`${printQuantity(quantity)} cannot be held against “${nameOf(state)}”: decide yourself.`);
  }
}

function judgeMovement(quantity: Quantity, shouldMove: boolean): Judgement {
  const moves = quantity.value > 0;
  const text = `${printQuantity(quantity)}: the line ${moves ? "moves" : "does not move"}`;
  if (moves === shouldMove) return judged("in-spec", `${text}, as expected.`);
  return judged("out-of-spec", `${text} where it should${shouldMove ? "" : " not"}.`, {
    size: shouldMove ? "absent" : "clear",
  });
}
