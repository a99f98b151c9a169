import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { CASE_OUTCOMES, VERDICTS } from "#lib/core/shared/index.ts";
import { Bar, probabilityWord } from "#lib/ui/bar.tsx";
import { Code } from "#lib/ui/code.tsx";
import { Notice, type NoticeKind } from "#lib/ui/notice.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { Place } from "#lib/ui/place.tsx";
import { QrCode } from "#lib/ui/qr-code.tsx";
import { timeText } from "#lib/ui/time-text.tsx";
import { Verdict } from "#lib/ui/verdict.tsx";

const shapeOf = (markup: string) => /<svg[^>]*>(.*?)<\/svg>/s.exec(markup)?.[1];
const textOf = (markup: string) => markup.replace(/<svg.*?<\/svg>/gs, "").replace(/<[^>]+>/g, "");

describe("a verdict is a word with a shape before it", () => {
  const drawn = VERDICTS.map((verdict) => renderToStaticMarkup(<Verdict verdict={verdict} />));

  test("the words", () => {
    expect(drawn.map(textOf)).toEqual(["in spec", "out of spec", "inconclusive", "noted", "not taken"]);
  });

  test("no two shapes are alike, so that black and white is enough", () => {
    expect(new Set(drawn.map(shapeOf)).size).toBe(VERDICTS.length);
  });

  test("the shape is silent: the word says it already", () => {
    for (const markup of drawn) expect(markup).toContain('aria-hidden="true"');
  });
});

test("outcomes of a case have words and shapes of their own too", () => {
  const drawn = CASE_OUTCOMES.map((outcome) => renderToStaticMarkup(<OutcomeMark outcome={outcome} />));
  expect(drawn.map(textOf)).toEqual([
    "open",
    "waiting",
    "cured",
    "cured, cause unknown",
    "works, not proved",
    "no fault found",
    "given up",
  ]);
  expect(new Set(drawn.map(shapeOf)).size).toBe(CASE_OUTCOMES.length);
});

test("a notice tells its kind by word and shape", () => {
  const kinds: NoticeKind[] = ["info", "done", "warning", "caution", "danger"];
  const drawn = kinds.map((kind) =>
    renderToStaticMarkup(<Notice kind={kind} title="The battery keeps the patches." />),
  );
  expect(drawn.map(textOf)).toEqual(
    ["Note", "Done", "Attention", "Caution", "Danger"].map((word) => `${word}: The battery keeps the patches.`),
  );
  expect(new Set(drawn.map(shapeOf)).size).toBe(kinds.length);
});

test("a code with a record leads to it, one without is text", () => {
  expect(renderToStaticMarkup(<Code code="VQ4-0061-03" href="/codes/VQ4-0061-03" />)).toMatch(
    /^<a [^>]*href="\/codes\/VQ4-0061-03"[^>]*>VQ4-0061-03<\/a>$/,
  );
  expect(renderToStaticMarkup(<Code code="27C256" />)).toMatch(/^<span [^>]*>27C256<\/span>$/);
});

test("a place between two points names both, and an unknown one says so", () => {
  expect(textOf(renderToStaticMarkup(<Place at="U7.14" to="J3.5" />))).toBe("U7.14 → J3.5");
  expect(textOf(renderToStaticMarkup(<Place at="U99.1" unknown />))).toBe("U99.1 (not on the board’s record)");
});

describe("a probability is a bar, a number and a word", () => {
  test.each([
    [0, "0 % unlikely", 0],
    [0.22, "22 % less likely", 22],
    [0.61, "61 % likely", 61],
    [1, "100 % almost certain", 100],
    [1.4, "100 % almost certain", 100],
  ])("%f", (value, text, width) => {
    const markup = renderToStaticMarkup(<Bar value={value} />);
    expect(textOf(markup)).toBe(text);
    expect(Number(/width="([\d.]+)"/.exec(markup)?.[1])).toBeCloseTo(width);
  });

  test("the word changes at the bound itself", () => {
    expect([0.0999, 0.1, 0.3, 0.6, 0.9].map(probabilityWord)).toEqual([
      "unlikely",
      "less likely",
      "possible",
      "likely",
      "almost certain",
    ]);
  });
});

describe("a time is drawn in the club's zone", () => {
  test.each([
    ["2025-11-20T23:30:00Z", "UTC", false, "20 Nov 2025"],
    ["2025-11-20T23:30:00Z", "Europe/Vienna", false, "21 Nov 2025"],
    ["2025-07-01T18:40:00Z", "Europe/Vienna", true, "1 Jul 2025, 20:40"],
  ])("%s in %s", (at, zone, withClock, text) => {
    expect(timeText(at, zone, withClock)).toBe(text);
    expect(timeText(new Date(at), zone, withClock)).toBe(text);
  });
});

test("a QR code has its name and the three finder patterns of ISO/IEC 18004 inside a quiet zone of four", () => {
  const markup = renderToStaticMarkup(<QrCode text="http://127.0.0.1:3000/cases/12" label="Case 12" size="28mm" />);
  const size = Number(/viewBox="0 0 (\d+) /.exec(markup)?.[1]);
  const dark = new Set([...markup.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => `${x},${y}`));
  // A finder pattern: a ring of 7 x 7, a light ring within, a block of 3 x 3 in the middle.
  const finder = (left: number, top: number) =>
    Array.from({ length: 49 }, (_, i) => [i % 7, Math.floor(i / 7)] as const).every(([x, y]) => {
      const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3));
      return dark.has(`${left + x},${top + y}`) === (ring !== 2);
    });
  expect(markup).toContain('aria-label="QR code: Case 12"');
  expect([finder(4, 4), finder(size - 11, 4), finder(4, size - 11)]).toEqual([true, true, true]);
  for (const place of dark) {
    for (const part of place.split(",").map(Number)) {
      expect(part).toBeGreaterThanOrEqual(4);
      expect(part).toBeLessThan(size - 4);
    }
  }
});
