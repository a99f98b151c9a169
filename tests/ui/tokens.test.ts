import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const css = readFileSync("app/globals.css", "utf8");

/** The colours that a rule sets, by name. */
function coloursAfter(selector: string): Record<string, string> {
  const start = css.indexOf(`${selector} {`);
  if (start < 0) throw new Error(`no rule ${selector}`);
  const rule = css.slice(start, css.indexOf("}", start));
  return Object.fromEntries(
    [...rule.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map(([, name = "", value = ""]) => [name, value]),
  );
}

// WCAG 2.2, "relative luminance" and "contrast ratio" (https://www.w3.org/TR/WCAG22/#dfn-relative-luminance).
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string | undefined, b: string | undefined): number {
  const [lighter = 0, darker = 0] = [luminance(a ?? ""), luminance(b ?? "")].toSorted((x, y) => y - x);
  return (lighter + 0.05) / (darker + 0.05);
}

test("the contrast formula gives the standard's own ends", () => {
  expect([contrast("#ffffff", "#000000"), contrast("#777777", "#777777")]).toEqual([21, 1]);
});

const light = coloursAfter(":root");
const dark = coloursAfter(':root[data-theme="dark"]');

describe.each([
  ["light", light],
  ["dark", dark],
])("%s colours", (_, colours) => {
  const papers = ["paper", "paper-2", "accent-soft"] as const;

  test("text reaches 4.5:1 on every paper (WCAG 2.2, 1.4.3)", () => {
    const weak = ["ink", "ink-soft", "accent", "good", "bad", "doubt"].flatMap((text) =>
      papers.filter((paper) => !(contrast(colours[text], colours[paper]) >= 4.5)).map((paper) => `${text} on ${paper}`),
    );
    expect(weak).toEqual([]);
    expect(contrast(colours["accent-ink"], colours.accent)).toBeGreaterThanOrEqual(4.5);
  });

  test("edges of controls and the focus ring reach 3:1 (WCAG 2.2, 1.4.11)", () => {
    const weak = ["line-strong", "focus"].flatMap((edge) =>
      papers.filter((paper) => !(contrast(colours[edge], colours[paper]) >= 3)).map((paper) => `${edge} on ${paper}`),
    );
    expect(weak).toEqual([]);
  });
});

test("dark is the same, whether the device or the member asks for it", () => {
  expect(coloursAfter(':root:not([data-theme="light"])')).toEqual(dark);
  expect(Object.keys(dark).toSorted()).toEqual(Object.keys(light).toSorted());
});
