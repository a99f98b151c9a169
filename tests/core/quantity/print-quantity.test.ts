import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  printQuantity,
  printValue,
  quantityOf,
  readQuantity,
  UNITS,
  UNITS_OF_KIND,
  type Quantity,
  type Unit,
} from "#lib/core/quantity/index.ts";
import { CHECK_KINDS } from "#lib/core/shared/index.ts";

describe("engineering notation with the digits that were typed", () => {
  test.each<[typed: string, printed: string]>([
    ["4.87 V", "4.87 V"],
    ["4.870 kohm", "4.870 kΩ"],
    ["4700 ohm", "4.700 kΩ"],
    ["4k7 ohm", "4.7 kΩ"],
    ["0.05 V", "0.05 V"],
    ["0.050 V", "50 mV"],
    ["50mVpp", "50 mVpp"],
    ["R47", "0.47 Ω"],
    ["35 milliohm", "0.035 Ω"],
    ["3.579545 MHz", "3.579545 MHz"],
    ["3579545 Hz", "3.579545 MHz"],
    ["4700 uF", "4700 µF"],
    ["0.1 uF", "0.1 µF"],
    ["0.10 uF", "0.10 µF"],
    ["0.100 uF", "100 nF"],
    [">20 Mohm", ">20 MΩ"],
    ["<1 ohm", "<1 Ω"],
    ["about 5 V", "≈5 V"],
    ["-12.1 V", "-12.1 V"],
    ["6.3 V a.c.", "6.3 Vrms"],
    ["10 Vp", "10 Vpk"],
    ["0.00 V", "0.00 V"],
    ["45 °C", "45 °C"],
    ["1e+2 °C", "1e+2 °C"],
    ["100n", "100 n"],
    ["4k7", "4.7 k"],
    ["12 kV", "12 kV"],
  ])("%j prints as %j", (typed, printed) => {
    const read = readQuantity(typed);
    expect(read.ok && printQuantity(read.value)).toBe(printed);
  });

  test.each<[value: number, unit: Unit | null, printed: string]>([
    [3.3 * 1.05, "V", "3.465 V"],
    [12 * 0.9, "V", "10.8 V"],
    [0.05, "V", "50 mV"],
    [0.8, "V", "0.8 V"],
    [0.612, "V", "612 mV"],
    [10, "%", "10 %"],
    [1000, "%", "1000 %"],
    [0.0047, "F", "4700 µF"],
    [20e6, "ohm", "20 MΩ"],
    [0, "V", "0 V"],
    [-0.000012, "A", "-12 µA"],
  ])("the computed value %d %s prints as %j", (value, unit, printed) => {
    expect(printValue(value, unit)).toBe(printed);
  });
});

/** Any quantity that can be typed: up to fifteen digits, from 10^-15 to 10^15, with bound and form. */
function quantities(units: readonly (Unit | null)[]): fc.Arbitrary<Quantity> {
  return fc
    .record({
      mantissa: fc.bigInt({ min: 0n, max: 999_999_999_999_999n }),
      power: fc.integer({ min: -15, max: 12 }),
      isNegative: fc.boolean(),
      unit: fc.constantFrom(...units),
      bound: fc.constantFrom(undefined, "above" as const, "below" as const, "about" as const),
      form: fc.constantFrom(undefined, "peak-to-peak" as const, "rms" as const, "peak" as const),
    })
    .map(({ mantissa, power, isNegative, unit, bound, form }) => {
      const sign = isNegative && mantissa > 0n ? "-" : "";
      return {
        value: Number(`${sign}${mantissa}e${power}`),
        unit,
        digits: mantissa.toString().length,
        resolution: Number(`1e${power}`),
        ...(bound ? { bound } : {}),
        ...(form && (unit === "V" || unit === "A") ? { form } : {}),
      };
    });
}

describe("laws", () => {
  test("reading what was printed gives the same quantity", () => {
    fc.assert(
      fc.property(quantities([...UNITS, null]), (quantity) => {
        expect(readQuantity(printQuantity(quantity))).toEqual({ ok: true, value: quantity });
      }),
      { numRuns: 2000 },
    );
  });

  test("and so on every kind of check that takes the unit", () => {
    const pairs = CHECK_KINDS.flatMap((kind) => UNITS_OF_KIND[kind].map((unit) => ({ kind, unit })));
    const typed = fc.constantFrom(...pairs).chain(({ kind, unit }) => fc.tuple(fc.constant(kind), quantities([unit])));
    fc.assert(
      fc.property(typed, ([kind, quantity]) => {
        expect(readQuantity(printQuantity(quantity), { kind })).toEqual({ ok: true, value: quantity });
      }),
      { numRuns: 1000 },
    );
  });

  test("a computed quantity is worth what it was computed to, within twelve digits, and prints back to itself", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), fc.constantFrom(...UNITS), (value, unit) => {
        const quantity = quantityOf(value, unit);
        expect(Math.abs(quantity.value - value)).toBeLessThanOrEqual(1e-11 * value);
        expect(readQuantity(printQuantity(quantity))).toEqual({ ok: true, value: quantity });
      }),
    );
  });

  test("a decimal comma reads like a point, except where it may part thousands", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 99 }), (whole, hundredths) => {
        const text = `${whole}.${String(hundredths).padStart(2, "0")}`;
        expect(readQuantity(`${text.replace(".", ",")} V`)).toEqual(readQuantity(`${text} V`));
      }),
    );
  });

  test("no text makes the reader throw, and a number is never NaN", () => {
    const pieces = fc.constantFrom(..."0123456789.,-+ eEkKmMuµnpRVAΩFHz%°<>~≥pp rms".split(""));
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces, { maxLength: 14 }).map((each) => each.join("")),
        ),
        fc.constantFrom(undefined, ...CHECK_KINDS),
        (text, kind) => {
          const read = readQuantity(text, kind ? { kind } : {});
          const isSound = read.ok
            ? Number.isFinite(read.value.value) && read.value.resolution > 0
            : read.problem.reason !== "";
          expect(isSound).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });
});
