import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  confirmationWeight,
  likelyCauses,
  smoothedShare,
  type BoardStructure,
  type CheckFacts,
  type PastCause,
} from "#lib/core/advice/index.ts";
import { aCase, dead, fine, low } from "./bench.ts";

type BoardCause = PastCause & { board: string | null };

const NO_NETS: BoardStructure = { placements: [], feeds: () => [] };
const mira: BoardStructure = {
  placements: [
    { designator: "U7", chip: "27c256" },
    { designator: "U4", chip: "74ls244" },
    { designator: "U1", chip: "7805" },
  ],
  feeds: (at) => (at === "U7.28" ? ["U1"] : []),
};

const cause = (number: number, more: Partial<BoardCause> = {}): BoardCause => ({
  case: number,
  board: "mira",
  at: "U7",
  chip: "27c256",
  failure: "outputs-dead",
  proved: true,
  helped: 0,
  didNotHelp: 0,
  ...more,
});
const match = (...pairs: [number, number][]) => pairs.map(([number, score]) => ({ case: number, score }));
const swapped: CheckFacts = {
  kind: "trial",
  at: "U7",
  verdict: "noted",
  direction: null,
  size: null,
  state: null,
  what: "swap",
  outcome: "no-change",
};
const nothing = aCase("mira", [], ["no-picture"]);

test("nothing known: everything is something else", () => {
  expect(likelyCauses(nothing, [], [], NO_NETS)).toEqual({
    causes: [],
    somethingElse: 1,
    basis: { cases: 0, evidenceBits: 0 },
  });
});

test("one case that fits wholly stays below one half", () => {
  // By hand: 1² · (1 sighting · 2/3) = 2/3 against 1 held back: 0.4 and 0.6; entropy 0.971 of 1 bit.
  const estimate = likelyCauses(nothing, match([12, 1]), [cause(12)], NO_NETS);
  expect(estimate.causes).toEqual([
    {
      at: "U7",
      chip: "27c256",
      failure: "outputs-dead",
      probability: expect.closeTo(0.4, 12),
      because: ["was the cause in case 12 on this board"],
      cases: [12],
    },
  ]);
  expect(estimate.somethingElse).toBeCloseTo(0.6, 12);
  expect(estimate.basis).toEqual({ cases: 1, evidenceBits: expect.closeTo(1 - 0.970951, 6) });
});

describe("what makes a cause likelier", () => {
  const first = (...args: Parameters<typeof likelyCauses>) => likelyCauses(...args).causes[0]?.probability ?? 0;
  const once = first(nothing, match([1, 0.9]), [cause(1)], NO_NETS);

  test("more cases like it", () => {
    const cases = match([1, 0.9], [2, 0.9], [3, 0.9]);
    expect(first(nothing, cases, [cause(1), cause(2), cause(3)], NO_NETS)).toBeGreaterThan(once);
  });

  test("a better match", () => {
    expect(first(nothing, match([1, 0.5]), [cause(1)], NO_NETS)).toBeLessThan(once);
  });

  test("members whom it helped, and less so members whom it did not help", () => {
    expect(first(nothing, match([1, 0.9]), [cause(1, { helped: 3 })], NO_NETS)).toBeGreaterThan(once);
    expect(first(nothing, match([1, 0.9]), [cause(1, { didNotHelp: 3 })], NO_NETS)).toBeLessThan(once);
  });

  test("a proof", () => {
    expect(first(nothing, match([1, 0.9]), [cause(1, { proved: false })], NO_NETS)).toBeLessThan(once);
  });
});

describe("where a cause of another board may sit on this one", () => {
  const dora = cause(5, { board: "dora", at: "U12" });
  const places = (checks: CheckFacts[], past: BoardCause, structure = mira, board: string | null = "mira") =>
    likelyCauses(aCase(board, checks), match([5, 0.8]), [past], structure)
      .causes.filter(({ cases }) => cases.length > 0)
      .map(({ at, chip }) => [at, chip]);

  test("where the same chip sits", () => {
    expect(places([], dora)).toEqual([["U7", "27c256"]]);
  });

  test("of several such chips, at the one where something failed", () => {
    const two = { ...mira, placements: [...mira.placements, { designator: "U8", chip: "27c256" }] };
    expect(places([], dora, two)).toEqual([
      ["U7", "27c256"],
      ["U8", "27c256"],
    ]);
    expect(places([dead("U7.11")], dora, two)).toEqual([["U7", "27c256"]]);
  });

  test("nowhere when this board has no such chip, or it was no chip", () => {
    expect(places([], cause(5, { board: "dora", at: "U3", chip: "74ls245" }))).toEqual([]);
    expect(places([], cause(5, { board: "dora", at: "R12", chip: null }))).toEqual([]);
  });

  test("at no known place when the board is not known", () => {
    expect(places([], dora, NO_NETS, null)).toEqual([[null, "27c256"]]);
  });
});

