import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { caseFeatures, createCaseIndex, explainMatch, similarCases, type KnownCase } from "#lib/core/advice/index.ts";
import { aCase, alive, dead, fine, high, low, slightlyLow } from "./bench.ts";

const indexOf = (past: ReadonlyMap<number, KnownCase>) => {
  const index = createCaseIndex();
  for (const [number, known] of past) index.put(number, caseFeatures(known));
  return index;
};

/** Past cases nobody asks about, so that rarity means something. */
const others = Array.from({ length: 30 }, (_, at): [number, KnownCase] => [
  100 + at,
  aCase(`board-${at % 10}`, [dead(`U${at + 1}.5`), fine("+5V")], ["dead"]),
]);

const ranked = (query: KnownCase, past: Record<number, KnownCase>) => {
  const all = new Map<number, KnownCase>([
    ...others,
    ...Object.entries(past).map(([n, known]) => [Number(n), known] as const),
  ]);
  return similarCases(query, indexOf(all), (number) => all.get(number) ?? null)
    .map((found) => found.case)
    .filter((number) => number in past);
};

describe("ranking", () => {
  const query = aCase("mira", [low("U7.28"), alive("U4.12")], ["no-picture"]);

  test("the same failed check on this board, then the same chip elsewhere, then the same board alone", () => {
    expect(
      ranked(query, {
        1: aCase("mira", [dead("U4.2")]),
        2: aCase("dora", [low("U12.28")]),
        3: aCase("mira", [low("U7.28")]),
      }),
    ).toEqual([3, 2, 1]);
  });

  test("on another board: the same role of the same chip, then that of another chip, then another role of the chip", () => {
    expect(
      ranked(aCase("mira", [low("U7.28")]), {
        1: aCase("dora", [dead("U12.11")]),
        2: aCase("dora", [low("U3.28"), dead("U12.11")]),
        3: aCase("dora", [low("U12.28"), dead("U3.11")]),
      }),
    ).toEqual([3, 2, 1]);
  });

  test("a reading out in the same way, then in another degree, then on the other side", () => {
    expect(
      ranked(query, {
        1: aCase("mira", [high("U7.28")]),
        2: aCase("mira", [slightlyLow("U7.28")]),
        3: aCase("mira", [low("U7.28")]),
      }),
    ).toEqual([3, 2, 1]);
  });

  test("of two cases that agree alike, the one that contradicts stands lower", () => {
    expect(
      ranked(query, {
        1: aCase("mira", [low("U7.28"), dead("U4.12")], ["no-picture"]),
        2: aCase("mira", [low("U7.28")], ["no-picture"]),
        3: aCase("mira", [low("U7.28"), alive("U4.12")], ["no-picture"]),
      }),
    ).toEqual([3, 2, 1]);
  });

  test("a case with one matching check does not beat a case with four that agree, and one check more", () => {
    const rich = aCase("mira", [low("U7.28"), dead("U7.11"), dead("U7.12"), alive("U4.12"), high("+12V")]);
    const asked = aCase("mira", [low("U7.28"), dead("U7.11"), dead("U7.12"), alive("U4.12")]);
    expect(ranked(asked, { 1: aCase("mira", [low("U7.28")]), 2: rich })).toEqual([2, 1]);
  });

  test("a symptom finds a case that has no checks", () => {
    const old = aCase("dora", [], ["no-picture"]);
    expect(ranked(aCase("mira", [], ["no-picture"]), { 1: old })).toEqual([1]);
  });

  test("a long list of passed checks does not hide the one case with the same failed check", () => {
    const plan = Array.from({ length: 40 }, (_, at) => alive(`U4.${at + 1}`));
    const asked = aCase("mira", [low("U7.28"), ...plan]);
    const past = { 1: aCase("mira", [...plan, fine("U7.28"), dead("U9.3")]), 2: aCase("mira", [low("U7.28")]) };
    expect(ranked(asked, past)).toEqual([2, 1]);
  });
});

describe("scores", () => {
  const past = new Map([...others, [1, aCase("mira", [low("U7.28"), alive("U4.12")], ["no-picture"])] as const]);

  test("a case that agrees in everything scores 1, and none scores more", () => {
    const [first] = similarCases(
      aCase("mira", [low("U7.28"), alive("U4.12")], ["no-picture"]),
      indexOf(past),
      (n) => past.get(n) ?? null,
    );
    expect([first?.case, first?.score.toFixed(6)]).toEqual([1, "1.000000"]);
  });

  test("are between 0 and 1", () => {
    const check = fc.tuple(
      fc.constantFrom(low, high, fine, dead, alive),
      fc.constantFrom("U7.28", "U4.12", "U5.5", "+5V"),
    );
    fc.assert(
      fc.property(fc.array(check, { maxLength: 6 }), (checks) => {
        const found = similarCases(
          aCase(
            "mira",
            checks.map(([make, at]) => make(at)),
          ),
          indexOf(past),
          (n) => past.get(n) ?? null,
        );
        expect(found.every(({ score }) => score > 0 && score <= 1)).toBe(true);
      }),
    );
  });

  test("a case that is gone meanwhile is left out, and one that may not be seen never answers", () => {
    const query = aCase("mira", [low("U7.28")]);
    expect(similarCases(query, indexOf(past), () => null)).toEqual([]);
    const found = similarCases(query, indexOf(past), (n) => past.get(n) ?? null, { allowed: (n) => n !== 1 });
    expect(found.map((item) => item.case)).not.toContain(1);
  });
});

describe("reasons", () => {
  const query = aCase("mira", [low("U7.28", "0.8 V"), dead("U7.20"), alive("U4.12"), fine("+5V")], ["no-picture"]);

  test.each([
    [
      "the same board",
      aCase("mira", [low("U7.28"), alive("U7.20"), dead("U4.12"), fine("+5V"), dead("U7.11")], ["no-picture"]),
      {
        matched: [
          "U7.28 supply low there too: 0.8 V here",
          "+5V in spec there too",
          'symptom "no picture" there too',
          "same board",
        ],
        contradicted: ["U7.20 select in spec there, no activity here", "U4.12 data no activity there, in spec here"],
        unchecked: ["U7.11 data no activity there, not checked here"],
      },
    ],
    [
      "failed the other way",
      aCase("mira", [high("U7.28")]),
      {
        matched: ["same board"],
        contradicted: ["U7.28 supply high there, low here (0.8 V)"],
        unchecked: ["U7.20 select no activity here, not checked there"],
      },
    ],
    [
      "another board with the same chip",
      aCase("dora", [low("U12.28"), dead("U12.11"), dead("U3.20")]),
      {
        matched: [
          "supply of 27C256 low there too, at U12.28: 0.8 V here",
          "select at a chip no activity there too, at U3.20",
        ],
        contradicted: [],
        unchecked: [
          "data of 27C256 no activity there (U12.11 data), not checked here",
          "select of 74LS245 no activity there (U3.20 select), not checked here",
        ],
      },
    ],
    [
      "a case without checks",
      aCase("dora", [], ["no-picture"]),
      {
        matched: ['symptom "no picture" there too'],
        contradicted: [],
        unchecked: ["U7.28 supply low here, not checked there", "U7.20 select no activity here, not checked there"],
      },
    ],
  ])("%s", (_, past, reasons) => {
    expect(explainMatch(query, past)).toEqual(reasons);
  });
});
