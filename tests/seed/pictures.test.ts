import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { board as harrow } from "#seed/boards/harrow-80.ts";
import { board as mothDriver } from "#seed/boards/moth-driver.ts";
import { board as ploverSupply } from "#seed/boards/plover-supply.ts";
import { board as ternMain } from "#seed/boards/tern-arcade-main.ts";
import { board as vetchDeflection } from "#seed/boards/vetch-terminal-deflection.ts";
import { boardPicture } from "#seed/pictures/index.ts";
import { chance } from "#seed/pictures/chance.ts";
import { dipLeg } from "#seed/pictures/chips.ts";
import { ringsOf } from "#seed/pictures/discretes.ts";

const boards = [harrow, vetchDeflection, ternMain, mothDriver, ploverSupply];

describe.each(boards.map((board) => [board.slug, board] as const))("the picture of %s", (_slug, board) => {
  const picture = boardPicture(board);

  test("is the same each time, with every designator and house code on it", () => {
    expect(boardPicture(board)).toBe(picture);
    const words = new Set([...picture.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((found) => found[1]));
    const wanted = board.placements.flatMap((part) => [
      part.designator,
      ...(part.code === undefined ? [] : [part.code]),
    ]);
    expect(wanted.filter((word) => !words.has(word))).toEqual([]);
  });

  test("holds no number that is none and nothing that runs", () => {
    expect(picture).not.toMatch(/NaN|Infinity|undefined|<script|\son\w+=/);
  });

  test("can be made into pixels of the board's shape", async () => {
    const { width, height } = await sharp(Buffer.from(picture)).metadata();
    expect({ width, height }).toEqual({ width: (board.width + 18) * 5, height: (board.height + 18) * 5 });
  });
});

// The digits of IEC 60062: yellow violet red is 4.7 kΩ, black as the power is ohms as they stand.
test.each([
  ["4k7", [4, 7, 2]],
  ["470R", [4, 7, 1]],
  ["10M", [1, 0, 6]],
  ["1k8 +3300ppm", [1, 8, 2]],
  ["3R3 2W", [3, 3, -1]],
  ["47R", [4, 7, 0]],
  ["line hold", null],
])("a resistor of %s has the rings %j", (value, rings) => {
  expect(ringsOf(value)).toEqual(rings);
});

// Seen from the component side, legs count counter-clockwise: JEDEC MS-001 (from memory).
test("legs of a dual in-line package run along the lower row and back along the upper", () => {
  expect([1, 7, 8, 14].map((leg) => dipLeg(14, leg))).toEqual([
    { x: -7.62, y: 3.81 },
    { x: 7.62, y: 3.81 },
    { x: 7.62, y: -3.81 },
    { x: -7.62, y: -3.81 },
  ]);
});

test("chance spreads over its whole range", () => {
  const drawn = Array.from({ length: 400 }, (_, index) => chance("U", String(index)));
  const quarters = [0, 1, 2, 3].map((quarter) => drawn.filter((one) => Math.floor(one * 4) === quarter).length);
  expect(Math.min(...quarters)).toBeGreaterThan(70);
});