describe("suspects from the board alone", () => {
  const suspects = (...checks: CheckFacts[]) =>
    likelyCauses(aCase("mira", checks), [], [], mira).causes.map(({ at, failure, because }) => [at, failure, because]);

  test.each([
    [
      "a low supply at a chip: what feeds it, and the chip that may pull it down",
      low("U7.28"),
      [
        ["U1", "dead", ["feeds U7.28 supply low"]],
        ["U7", "internal-short", ["U7.28 supply low"]],
      ],
    ],
    ["a dead data pin: the chip", dead("U7.11"), [["U7", "outputs-dead", ["U7.11 data no activity"]]]],
    ["a pin in spec: nobody", fine("U7.28"), []],
    ["a place without a chip: nobody", low("+5V"), []],
  ])("%s", (_, check, expected) => {
    expect(suspects(check)).toEqual(expected);
  });

  test("stay far from certain", () => {
    const estimate = likelyCauses(aCase("mira", [dead("U7.11")]), [], [], mira);
    expect(estimate.somethingElse).toBeGreaterThan(0.7);
  });

  test("strengthen a cause that past cases name at the same part, instead of listing it twice", () => {
    const { causes } = likelyCauses(aCase("mira", [dead("U7.11")]), match([1, 0.9]), [cause(1)], mira);
    expect(causes.map(({ at, failure, because }) => [at, failure, because])).toEqual([
      ["U7", "outputs-dead", ["was the cause in case 1 on this board", "U7.11 data no activity"]],
    ]);
  });
});

test("a chip that was swapped without change is nearly acquitted; its socket is not", () => {
  const past = [cause(1), cause(2, { failure: "bad-socket" })];
  const found = (checks: CheckFacts[]) =>
    likelyCauses(aCase("mira", checks), match([1, 0.9], [2, 0.9]), past, NO_NETS).causes;
  expect(found([]).map(({ failure }) => failure)).toEqual(["bad-socket", "outputs-dead"]);
  const [socket, chip] = found([swapped]);
  expect([socket?.failure, chip?.failure]).toEqual(["bad-socket", "outputs-dead"]);
  expect((chip?.probability ?? 1) / (socket?.probability ?? 1)).toBeCloseTo(0.1, 10);
  expect(chip?.because).toEqual(["was the cause in case 1 on this board", "against it: U7 swapped here, no change"]);
});

// Means of Beta(1 + s, 1 + f): closed form (1 + s)/(2 + s + f); rows of references.md, "confirmations".
test.each([
  [1, 0, 0.667],
  [8, 2, 0.75],
])("%i helped, %i did not: mean %f", (helped, not, mean) => {
  expect(smoothedShare(helped, helped + not, 2)).toBeCloseTo(mean, 3);
});

test("a cause weighs by its sightings times the share it helped", () => {
  const weight = (proved: boolean, helped: number, didNotHelp: number) =>
    confirmationWeight({ proved, helped, didNotHelp });
  expect([weight(true, 0, 0), weight(true, 7, 2), weight(false, 0, 0), weight(false, 1, 0)]).toEqual([
    2 / 3,
    8 * 0.75,
    1 / 3,
    2 * 0.75,
  ]);
});

test("probabilities and something else add up to one, whatever the order of causes", () => {
  const past = fc.uniqueArray(
    fc.record({
      number: fc.integer({ min: 1, max: 20 }),
      score: fc.double({ min: 0, max: 1, noNaN: true }),
      at: fc.constantFrom("U7", "U4", "R3"),
      board: fc.constantFrom("mira", "dora"),
      helped: fc.nat(5),
      didNotHelp: fc.nat(5),
    }),
    { selector: ({ number }) => number, maxLength: 12 },
  );
  const both = past.chain((rows) => fc.tuple(fc.constant(rows), fc.shuffledSubarray(rows, { minLength: rows.length })));
  fc.assert(
    fc.property(
      both,
      fc.constantFrom<CheckFacts[]>([], [dead("U7.11")], [low("U7.28"), swapped]),
      ([rows, other], checks) => {
        const ask = (list: typeof rows) =>
          likelyCauses(
            aCase("mira", checks),
            list.map(({ number, score }) => ({ case: number, score })),
            list.map(({ number, at, board, helped, didNotHelp }) => cause(number, { at, board, helped, didNotHelp })),
            mira,
          );
        const estimate = ask(rows);
        const sum = estimate.causes.reduce((all, { probability }) => all + probability, estimate.somethingElse);
        expect(sum).toBeCloseTo(1, 10);
        expect(estimate.somethingElse).toBeGreaterThan(0);
        expect(ask(other)).toEqual(estimate);
      },
    ),
  );
});
