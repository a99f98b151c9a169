import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  caseFeatures,
  checkFeatures,
  describeFeature,
  featureId,
  featuresOf,
  queryFeatures,
  type CheckFacts,
} from "#lib/core/advice/index.ts";
import { aCase, alive, dead, fine, low, onBoard, slightlyLow } from "./bench.ts";

const told = (check: CheckFacts, board: string | null = "mira") =>
  checkFeatures(check, onBoard(board)).map((f) => `${f.depth}: ${f.subject} ${f.outcome || f.sign}`);

const trial = (outcome: "changed" | "no-change" | "cured"): CheckFacts => ({
  ...low("U7"),
  kind: "trial",
  verdict: "noted",
  direction: null,
  size: null,
  what: "swap",
  outcome,
});

describe("a check's features, from the exact place to the plain kind", () => {
  test.each([
    [
      "a low supply",
      low("U7.28"),
      [
        "place: board mira | U7.28 dc-voltage failed",
        "place: board mira | U7.28 dc-voltage low",
        "place: board mira | U7.28 dc-voltage low-clear",
        "role: 27c256 supply dc-voltage low",
        "kind: supply at chip dc-voltage low",
        "part: board mira | U7 failed",
        "chip: 27c256 failed",
      ],
    ],
    [
      "a supply in spec",
      fine("U7.28"),
      ["place: board mira | U7.28 dc-voltage passed", "role: 27c256 supply dc-voltage passed"],
    ],
    [
      "a dead data pin",
      dead("U7.11"),
      [
        "place: board mira | U7.11 activity failed",
        "place: board mira | U7.11 activity no-activity",
        "role: 27c256 data activity no-activity",
        "kind: data at chip activity no-activity",
        "part: board mira | U7 failed",
        "chip: 27c256 failed",
      ],
    ],
    [
      "a pin of unknown role goes by its name",
      dead("u7.1"),
      [
        "place: board mira | U7.1 activity failed",
        "place: board mira | U7.1 activity no-activity",
        "role: 27c256 pin VPP activity no-activity",
        "kind: pin at chip activity no-activity",
        "part: board mira | U7 failed",
        "chip: 27c256 failed",
      ],
    ],
    [
      "a rail, however it is written",
      low("+5 V"),
      [
        "place: board mira | +5 V dc-voltage failed",
        "place: board mira | +5 V dc-voltage low",
        "place: board mira | +5 V dc-voltage low-clear",
        "role: rail +5V dc-voltage low",
        "kind: rail dc-voltage low",
        "part: board mira | +5 V failed",
      ],
    ],
    [
      "an observation that nobody had an expectation for says how it was, not that it failed",
      { ...dead("U7.11"), verdict: "noted" as const },
      [
        "place: board mira | U7.11 activity no-activity",
        "role: 27c256 data activity no-activity",
        "kind: data at chip activity no-activity",
      ],
    ],
    [
      "a trial that cured",
      trial("cured"),
      [
        "place: board mira | U7 trial swap failed",
        "place: board mira | U7 trial swap cured",
        "role: 27c256 trial swap cured",
        "kind: chip trial swap cured",
        "part: board mira | U7 failed",
        "chip: 27c256 failed",
      ],
    ],
    [
      "a trial that changed nothing",
      trial("no-change"),
      ["place: board mira | U7 trial swap passed", "role: 27c256 trial swap passed"],
    ],
    ["an inconclusive check", { ...low("U7.28"), verdict: "inconclusive" as const }, []],
    ["a check not taken", { ...low("U7.28"), verdict: "not-taken" as const }, []],
    ["a bare reading", { ...low("U7.28"), verdict: "noted" as const, direction: null }, []],
  ])("%s", (_, check, features) => {
    expect(told(check)).toEqual(features);
  });

  test("without a board only chip, role and kind are left", () => {
    expect(told(low("U7.28"), null)).toEqual([
      "role: 27c256 supply dc-voltage low",
      "kind: supply at chip dc-voltage low",
      "chip: 27c256 failed",
    ]);
  });

  test("a diode reading with the other lead, and another second point, are other measurements", () => {
    const [red] = told({ ...low("U7.11"), kind: "diode", lead: "red" });
    const [black] = told({ ...low("U7.11"), kind: "diode", lead: "black", to: "J1.2" });
    expect([red, black]).toEqual([
      "place: board mira | U7.11 diode red lead failed",
      "place: board mira | U7.11 diode to J1.2 black lead failed",
    ]);
  });
});

