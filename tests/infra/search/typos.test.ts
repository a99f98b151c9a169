import { createRequire } from "node:module";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alignmentDistance } from "#lib/infra/search/edit-distance.ts";
import { errorsAllowed, Vocabulary } from "#lib/infra/search/typos.ts";

const require = createRequire(import.meta.url);
const talisman = require("talisman/metrics/damerau-levenshtein") as (a: string, b: string) => number;

function vocabulary(...words: string[]): Vocabulary {
  const list = new Vocabulary();
  for (const word of words) list.add(word);
  return list;
}

describe("alignmentDistance", () => {
  // talisman 1.1.4 computes the same restricted distance (a swapped pair is one error, and is not edited again).
  test("equals talisman's on words of few letters, and is one above the limit beyond it", () => {
    const word = fc.string({ unit: fc.constantFrom("a", "b", "c", "d"), maxLength: 9 });
    fc.assert(
      fc.property(word, word, fc.integer({ min: 0, max: 9 }), (a, b, most) => {
        expect(alignmentDistance(a, b, most)).toBe(Math.min(talisman(a, b), most + 1));
      }),
      { numRuns: 5000 },
    );
  });

  // Common examples of the distance, from memory.
  test.each([
    ["flicker", "flicker", 0],
    ["flicker", "filcker", 1],
    ["kitten", "sitting", 3],
    ["ca", "abc", 3],
    ["", "abc", 3],
  ])("%s and %s are %i apart", (a, b, distance) => {
    expect(alignmentDistance(a, b, 9)).toBe(distance);
  });
});

test.each([
  ["key", 0],
  ["beep", 1],
  ["picture", 1],
  ["keyboard", 2],
])("%s may have %i errors", (word, errors) => {
  expect(errorsAllowed(word.length)).toBe(errors);
});

describe("Vocabulary", () => {
  test("corrections are all words within the errors allowed, as asking each would find", () => {
    const word = fc.string({ unit: fc.constantFrom(...Array.from("abcdeé")), minLength: 1, maxLength: 10 });
    fc.assert(
      fc.property(fc.uniqueArray(word, { maxLength: 10 }), word, (words, asked) => {
        const allowed = errorsAllowed(asked.length);
        const naive = words.filter((one) => one !== asked && allowed > 0 && talisman(one, asked) <= allowed);
        const found = vocabulary(...words).corrections(asked);
        expect(found.map((relative) => relative.word).toSorted()).toEqual(naive.toSorted());
        expect(found.map(({ errors }) => errors)).toEqual(found.map((relative) => talisman(relative.word, asked)));
      }),
    );
  });

  test("the nearest correction comes first, among equals the most used", () => {
    const words = vocabulary("flickering", "flickerings", "flackering", "flackering", "fluckerong");
    expect(words.corrections("flickerin").map(({ word }) => word)).toEqual(["flickering", "flackering", "flickerings"]);
  });

  test("completions begin with what was typed", () => {
    const words = vocabulary("picture", "pictures", "pin", "video");
    expect(words.completions("pi").map(({ word }) => word)).toEqual(["picture", "pictures", "pin"]);
    expect(words.completions("picture").map(({ word }) => word)).toEqual(["pictures"]);
    expect(words.completions("p")).toEqual([]);
  });

  test("other forms of a word", () => {
    expect(
      vocabulary("beep", "beeping", "been")
        .forms("beeps")
        .map(({ word }) => word),
    ).toEqual(["beep"]);
    expect(
      vocabulary("beep", "beeping", "been")
        .forms("beep")
        .map(({ word }) => word),
    ).toEqual(["beeping"]);
  });

  test("a word is known until the last document that holds it goes", () => {
    const words = vocabulary("beep", "beep");
    words.remove("beep");
    expect([words.has("beep"), words.uses("beep"), words.size]).toEqual([true, 1, 1]);
    words.remove("beep");
    words.remove("beep");
    expect([words.has("beep"), words.size, words.completions("be"), words.corrections("beap")]).toEqual([
      false,
      0,
      [],
      [],
    ]);
  });
});
