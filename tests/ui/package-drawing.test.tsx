import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import type { PackageStyle } from "#lib/core/shared/index.ts";
import { PackageDrawing, type DrawnPin } from "#lib/ui/package-drawing.tsx";
import { PackageFlip } from "#lib/ui/package-flip.client.tsx";

// TI SDLS144, pins of the 74LS244 in DIP-20.
const BUFFER: DrawnPin[] = [
  { number: "1", name: "1G", role: "enable", activeLow: true, type: "input" },
  ...["1A1", "2Y4", "1A2", "2Y3", "1A3", "2Y2", "1A4", "2Y1"].map((name, i) => ({
    number: String(i + 2),
    name,
    role: i % 2 === 0 ? ("input" as const) : ("output" as const),
  })),
  { number: "10", name: "GND", role: "ground", type: "power-in" },
  ...["2A1", "1Y4", "2A2", "1Y3", "2A3", "1Y2", "2A4", "1Y1"].map((name, i) => ({
    number: String(i + 11),
    name,
    role: i % 2 === 0 ? ("input" as const) : ("output" as const),
  })),
  { number: "19", name: "2G", role: "enable", activeLow: true, type: "input" },
  { number: "20", name: "VCC", role: "supply", type: "power-in" },
];

interface SeenPin {
  number: string;
  edge: string;
  x: number;
  /** The letter of the role, the number, the name. */
  texts: string[];
}

