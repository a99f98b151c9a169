import fc from "fast-check";
import { remark } from "remark";
import remarkGfm from "remark-gfm";
import remarkRehype from "remark-rehype";
import { unified } from "unified";
import { describe, expect, test } from "vitest";
import { renderMarkdown } from "#lib/infra/markdown/index.ts";
import { shown, wordsOf } from "./shown.ts";

describe("a colon is not a command", () => {
  const asTyped = [
    "12:30",
    "at 3:1 it clips",
    "U7:14",
    "U7:clock never moves",
    "Harrow:80",
    "see note:below",
    "ratio a:b:c",
    "::",
    ":::",
    "end of sentence: then more",
    ":smile:",
    ":note[text]",
    ":note[text]{level=2}",
    ":code",
    ":code[]",
    ":code[27C256]{.big}",
    ":codes[27C256]",
    "::code[27C256]",
    "::video[x]{src=y}",
    ":case[ ]",
    "pin 5:in and pin 6:out",
    ":a[*b*]",
    "C:dir",
    "00:1F:3A",
  ];
  test.each(asTyped)("%j prints exactly as typed", (typed) => {
    expect(shown(typed)).toBe(`<p>${typed}</p>`);
  });

  test("fences of colons are lines like any other, and what stands between them is still read", () => {
    expect(shown(":::warning\n\nUnplug it **first**.\n\n:::")).toBe(
      "<p>:::warning</p> <p>Unplug it <strong>first</strong>.</p> <p>:::</p>",
    );
  });

  test("a fence that is never closed swallows nothing", () => {
    expect(shown(":::note\n\n# Heading\n\n| a | b |\n|---|---|\n| 1 | 2 |")).toContain("<h1>Heading</h1>");
  });

  const piece = fc.oneof(
    fc.constantFrom(
      ":",
      "::",
      ":::",
      ": ",
      "12:30",
      "U7:14",
      ":x",
      ":x[",
      "]",
      "{",
      "}",
      ":note[a b]",
      "3:1",
      "\n",
      "\n\n",
    ),
    fc.stringMatching(/^[a-z0-9 .,;]{0,12}$/),
  );
  const text = fc.array(piece, { maxLength: 30 }).map((pieces) => pieces.join(""));
  const plain = remark().use(remarkGfm);
  const toElements = unified().use(remarkRehype);

  test("law: a text without our directives has the words that it has without any directives at all", () => {
    fc.assert(
      fc.property(text, (typed) => {
        const expected = toElements.runSync(plain.parse(typed));
        expect(wordsOf(renderMarkdown(typed, new Map()))).toBe(wordsOf(expected));
      }),
      { numRuns: 500 },
    );
  });
});
