import fc from "fast-check";
import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { normalShareBelow, probabilityWithin } from "#lib/core/reading/index.ts";

type NormalLibrary = { jStat: { normal: { cdf(x: number, mean: number, deviation: number): number } } };
// jstat 1.9.6 ships no types.
const { jStat } = createRequire(import.meta.url)("jstat") as NormalLibrary;

/** jstat states no accuracy; its error function is a Chebyshev fit good to about 10^-15. */
const JSTAT_ACCURACY = 1e-13;

describe("Φ", () => {
  // Handbook values to ten places: Abramowitz and Stegun 1964, table 26.1 (from memory).
  test.each([
    [0, 0.5],
    [0.5, 0.6914624613],
    [1, 0.8413447461],
    [1.4, 0.9192433408],
    [1.96, 0.9750021049],
    [3, 0.998650102],
  ])("Φ(%d) = %d", (x, share) => {
    expect(normalShareBelow(x)).toBeCloseTo(share, 9);
    expect(normalShareBelow(-x)).toBeCloseTo(1 - share, 9);
  });

  test("agrees with jstat 1.9.6 from -40 to 40", () => {
    const apart = Array.from({ length: 8001 }, (_, index) => {
      const x = (index - 4000) / 100;
      return Math.abs(normalShareBelow(x) - jStat.normal.cdf(x, 0, 1));
    });
    expect(Math.max(...apart)).toBeLessThan(JSTAT_ACCURACY);
  });

  test("has its limits where there is nothing left", () => {
    expect([-Infinity, Infinity, NaN].map(normalShareBelow)).toEqual([0, 1, NaN]);
  });

  test("never falls, and is symmetric", () => {
    const x = fc.double({ min: -12, max: 12, noNaN: true });
    fc.assert(
      fc.property(x, x, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(normalShareBelow(less)).toBeLessThanOrEqual(normalShareBelow(more) + 1e-15);
        expect(normalShareBelow(a) + normalShareBelow(-a)).toBeCloseTo(1, 14);
      }),
    );
  });
});

describe("probability in spec, JCGM 106:2012 clause 7", () => {
  test("y = -5.47 V, u = 0.05 V, limit ≤ -5.40 V: 0.9192 (example of clause 7, from memory, recomputed)", () => {
    expect(probabilityWithin({ high: -5.4 }, -5.47, 0.05)).toBeCloseTo(0.9192, 4);
  });

  test("between two limits it is Φ((TU−y)/u) − Φ((TL−y)/u), by jstat", () => {
    const number = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(number, number, number, fc.double({ min: 0.01, max: 10, noNaN: true }), (a, b, y, u) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const byJstat = jStat.normal.cdf((high - y) / u, 0, 1) - jStat.normal.cdf((low - y) / u, 0, 1);
        expect(Math.abs(probabilityWithin({ low, high }, y, u) - byJstat)).toBeLessThan(2 * JSTAT_ACCURACY);
      }),
    );
  });

  test("exactly at a single limit it is one half (follows from the formula)", () => {
    expect(probabilityWithin({ low: 2.4 }, 2.4, 0.01)).toBe(0.5);
  });

  test("a guard band of two standard uncertainties leaves 0.9772 (clause 8: acceptance limit T − 2u, from memory)", () => {
    expect(probabilityWithin({ high: 5.25 }, 5.25 - 2 * 0.02, 0.02)).toBeCloseTo(0.9772, 4);
  });
});
