import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mirrored, packageOutline, readPackageName, type Outline } from "#lib/core/pinout/index.ts";
import { PACKAGE_STYLES, type PackageStyle } from "#lib/core/shared/index.ts";

function outline(style: PackageStyle, pinCount: number): Outline {
  const result = packageOutline(style, pinCount);
  if (!result.ok) throw new Error(result.problem);
  return result.value;
}

/** The pins of one side as one reads them: downwards or to the right. */
function along(drawn: Outline, side: "left" | "right" | "top" | "bottom"): string {
  const pins = drawn.pins.filter((pin) => pin.side === side);
  return pins
    .toSorted((a, b) => a.x - b.x + (a.y - b.y))
    .map((pin) => pin.number)
    .join(" ");
}

const sides = (drawn: Outline) => ({
  left: along(drawn, "left"),
  bottom: along(drawn, "bottom"),
  right: along(drawn, "right"),
  top: along(drawn, "top"),
});

describe("where the pins are, seen from the component side", () => {
  // Numbering runs counter-clockwise: JEDEC Publication 95 (from memory).
  test.each<[PackageStyle, number, ReturnType<typeof sides>]>([
    ["DIP", 8, { left: "1 2 3 4", bottom: "", right: "8 7 6 5", top: "" }],
    ["DIP", 14, { left: "1 2 3 4 5 6 7", bottom: "", right: "14 13 12 11 10 9 8", top: "" }],
    ["SOIC", 8, { left: "1 2 3 4", bottom: "", right: "8 7 6 5", top: "" }],
    // JEDEC MS-018: pin 1 in the middle of the top side.
    ["PLCC", 20, { left: "4 5 6 7 8", bottom: "9 10 11 12 13", right: "18 17 16 15 14", top: "3 2 1 20 19" }],
    [
      "PLCC",
      28,
      {
        left: "5 6 7 8 9 10 11",
        bottom: "12 13 14 15 16 17 18",
        right: "25 24 23 22 21 20 19",
        top: "4 3 2 1 28 27 26",
      },
    ],
    // JEDEC MO-052: 7 by 9, as 27C512 data sheets draw it.
    [
      "PLCC",
      32,
      {
        left: "5 6 7 8 9 10 11 12 13",
        bottom: "14 15 16 17 18 19 20",
        right: "29 28 27 26 25 24 23 22 21",
        top: "4 3 2 1 32 31 30",
      },
    ],
    [
      "QFP",
      32,
      {
        left: "1 2 3 4 5 6 7 8",
        bottom: "9 10 11 12 13 14 15 16",
        right: "24 23 22 21 20 19 18 17",
        top: "32 31 30 29 28 27 26 25",
      },
    ],
    ["SIP", 5, { left: "", bottom: "1 2 3 4 5", right: "", top: "" }],
    ["TO", 3, { left: "", bottom: "1 2 3", right: "", top: "" }],
  ])("%s-%i", (style, pinCount, expected) => {
    expect(sides(outline(style, pinCount))).toEqual(expected);
  });

  test("pin 1 of a PLCC-44 stands above the middle of the body", () => {
    const drawn = outline("PLCC", 44);
    const first = drawn.pins[0];
    expect([first?.number, first?.side, first?.x]).toEqual(["1", "top", drawn.width / 2]);
  });

  test("rows of a DIP are 0.3, 0.6 and 0.9 inch apart, its pins 0.1 inch", () => {
    const rows = [14, 28, 64].map((count) => {
      const drawn = outline("DIP", count);
      const inner = drawn.body.width + 2.6;
      return [drawn.pitch, Math.round(inner * 100) / 100];
    });
    expect(rows).toEqual([
      [2.54, 7.62],
      [2.54, 15.24],
      [2.54, 22.86],
    ]);
  });
});