describe("features as integers", () => {
  // The integers are stored with every case: a change here needs a new FEATURE_VERSION.
  test("keep their values", () => {
    expect(checkFeatures(low("U7.28"), onBoard("mira")).map(featureId)).toMatchInlineSnapshot(`
      [
        1960267944,
        2119488788,
        -128521394,
        -1579250024,
        1144560638,
        -1477997118,
        1939173542,
      ]
    `);
  });

  test("a place that passed is the opposite of the place that failed", () => {
    const [failed] = checkFeatures(low("U7.28"), onBoard("mira")).map(featureId);
    const [passed] = checkFeatures(fine("U7.28"), onBoard("mira")).map(featureId);
    expect((failed ?? 0) ^ 1).toBe(passed);
  });

  test("of a case are distinct, ascending and 32 bits wide, whatever the order of its checks", () => {
    const check = fc.tuple(
      fc.constantFrom(low, slightlyLow, fine, dead, alive),
      fc.constantFrom("U7.28", "U7.11", "U7.12", "U4.20", "+5V", "J3.5"),
    );
    const anyOrder = fc
      .array(check, { maxLength: 12 })
      .chain((checks) => fc.tuple(fc.constant(checks), fc.shuffledSubarray(checks, { minLength: checks.length })));
    fc.assert(
      fc.property(anyOrder, ([checks, shuffled]) => {
        const ids = caseFeatures(
          aCase(
            "mira",
            checks.map(([make, at]) => make(at)),
            ["no-picture"],
          ),
        );
        expect(ids).toEqual([...new Set(ids)].toSorted((a, b) => a - b));
        expect(ids.every((id) => id === (id | 0))).toBe(true);
        expect(
          caseFeatures(
            aCase(
              "mira",
              shuffled.map(([make, at]) => make(at)),
              ["no-picture"],
            ),
          ),
        ).toEqual(ids);
      }),
    );
  });

  test("100,000 different places fall on one integer as rarely as 31 random bits do", () => {
    const ids = new Set<number>();
    for (let board = 0; board < 100; board++)
      for (let pin = 0; pin < 1000; pin++)
        ids.add(
          featureId({
            depth: "place",
            sign: "failed",
            grain: "failed",
            subject: `board b${board} | U${pin % 40}.${Math.floor(pin / 40)} dc-voltage`,
            outcome: "",
          }),
        );
    // Expected pairs on one integer: 100,000² / 2 / 2^31 = 2.3 (birthday bound); ten or more has a chance below 1 in 5,000.
    expect(100_000 - ids.size).toBeLessThan(10);
  });
});

test("what failed once in a case does not also count as passed there", () => {
  const features = [
    ...featuresOf(aCase("mira", [low("U7.28"), fine("U7.28"), dead("U7.11"), alive("U7.12")])).values(),
  ];
  expect(features.filter(({ sign }) => sign === "passed").map(describeFeature)).toEqual([
    "U7.12 activity in spec (board mira)",
  ]);
});

test("a feature describes itself", () => {
  const past = aCase("mira", [low("U7.28")], ["no-picture"]);
  const words = [...featuresOf(past).values()].map(describeFeature).toSorted();
  expect(words).toEqual([
    "27c256 supply dc-voltage low",
    "U7.28 dc-voltage failed (board mira)",
    "U7.28 dc-voltage low (board mira)",
    "U7.28 dc-voltage low-clear (board mira)",
    "board mira",
    "something wrong at 27c256",
    "something wrong at U7 (board mira)",
    "supply at chip dc-voltage low",
    "symptom no-picture",
  ]);
});

test("a case written down in four lines, without checks, is known by its board, symptom, part and chip", () => {
  const past = { facts: { symptoms: ["no-picture"], parts: ["U7"], checks: [] }, context: onBoard("mira") };
  const shared = new Set(caseFeatures(past));
  const query = queryFeatures(aCase("mira", [low("U7.28")], ["no-picture"]));
  expect(
    query
      .filter(({ id }) => shared.has(id))
      .map(({ weight }) => weight)
      .toSorted((a, b) => a - b),
  ).toEqual([0.3, 0.3, 0.3, 0.6]);
});

test("however many checks passed, together they weigh at most half of the rest", () => {
  const passed = Array.from({ length: 60 }, (_, pin) => alive(`U4.${pin + 1}`));
  const query = queryFeatures(aCase("mira", [low("U7.28"), ...passed]));
  const sum = (sign: number) =>
    query.filter(({ id }) => (id & 1) === sign).reduce((all, { weight }) => all + weight, 0);
  expect(sum(1)).toBeCloseTo(sum(0) / 2, 10);
});
