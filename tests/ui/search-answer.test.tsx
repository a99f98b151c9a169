import fc from "fast-check";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { matchingOptions, optionsOf } from "#lib/ui/combo-options.ts";
import { Highlighted, markedParts } from "#lib/ui/highlighted.tsx";
import { groupedHits, hitsOf } from "#lib/ui/search-answer.ts";

const code = {
  kind: "code",
  id: "c1",
  url: "/codes/VQ4-0061-03",
  title: "VQ4-0061-03",
  snippet: "video timing",
  highlights: { title: "\uE000VQ4-0061\uE001-03", snippet: "video timing", codes: [] },
};
const picture = {
  kind: "case",
  id: "a1",
  url: "/cases/12",
  title: "No picture",
  board: { slug: "k2", name: "Kestrel 2" },
};
const rolls = { kind: "case", id: "a2", url: "/cases/31", title: "Picture rolls" };

describe("what matched is marked", () => {
  test.each([
    ["plain", [{ text: "plain", matched: false }]],
    [
      "no \uE000pict\uE001ure",
      [
        { text: "no ", matched: false },
        { text: "pict", matched: true },
        { text: "ure", matched: false },
      ],
    ],
    ["\uE000open end", [{ text: "open end", matched: true }]],
    ["", []],
  ])("%j", (text, parts) => {
    expect(markedParts(text)).toEqual(parts);
  });

  test("no letter is lost or added, whatever the marks", () => {
    const texts = fc.array(fc.constantFrom("a", "b ", "<i>", "\uE000", "\uE001")).map((parts) => parts.join(""));
    fc.assert(
      fc.property(texts, (text) => {
        // A closing mark with no opening one before it is the only thing that may stay in the text.
        const letters = (given: string) => given.replace(/[\uE000\uE001]/g, "");
        expect(
          letters(
            markedParts(text)
              .map((part) => part.text)
              .join(""),
          ),
        ).toBe(letters(text));
      }),
    );
  });

  test("text stays text", () => {
    expect(renderToStaticMarkup(<Highlighted text={"<script>\uE000x\uE001</script>"} />)).toBe(
      "&lt;script&gt;<mark>x</mark>&lt;/script&gt;",
    );
  });
});

describe("hits of an answer", () => {
  test("are grouped by kind, the kind of the best hit first", () => {
    const groups = groupedHits(hitsOf({ hits: [picture, code, rolls] }));
    expect(groups.map(({ label, hits }) => [label, hits.map((hit) => hit.url)])).toEqual([
      ["Cases", ["/cases/12", "/cases/31"]],
      ["Codes", ["/codes/VQ4-0061-03"]],
    ]);
  });

  test("lead nowhere but into this club", () => {
    const elsewhere = ["https://elsewhere.example/", "//elsewhere.example/", "javascript:alert(1)", "cases/12", ""];
    expect(hitsOf({ hits: elsewhere.map((url) => ({ ...picture, url })) })).toEqual([]);
  });

  test("are read with the marks where there are some", () => {
    expect(hitsOf({ hits: [code, picture] }).map((hit) => [hit.title, hit.plainTitle, hit.board])).toEqual([
      ["\uE000VQ4-0061\uE001-03", "VQ4-0061-03", ""],
      ["No picture", "No picture", "Kestrel 2"],
    ]);
  });

  test.each([null, undefined, 7, "hits", [], {}, { hits: 3 }, { hits: [null, 3, {}] }])("none in %j", (answer) => {
    expect(hitsOf(answer)).toEqual([]);
  });
});

describe("offers of a combo box", () => {
  test("from a search, named by the end of the address", () => {
    expect(optionsOf({ hits: [picture, { ...code, url: "/codes/MB%2F12" }] })).toEqual([
      { value: "12", label: "No picture", hint: "Kestrel 2" },
      { value: "MB/12", label: "VQ4-0061-03" },
    ]);
  });

  test("an address that cannot be decoded stays as it is", () => {
    expect(optionsOf({ hits: [{ ...code, url: "/codes/100%" }] })).toEqual([{ value: "100%", label: "VQ4-0061-03" }]);
  });

  test("from a list of options; what is none is passed over", () => {
    expect(optionsOf({ options: [{ value: "hum", label: "hum" }, { value: 3, label: "x" }, null] })).toEqual([
      { value: "hum", label: "hum" },
    ]);
  });

  test("hold every typed word, in any order and case", () => {
    const options = [
      { value: "k2", label: "Kestrel 2 main board", hint: "home computer" },
      { value: "orrery", label: "Orrery voice board" },
    ];
    const found = (typed: string) => matchingOptions(options, typed).map((option) => option.value);
    expect([found(""), found("BOARD kes"), found("computer"), found("voice main")]).toEqual([
      ["k2", "orrery"],
      ["k2"],
      ["k2"],
      [],
    ]);
  });
});