/** The pins as a reader of the drawing finds them. */
function seenPins(html: string): SeenPin[] {
  return [...html.matchAll(/<g data-pin="(\d+)" data-edge="(\w+)" data-x="([\d.]+)".*?(?=<g data-pin|<\/svg>)/g)].map(
    (pin) => ({
      number: pin[1] ?? "",
      edge: pin[2] ?? "",
      x: Number(pin[3]),
      texts: [...pin[0].matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map((text) => text[1] ?? ""),
    }),
  );
}

const widthOf = (html: string) => Number(/viewBox="0 0 ([\d.]+)/.exec(html)?.[1]);

const rounded = (value: number) => Math.round(value * 100) / 100;

function numbered(count: number): DrawnPin[] {
  return Array.from({ length: count }, (_, i) => ({ number: String(i + 1), name: `P${i + 1}`, role: "unknown" }));
}

describe("a package drawing", () => {
  const above = renderToStaticMarkup(<PackageDrawing style="DIP" name="DIP-20" chip="74LS244" pins={BUFFER} />);
  const below = renderToStaticMarkup(
    <PackageDrawing style="DIP" name="DIP-20" chip="74LS244" pins={BUFFER} side="solder" />,
  );

  test("names every pin with its number and the letter of its role", () => {
    const letters = { enable: "E", input: "i", output: "o", ground: "G", supply: "V" } as Record<string, string>;
    expect(seenPins(above).map((pin) => pin.texts)).toEqual(
      BUFFER.map((pin) => [letters[pin.role], pin.number, pin.name]),
    );
  });

  test("pin 1 stands left from the component side and right from the solder side, and so with all others", () => {
    const [fromAbove, fromBelow] = [seenPins(above), seenPins(below)];
    expect([fromAbove[0]?.edge, fromBelow[0]?.edge]).toEqual(["left", "right"]);
    expect(fromBelow.map((pin) => pin.edge)).toEqual(fromAbove.map((pin) => (pin.edge === "left" ? "right" : "left")));
    expect(fromBelow.map((pin) => pin.x)).toEqual(fromAbove.map((pin) => rounded(widthOf(above) - pin.x)));
    expect(fromBelow.map((pin) => pin.texts)).toEqual(fromAbove.map((pin) => pin.texts));
  });

  test("says in the drawing from which side one looks", () => {
    expect([above, below].map((html) => />(component side|solder side, mirrored)<\/text>/.exec(html)?.[1])).toEqual([
      "component side",
      "solder side, mirrored",
    ]);
    expect(/<title[^>]*>([^<]*)/.exec(below)?.[1]).toBe("74LS244 in DIP-20, solder side");
    expect(/<desc[^>]*>([^<]*)/.exec(below)?.[1]).toBe(
      "Seen from the solder side: mirrored. 20 pins. Pin 1 is at the upper right. The pins follow as text.",
    );
  });

  test("draws a bar over active-low names only", () => {
    const barred = [...above.matchAll(/text-decoration="overline"[^>]*>([^<]*)/g)].map((text) => text[1]);
    expect(barred).toEqual(["1G", "2G"]);
  });

  test("tells all of it again as text", () => {
    const lines = [...above.matchAll(/<li><b>(.*?)<\/b> (.*?)<\/li>/g)].map((line) => `${line[1]} ${line[2]}`);
    expect(lines).toHaveLength(20);
    expect([lines[0], lines[9], lines[19]]).toEqual([
      "1 1G, enable, input, active low",
      "10 GND, ground, power-in",
      "20 VCC, supply, power-in",
    ]);
  });

  test("points at the pins it is told to point at, in words too", () => {
    const html = renderToStaticMarkup(
      <PackageDrawing style="DIP" name="DIP-20" pins={BUFFER} highlight={["1", "19"]} />,
    );
    expect(/<desc[^>]*>([^<]*)/.exec(html)?.[1]).toContain("Marked: pin 1, pin 19.");
    expect(html.match(/\(marked\)/g)).toHaveLength(2);
  });

  test.each<[PackageStyle, string, number]>([
    ["DIP", "DIP-4", 4],
    ["SOIC", "TSSOP-14", 14],
    ["DIP", "DIP-64", 64],
    ["PLCC", "PLCC-84", 84],
    ["QFP", "QFP-132", 132],
    ["SIP", "SIP-9", 9],
    ["TO", "TO-220", 3],
  ])("%s: %s shows %i pins", (style, name, count) => {
    const html = renderToStaticMarkup(<PackageDrawing style={style} name={name} pins={numbered(count)} />);
    expect(seenPins(html).map((pin) => pin.number)).toEqual(numbered(count).map((pin) => pin.number));
  });

  test("a pin that the table leaves out is drawn without a name", () => {
    const html = renderToStaticMarkup(
      <PackageDrawing style="DIP" name="DIP-20" pins={BUFFER.filter((pin) => pin.number !== "5")} />,
    );
    expect(seenPins(html).find((pin) => pin.number === "5")?.texts).toEqual(["", "5"]);
    expect(html).toContain("pin 5: not in the pin table");
  });

  test("a pin that the package does not have is named under the drawing", () => {
    const pad: DrawnPin = { number: "EP", name: "GND", role: "ground" };
    const html = renderToStaticMarkup(<PackageDrawing style="DIP" name="DIP-20" pins={[...BUFFER, pad]} />);
    expect(html).toContain("Not drawn: EP GND.");
  });

  test.each<[PackageStyle, string, DrawnPin[], string]>([
    ["other", "PGA-68", numbered(68), "No drawing of PGA-68: packages of this style are not drawn."],
    ["DIP", "DIP-15", numbered(15), "No drawing of DIP-15: a DIP has an even number of pins from 4 to 64, not 15."],
    [
      "DIP",
      "DIP-8",
      [{ number: "A1", name: "VCC", role: "supply" }],
      "No drawing of DIP-8: the pins are not numbered 1, 2, 3….",
    ],
    ["DIP", "DIP", [], "No drawing of DIP: the number of pins must be a whole number from 1."],
  ])("%s %s has no drawing, says why, and still lists the pins", (style, name, pins, words) => {
    const html = renderToStaticMarkup(<PackageDrawing style={style} name={name} pins={pins} />);
    expect(html).toContain(words);
    expect(html.match(/<li><b>/g)?.length ?? 0).toBe(pins.length);
  });

  test("the words of a pin table are text, never markup", () => {
    const pins: DrawnPin[] = BUFFER.map((pin) => ({ ...pin, name: `<b onclick="x">` }));
    expect(renderToStaticMarkup(<PackageDrawing style="DIP" name="DIP-20" pins={pins} />)).not.toContain("<b onclick");
  });
});

test("the flip button says whether the drawing is seen from the solder side", () => {
  const pressed = (html: string) => [/aria-pressed="(\w+)"/.exec(html)?.[1], /data-side="(\w+)"/.exec(html)?.[1]];
  const flip = <PackageFlip style="DIP" name="DIP-20" pins={BUFFER} />;
  const flipped = <PackageFlip style="DIP" name="DIP-20" pins={BUFFER} side="solder" />;
  expect([flip, flipped].map((one) => pressed(renderToStaticMarkup(one)))).toEqual([
    ["false", "component"],
    ["true", "solder"],
  ]);
});
