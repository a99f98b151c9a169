import fc from "fast-check";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { PLACEMENT_KINDS } from "#lib/core/shared/index.ts";
import { boardLayout, type DrawnPlacement } from "#lib/ui/board-drawing-layout.ts";
import { BoardDrawing } from "#lib/ui/board-drawing.tsx";

const PLACEMENTS: DrawnPlacement[] = [
  { designator: "U7", kind: "chip", label: "74LS244", package: "DIP-20", x: 40, y: 30, marked: 3 },
  { designator: "C14", kind: "capacitor", label: "100n", x: 40, y: 45 },
  { designator: "U8", kind: "chip", label: "27C256", package: "DIP-28", x: 90, y: 30, marked: "contents not checked" },
  { designator: "J1", kind: "connector", label: "", x: 3, y: 40 },
];

describe("a board drawing", () => {
  const html = renderToStaticMarkup(
    <BoardDrawing
      width={160}
      height={100}
      name="Orrery MB-2"
      placements={PLACEMENTS}
      connectors={[
        { designator: "J1", name: "power" },
        { designator: "J9", name: "light pen" },
      ]}
    />,
  );

  test("each part is a link to its row, with what it is in words", () => {
    const links = [...html.matchAll(/href="(#place-[^"]*)"[^>]*aria-label="([^"]*)"/g)].map((link) => [
      link[1],
      link[2],
    ]);
    expect(links).toEqual([
      ["#place-U7", "U7: 74LS244, DIP-20, suspect in 3 cases"],
      ["#place-C14", "C14: 100n"],
      ["#place-U8", "U8: 27C256, DIP-28, contents not checked"],
      ["#place-J1", "J1: power"],
    ]);
  });

  test("says the side, the size, what is marked, and what has no place", () => {
    expect(html).toContain(">component side</text>");
    expect(/<desc[^>]*>([^<]*)/.exec(html)?.[1]).toBe(
      "160 by 100 mm, 4 parts; each is a link to its row in the table of placements.",
    );
    expect(/<figcaption[^>]*>([^<]*)/.exec(html)?.[1]).toBe(
      "Drawn from the recorded places, not measured. Hatched: U7 (suspect in 3 cases), U8 (contents not checked). Place not recorded: J9 light pen.",
    );
  });

  test("marked parts carry the count, or a sign where a word is the reason", () => {
    const badges = /<g aria-hidden="true">(.*?)<\/svg>/.exec(html)?.[1] ?? "";
    expect([...badges.matchAll(/>([^<]+)<\/text>/g)].map((text) => text[1])).toEqual(["3", "!"]);
  });
});

describe("where parts are drawn", () => {
  const size = (parts: ReturnType<typeof boardLayout>, i: number) => [parts[i]?.width, parts[i]?.height];

  test("a connector lies along the edge it is near to", () => {
    const connector = (x: number, y: number): DrawnPlacement => ({
      designator: "J1",
      kind: "connector",
      label: "",
      x,
      y,
    });
    expect(
      [connector(4, 50), connector(80, 97), connector(156, 50)].map((one) => size(boardLayout(160, 100, [one]), 0)),
    ).toEqual([
      [9, 40],
      [40, 9],
      [9, 40],
    ]);
  });

  test("chips stand upright where lying they would overlap", () => {
    const chip = (i: number): DrawnPlacement => ({
      designator: `U${i}`,
      kind: "chip",
      label: "",
      package: "DIP-40",
      x: 20 + i * 22,
      y: 50,
    });
    const parts = boardLayout(160, 100, [chip(0), chip(1), chip(2)]);
    expect(parts.every((part) => part.height > part.width)).toBe(true);
  });

  test("every part lies on the board, whatever place is recorded", () => {
    const placement = fc.record({
      designator: fc.string({ minLength: 1, maxLength: 4 }),
      kind: fc.constantFrom(...PLACEMENT_KINDS),
      label: fc.constant(""),
      package: fc.constantFrom("DIP-16", "PLCC-44", "TO-220", "nonsense"),
      x: fc.integer({ min: -50, max: 400 }),
      y: fc.integer({ min: -50, max: 400 }),
    });
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 20, max: 300 }),
        fc.array(placement),
        (width, height, all) => {
          for (const part of boardLayout(width, height, all))
            expect(
              part.x >= 0 &&
                part.y >= 0 &&
                part.x + part.width <= width + 0.01 &&
                part.y + part.height <= height + 0.01,
            ).toBe(true);
        },
      ),
    );
  });
});
