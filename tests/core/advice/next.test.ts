import { describe, expect, test } from "vitest";
import { entropyBits, likelyCauses, nextChecks, type CheckFacts, type SolvedCase } from "#lib/core/advice/index.ts";
import { aCase, alive, dead, fine, low } from "./bench.ts";

const NO_NETS = { placements: [], feeds: () => [] };

const solved = (at: string, ...checks: CheckFacts[]): SolvedCase => ({
  known: aCase("mira", checks),
  causes: [{ at, failure: "outputs-dead" }],
});
const ohms = (check: CheckFacts): CheckFacts => ({ ...check, kind: "diode", expected: "0.6 V" });

/** Three cases with U4 and two with U7 as the cause, all seen as equally like the one in hand. */
function ask(query: ReturnType<typeof aCase>, cases: SolvedCase[]) {
  const past = cases.map(({ causes }, number) => ({
    case: number,
    board: "mira",
    at: causes[0]?.at ?? "",
    chip: null,
    failure: "outputs-dead" as const,
    proved: true,
    helped: 0,
    didNotHelp: 0,
  }));
  const similar = past.map((cause) => ({ case: cause.case, score: 1 }));
  return nextChecks(query, likelyCauses(query, similar, past, NO_NETS), cases);
}

const history = [
  solved("U4", dead("U4.12"), fine("+5V")),
  solved("U4", dead("U4.12"), fine("+5V")),
  solved("U4", dead("U4.12"), fine("+5V")),
  solved("U7", alive("U4.12"), fine("+5V")),
  solved("U7", alive("U4.12"), fine("+5V")),
];

test("the check that split the causes before is proposed, with what it splits; one that always passed is not", () => {
  // By hand: weights 2, 4/3 and 1 held back give 6/13, 4/13, 3/13. Dead with U4 4/5, with U7 1/4, usual 4/7.
  const [p4, p7, rest] = [6 / 13, 4 / 13, 3 / 13];
  const joint = [p4 * 0.8, p7 * 0.25, (rest * 4) / 7];
  const failed = joint.reduce((a, b) => a + b);
  const other = [p4 * 0.2, p7 * 0.75, (rest * 3) / 7];
  const gain =
    entropyBits([p4, p7, rest]) -
    failed * entropyBits(joint.map((p) => p / failed)) -
    (1 - failed) * entropyBits(other.map((p) => p / (1 - failed)));
  expect(ask(aCase("mira", [low("U9.3")]), history)).toEqual([
    {
      kind: "activity",
      at: "U4.12",
      expected: "active",
      power: "on",
      minutes: 2,
      gainBits: expect.closeTo(gain, 10),
      because:
        "splits U4 from U7: U4.12 data failed in 3 of 3 with U4 outputs dead, failed in 0 of 2 with U7 outputs dead",
    },
  ]);
});

describe("nothing is proposed", () => {
  test.each([
    ["that was made already", aCase("mira", [dead("U4.12")]), history],
    ["on a board that is not known", aCase(null, []), history],
    ["without past cases", aCase("mira", []), []],
    ["from another board's cases", aCase("dora", []), history],
  ])("%s", (_, query, cases) => {
    expect(ask(query, cases)).toEqual([]);
  });
});

test("of two checks that tell as much per minute, the one with power off comes first", () => {
  const both = [
    solved("U4", low("U4.12"), ohms(low("U4.2"))),
    solved("U4", low("U4.12"), ohms(low("U4.2"))),
    solved("U7", fine("U4.12"), ohms(fine("U4.2"))),
    solved("U7", fine("U4.12"), ohms(fine("U4.2"))),
  ];
  expect(ask(aCase("mira", []), both).map(({ kind, at, power }) => [kind, at, power])).toEqual([
    ["diode", "U4.2", "off"],
    ["dc-voltage", "U4.12", "on"],
  ]);
});

test("a trial is never proposed: a part is fitted only after its supplies were read", () => {
  const trial: CheckFacts = { ...dead("U4"), kind: "trial", state: null, what: "swap", outcome: "cured" };
  const cases = [solved("U4", trial), solved("U4", trial), solved("U7", { ...trial, outcome: "no-change" })];
  expect(ask(aCase("mira", []), cases)).toEqual([]);
});

test("the order of past cases does not matter", () => {
  const query = aCase("mira", [low("U9.3")]);
  const estimate = likelyCauses(
    query,
    history.map((_, number) => ({ case: number, score: 1 })),
    history.map(({ causes }, number) => ({
      case: number,
      board: "mira",
      at: causes[0]?.at ?? "",
      chip: null,
      failure: "outputs-dead",
      proved: true,
      helped: 0,
      didNotHelp: 0,
    })),
    NO_NETS,
  );
  expect(nextChecks(query, estimate, history.toReversed())).toEqual(nextChecks(query, estimate, history));
});
