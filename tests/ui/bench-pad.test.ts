import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readReading } from "#lib/core/quantity/index.ts";
import { CHECK_KINDS } from "#lib/core/shared/index.ts";
import { benchBoard } from "#lib/ui/bench-entry.ts";
import { PAD_KEYS, padText, type PadKey } from "#lib/ui/bench-pad.ts";
import { MOST_OFFERS, pinNumbers, placeOffers, stepPlace } from "#lib/ui/bench-places.ts";
import { board as facts } from "./bench-board.ts";

const keys: Record<string, PadKey> = {
  ".": { press: "point" },
  "±": { press: "sign" },
  "<": { press: "back" },
  k: { press: "unit", text: "k" },
  M: { press: "unit", text: "M" },
  Hz: { press: "unit", text: "Hz" },
  OL: { press: "word", text: "OL" },
  noise: { press: "word", text: "noise" },
};

function press(pressed: string): string {
  return pressed.split(" ").reduce((text, key) => padText(text, keys[key] ?? { press: "digit", text: key }), "");
}

describe("the number pad", () => {
  const sequences: [pressed: string, reading: string][] = [
    ["4 . 8 7", "4.87"],
    [". 6", "0.6"],
    ["± 1 2", "-12"],
    ["1 2 ± ±", "12"],
    ["4 . 7 k", "4.7k"],
    ["4 . 7 k M", "4.7M"],
    ["1 0 0 Hz k", "100k"],
    ["4 . 7 k < <", "4."],
    ["4 . k", "4k"],
    ["k", ""],
    ["4 . 8 . 7", "4.87"],
    ["6 1 2 OL", "OL"],
    ["OL 5", "5"],
    ["noise <", ""],
    ["noise k", "noise"],
  ];
  test.each(sequences)("%s → %s", (pressed, reading) => {
    expect(press(pressed)).toBe(reading);
  });

  test("offers only words and prefixes that can be read on that kind of check", () => {
    const unread = CHECK_KINDS.flatMap((kind) => {
      const { units, words } = PAD_KEYS[kind];
      const typed = [...words, ...units.map((unit) => padText("4", { press: "unit", text: unit }))];
      return typed.filter((text) => !readReading(text, kind).ok).map((text) => `${kind}: ${text}`);
    });
    expect(unread).toEqual([]);
  });

  test("whatever is pressed, taking back often enough empties it", () => {
    const key = fc.oneof(
      fc.constantFrom(...Object.values(keys)),
      fc.integer({ min: 0, max: 9 }).map((digit): PadKey => ({ press: "digit", text: String(digit) })),
    );
    fc.assert(
      fc.property(fc.array(key, { maxLength: 20 }), (pressed) => {
        let text = pressed.reduce(padText, "");
        for (let times = 0; times <= pressed.length + 1; times++) text = padText(text, { press: "back" });
        expect(text).toBe("");
      }),
    );
  });
});

describe("steps from place to place", () => {
  const board = benchBoard(facts);
  const steps: [from: string, by: 1 | -1, to: string | null][] = [
    ["U7.1", 1, "U7.2"],
    ["U7.8", 1, null],
    ["U7.1", -1, null],
    ["J1.1", 1, "J1.2"],
    ["U6", 1, "U7"],
    ["+5V", 1, "+12V"],
    ["U99.3", 1, "U99.4"],
    ["U99.1", -1, null],
    ["", 1, null],
  ];
  test.each(steps)("%s %i → %s", (from, by, to) => {
    expect(stepPlace(board, from, by)).toBe(to);
  });

  test("without a record pins are counted", () => {
    expect(stepPlace(benchBoard(null), "U7.14", 1)).toBe("U7.15");
  });
});

describe("places that are offered", () => {
  const offered = (typed: string) => placeOffers(facts, typed).map((one) => one.value);
  test("rails and parts first, pins once their part is named", () => {
    expect(offered("")).toEqual(["+5V", "+12V", "U6", "U7", "R3", "J1", "D0"]);
    expect(offered("u")).toEqual(["U6", "U7"]);
    expect(offered("U7.")).toEqual(["U7.1", "U7.2", "U7.3", "U7.4", "U7.5", "U7.6", "U7.7", "U7.8"]);
    expect(offered("J1")).toEqual(["J1", "J1.1", "J1.2"]);
    expect(offered("zz")).toEqual([]);
  });

  test("a pin says its name and its net", () => {
    expect(placeOffers(facts, "U7.2")).toEqual([{ value: "U7.2", label: "U7.2", hint: "D0, D0" }]);
  });

  test("never more than help", () => {
    const many = Array.from({ length: 500 }, (_, at) => ({ name: `N${at}`, role: "signal" as const, pins: [] }));
    expect(placeOffers({ ...facts, nets: many }, "N").length).toBe(MOST_OFFERS);
  });

  test("a part without a pin table has the pins of its nets, in order", () => {
    const nets = [{ name: "A", role: "signal" as const, pins: ["R3.2", "R3.10", "R3.1"] }];
    expect(pinNumbers({ ...facts, nets }, "r3")).toEqual(["1", "2", "10"]);
  });
});
