import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MARKDOWN_LIMITS, renderMarkdown } from "#lib/infra/markdown/index.ts";
import { shown, wordsOf } from "./shown.ts";

const OUTWARD = 'rel="noopener nofollow ugc"';
const PICTURE = "/api/v1/attachments/0193a1b2-1111-7222-8333-444455556666";

describe("what a member writes", () => {
  const table: [what: string, typed: string, drawn: string][] = [
    ["a script is text", "<script>alert(1)</script>", "<p><script>alert(1)</script></p>"],
    ["an element is text", "a <b onclick=x>b</b>", "<p>a <b onclick=x>b</b></p>"],
    ["a script address leads nowhere", "[a](javascript:alert(1))", "<p><span>a</span></p>"],
    ["nor does data", "[a](data:text/html,x)", "<p><span>a</span></p>"],
    ["nor does another host by two slashes", "[a](//elsewhere.example/x)", "<p><span>a</span></p>"],
    ["a way out is told so", "[a](https://a.example)", `<p><a href="https://a.example" ${OUTWARD}>a</a></p>`],
    ["a bare address too", "https://a.example", `<p><a href="https://a.example" ${OUTWARD}>https://a.example</a></p>`],
    ["a page of the club is not", "[a](/boards/x)", '<p><a href="/boards/x">a</a></p>'],
    [
      "a photo of the club is shown",
      `![U7](${PICTURE}?size=thumb)`,
      `<p><img src="${PICTURE}?size=thumb" alt="U7" loading="lazy" decoding="async"></img></p>`,
    ],
    [
      "a picture from elsewhere is a link",
      "![scope](https://a.example/x.png)",
      `<p><a href="https://a.example/x.png" ${OUTWARD}>scope</a></p>`,
    ],
    [
      "but no link within a link",
      "[![scope](https://a.example/x.png)](/cases/1)",
      '<p><a href="/cases/1"><span>scope</span></a></p>',
    ],
    ["an address of ours that is no photo is not shown", "![x](/api/v1/cases)", "<p><span>x</span></p>"],
  ];
  test.each(table)("%s", (_what, typed, drawn) => {
    // Written-out text looks like elements; that it is text shows in the tree.
    expect(shown(typed)).toBe(drawn);
  });

  test("raw HTML is one text node", () => {
    const [paragraph] = renderMarkdown("<script>alert(1)</script>", new Map()).children;
    expect(paragraph).toMatchObject({ tagName: "p", children: [{ type: "text", value: "<script>alert(1)</script>" }] });
  });

  test("headings begin at the top and step down one by one", () => {
    expect(shown("### a\n\n##### b\n\n# c\n\n###### d")).toBe("<h1>a</h1> <h2>b</h2> <h1>c</h1> <h2>d</h2>");
  });

  test("law: no element and no attribute but the allowed ones, whatever is typed", () => {
    const bits = [
      "<",
      ">",
      "[",
      "]",
      "(",
      ")",
      "!",
      "*",
      "`",
      "|",
      "\n",
      "javascript:",
      ":code[",
      "&lt;",
      "x",
      "://",
      "#",
    ];
    const text = fc.array(fc.constantFrom(...bits), { maxLength: 60 }).map((parts) => parts.join(""));
    fc.assert(
      fc.property(text, (typed) => {
        for (const [, tag, attributes] of elementsOf(renderMarkdown(typed, new Map()))) {
          expect(ALLOWED).toContain(tag);
          expect(Object.keys(attributes).filter((name) => /^on|style|srcdoc/i.test(name))).toEqual([]);
        }
      }),
      { numRuns: 500 },
    );
  });
});

const ALLOWED =
  "h1 h2 h3 h4 h5 h6 p br hr blockquote pre code em strong del span a img ul ol li input table thead tbody tr th td".split(
    " ",
  );

function elementsOf(tree: { children: unknown[] }): [node: unknown, tag: string, attributes: object][] {
  return tree.children.flatMap((node) => {
    const { tagName, properties, children } = node as { tagName?: string; properties?: object; children?: unknown[] };
    if (!tagName) return [];
    return [
      [node, tagName, properties ?? {}] as [unknown, string, object],
      ...elementsOf({ children: children ?? [] }),
    ];
  });
}

describe("texts made to break the reader", () => {
  const size = MARKDOWN_LIMITS.characters;
  const times = (piece: string, characters: number = size) => piece.repeat(Math.floor(characters / piece.length));
  const hostile: Record<string, string> = {
    "quotes in quotes": times(">"),
    "lists in lists": times("- "),
    "numbers in quotes": times("1. > "),
    "emphasis never closed": times("*a _b "),
    "emphasis of all kinds": times("*a **b", size / 2) + times("b** a*", size / 2),
    "emphasis in blocks": times(`${times("*_", 1000)}\n\n`),
    "open brackets": times("["),
    "pictures in pictures": times("![", size / 2) + times("]", size / 2),
    "directives in directives": times(":code[", size / 2) + times("]", size / 2),
    "attributes never closed": times(":a{"),
    "ticks of all lengths": Array.from({ length: 440 }, (_, length) => "`".repeat(length + 1)).join(" "),
    "ever deeper lists": Array.from({ length: 310 }, (_, depth) => `${" ".repeat(2 * depth)}- a`).join("\n"),
    "a very wide table": `${times("|a", size / 2)}\n${times("|-", size / 2)}\n`,
    comments: times("<!--"),
    "empty lines": times("\n"),
    "too long by one": `${times("a")}a`.padEnd(size + 1, "a"),
  };
  test.each(Object.entries(hostile))("%s: answered", (_name, typed) => {
    expect(renderMarkdown(typed, new Map()).type).toBe("root");
  });

  const letters = (text: string) => text.replace(/[^a-z]/gi, "");
  const plain = Object.entries(hostile).filter(([, typed]) => /^[ab*_ \n]+$/.test(typed));
  test.each(plain)("%s: no word is lost", (_name, typed) => {
    expect(letters(wordsOf(renderMarkdown(typed, new Map())))).toBe(letters(typed));
  });

  test("a text beyond the limits is shown as typed, with its paragraphs and lines", () => {
    expect(shown(`${">".repeat(40)} a\n**b**\n\n:code[27C256]`)).toBe(
      `<p>${">".repeat(40)} a<br></br>**b**</p><p>:code[27C256]</p>`,
    );
  });
});
