import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createCaseIndex, rarity, type CaseIndex, type Ranked, type WeightedFeature } from "#lib/core/advice/index.ts";

const feature = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: -6, max: 12 }) },
  { weight: 1, arbitrary: fc.constantFrom(-2147483648, 2147483647, 2147483646) },
);
const caseId = fc.integer({ min: 0, max: 400 });
const features = fc.array(feature, { maxLength: 8 });
const cases = fc.uniqueArray(fc.tuple(caseId, features), { selector: ([id]) => id, maxLength: 150 });
const query = fc.uniqueArray(
  fc.record({
    id: feature,
    weight: fc.constantFrom(0.1, 0.4, 0.6, 1),
    against: fc.constantFrom(0, 0, 0.5),
  }),
  { selector: ({ id }) => id, maxLength: 10 },
);

function filled(entries: readonly (readonly [number, readonly number[]])[]): CaseIndex {
  const index = createCaseIndex();
  for (const [id, has] of entries) index.put(id, has);
  return index;
}

/** The naive twin: every case against every feature, in the order of features that the index promises. */
function bruteForce(
  entries: readonly (readonly [number, readonly number[]])[],
  asked: readonly WeightedFeature[],
): Ranked[] {
  const sets = entries.map(([id, has]) => [id, new Set(has)] as const);
  const weigh = (id: number) => rarity(sets.filter(([, has]) => has.has(id)).length, sets.length);
  const inOrder = asked.toSorted((a, b) => a.id - b.id);
  return sets
    .map(([id, has]) => {
      let score = 0;
      for (const { id: f, weight, against } of inOrder) {
        if (has.has(f)) score = Math.fround(score + Math.fround(weight * weigh(f)));
        if (against > 0 && has.has(f ^ 1)) score = Math.fround(score - Math.fround(against * weigh(f ^ 1)));
      }
      return { case: id, score };
    })
    .filter(({ score }) => score > 0)
    .toSorted((a, b) => b.score - a.score || a.case - b.case);
}

describe("laws", () => {
  test("scores and order equal a plain loop over all cases, to the last bit", () => {
    fc.assert(
      fc.property(cases, query, fc.integer({ min: 0, max: 20 }), (entries, asked, k) => {
        expect(filled(entries).search(asked, k)).toEqual(bruteForce(entries, asked).slice(0, k));
      }),
    );
  });

  test("the order of arrival does not matter", () => {
    const shuffled = cases.chain((entries) =>
      fc.tuple(fc.constant(entries), fc.shuffledSubarray(entries, { minLength: entries.length })),
    );
    fc.assert(
      fc.property(shuffled, query, ([entries, other], asked) => {
        expect(filled(other).search(asked, 10)).toEqual(filled(entries).search(asked, 10));
      }),
    );
  });

  test("whatever was put, replaced and removed, only what is in at the end counts", () => {
    const step = fc.tuple(
      caseId.map((id) => id % 12),
      fc.option(features),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 80 }), query, (steps, asked) => {
        const index = createCaseIndex();
        const now = new Map<number, readonly number[]>();
        for (const [id, has] of steps) {
          if (has === null) {
            index.remove(id);
            now.delete(id);
          } else {
            index.put(id, has);
            now.set(id, has);
          }
        }
        expect(index.size).toBe(now.size);
        expect(index.search(asked, 12)).toEqual(bruteForce([...now], asked));
      }),
    );
  });

  test("one search leaves nothing behind for the next", () => {
    fc.assert(
      fc.property(cases, query, query, (entries, first, second) => {
        const index = filled(entries);
        index.search(first, 10);
        expect(index.search(second, 10)).toEqual(filled(entries).search(second, 10));
      }),
    );
  });

  test("nobody scores above what agreeing in everything would give", () => {
    fc.assert(
      fc.property(cases, query, (entries, asked) => {
        const index = filled(entries);
        const best = index.best(asked);
        expect(index.search(asked, 10).every(({ score }) => score <= best * 1.000001)).toBe(true);
      }),
    );
  });
});

describe("answers", () => {
  const ask = (...ids: number[]) => ids.map((id) => ({ id, weight: 1, against: 0.5 }));
  const entries = [
    [3, [10, 20]],
    [1, [10, 20]],
    [2, [10, 30]],
    [4, [11, 20]],
  ] as const;

  test("equal cases by smaller number, contradicted ones last", () => {
    expect(
      filled(entries)
        .search(ask(10, 20), 10)
        .map((item) => item.case),
    ).toEqual([1, 3, 2]);
  });

  test("a case that is excluded or not to be seen does not answer, and does not take a place", () => {
    const index = filled(entries);
    expect(index.search(ask(10, 20), 1, { exclude: 1 }).map((item) => item.case)).toEqual([3]);
    expect(index.search(ask(10, 20), 1, { allowed: (id) => id === 2 }).map((item) => item.case)).toEqual([2]);
  });

  test("counts instead of rarity on request", () => {
    expect(filled(entries).search(ask(10, 20), 10, { rarity: () => 1 })).toEqual([
      { case: 1, score: 2 },
      { case: 3, score: 2 },
      { case: 2, score: 1 },
      { case: 4, score: 0.5 },
    ]);
  });

  test("an empty index, an empty query and an unknown feature answer nothing", () => {
    expect(createCaseIndex().search(ask(10), 10)).toEqual([]);
    expect(filled(entries).search([], 10)).toEqual([]);
    expect(filled(entries).search(ask(98), 10)).toEqual([]);
  });

  test("a failing permission does not spoil the next answer", () => {
    const index = filled(entries);
    const refuse = () => {
      throw new Error("no answer from the members' list");
    };
    expect(() => index.search(ask(10, 20), 2, { allowed: refuse })).toThrow("members' list");
    expect(index.search(ask(10, 20), 10)).toEqual(filled(entries).search(ask(10, 20), 10));
  });

  // SQLite 3.40 FTS5 gives such a word no weight or less (references.md): the plain BM25 form, ln((N - n + .5)/(n + .5)).
  test("what every case of a small club has still weighs something", () => {
    expect(rarity(3, 3)).toBeCloseTo(Math.log(1 + 0.5 / 3.5), 12);
    expect(filled([[1, [10]]]).search(ask(10), 1)).toHaveLength(1);
  });
});

test("memory: at most 48 bytes for each feature of a case, and replacing all cases does not grow it", () => {
  const index = createCaseIndex();
  const has = (id: number) => Array.from({ length: 8 }, (_, at) => Math.imul(id * 8 + at, 2654435761) % 4000);
  for (let id = 0; id < 20_000; id++) index.put(id, has(id));
  const before = index.memoryBytes();
  expect(before).toBeLessThan(20_000 * 8 * 48);
  for (let id = 0; id < 20_000; id++) index.put(id, has(id));
  expect(index.memoryBytes()).toBeLessThan(before * 1.1);
});