describe("impossible packages are refused with a reason", () => {
  test.each<[PackageStyle, number, string]>([
    ["DIP", 15, "a DIP has an even number of pins from 4 to 64, not 15"],
    ["DIP", 66, "a DIP has an even number of pins from 4 to 64, not 66"],
    ["SOIC", 3, "a SOIC has an even number of pins from 4 to 64, not 3"],
    ["PLCC", 30, "a PLCC has 20, 28, 32, 44, 52, 68, 84, 100, 124 pins, not 30"],
    ["QFP", 46, "a QFP has a number of pins from 32 to 304 that divides by four, not 46"],
    ["SIP", 1, "a SIP has 2 to 40 pins, not 1"],
    ["TO", 8, "a TO package is drawn with 2 to 7 leads in a row, not 8"],
    ["other", 8, "packages of this style are not drawn"],
    ["DIP", Number.NaN, "the number of pins must be a whole number from 1"],
  ])("%s with %d pins", (style, pinCount, problem) => {
    expect(packageOutline(style, pinCount)).toEqual({ ok: false, problem });
  });
});

describe("laws of every outline that is drawn", () => {
  const drawn = fc
    .tuple(fc.constantFrom(...PACKAGE_STYLES), fc.integer({ min: 1, max: 310 }))
    .map(([style, pinCount]) => packageOutline(style, pinCount))
    .filter((result) => result.ok)
    .map((result) => (result.ok ? result.value : outline("DIP", 8)));

  test("mirroring twice changes nothing, and once moves every pin to the other side of the middle", () => {
    fc.assert(
      fc.property(drawn, (one) => {
        const other = mirrored(one);
        expect(mirrored(other)).toEqual(one);
        expect(other.side).toBe("solder");
        for (const [i, pin] of one.pins.entries()) {
          expect(other.pins[i]?.number).toBe(pin.number);
          expect(other.pins[i]?.x).toBeCloseTo(one.width - pin.x, 4);
          expect(other.pins[i]?.y).toBe(pin.y);
        }
      }),
    );
  });

  test("pins are 1 to n, apart from each other, inside the outline and outside the body", () => {
    fc.assert(
      fc.property(drawn, (one) => {
        expect(one.pins.map((pin) => pin.number)).toEqual(
          Array.from({ length: one.pinCount }, (_, i) => String(i + 1)),
        );
        expect(new Set(one.pins.map((pin) => `${pin.x} ${pin.y}`)).size).toBe(one.pinCount);
        for (const { x, y } of one.pins) {
          expect(x > 0 && x < one.width && y > 0 && y < one.height).toBe(true);
          const { body } = one;
          expect(x > body.x && x < body.x + body.width && y > body.y && y < body.y + body.height).toBe(false);
        }
      }),
    );
  });

  test("neighbours on four sides follow each other counter-clockwise", () => {
    const fourSides = drawn.filter((one) => one.style !== "SIP" && one.style !== "TO");
    fc.assert(
      fc.property(fourSides, (one) => {
        const turns = one.pins.map((pin, i) => {
          const next = one.pins[(i + 1) % one.pinCount] ?? pin;
          const [cx, cy] = [one.width / 2, one.height / 2];
          return (pin.x - cx) * (next.y - cy) - (pin.y - cy) * (next.x - cx);
        });
        // With y downwards a counter-clockwise walk turns negative.
        expect(turns.every((turn) => turn < 0.001)).toBe(true);
      }),
    );
  });
});

test.each<[string, ReturnType<typeof readPackageName>]>([
  ["DIP-20", { style: "DIP", pinCount: 20 }],
  ["dip20", { style: "DIP", pinCount: 20 }],
  ["PLCC 44", { style: "PLCC", pinCount: 44 }],
  ["TSSOP-14", { style: "SOIC", pinCount: 14 }],
  ["TQFP-100", { style: "QFP", pinCount: 100 }],
  ["SIP-9", { style: "SIP", pinCount: 9 }],
  ["TO-220", { style: "TO", pinCount: null }],
  ["DIP", { style: "DIP", pinCount: null }],
  ["SOT-23", { style: "other", pinCount: null }],
  ["QFN-32", { style: "other", pinCount: 32 }],
  ["74LS244", null],
  ["", null],
])("the package name %s", (text, expected) => {
  expect(readPackageName(text)).toEqual(expected);
});
