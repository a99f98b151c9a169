import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { textTokens } from "#lib/core/marking/index.ts";
import { highlight, snippet } from "#lib/infra/search/highlight.ts";

const show = (text: string): string => text.replaceAll("\uE000", "[").replaceAll("\uE001", "]");

describe("highlight", () => {
  test.each([
    ["No picture, no sound", ["no"], "[No] picture, [no] sound"],
    ["SN74LS244N at U12", ["74ls244"], "SN[74LS244]N at U12"],
    ["SN74LS244N at U12", ["74ls244", "sn74ls244n"], "[SN74LS244N] at U12"],
    ["the VQ4-0061-03", ["vq40061"], "the [VQ4-0061]-03"],
    ["the VQ4-0061-03", ["0061"], "the VQ4-[0061]-03"],
    ["at U12.26 and U12", ["u12p26"], "at [U12.26] and U12"],
    ["the +5 V rail", ["pos5v"], "the [+5 V] rail"],
    ["/CS and CS", ["ncs"], "[/CS] and CS"],
    ["<b>bold</b>", ["bold"], "<b>[bold]</b>"],
    ["nothing", ["else"], "nothing"],
  ])("%s for %j", (text, keys, marked) => {
    expect(show(highlight(text, new Set(keys)))).toBe(marked);
  });

  test("without the marks it is the text, and marks stand in pairs", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 80 }), (given) => {
        const text = given.replace(/[\uE000-\uF8FF]/g, "");
        const keys = new Set(
          textTokens(text)
            .flatMap((token) => token.keys)
            .filter((_, at) => at % 2 === 0),
        );
        const marked = highlight(text, keys);
        expect(marked.replace(/[\uE000\uE001]/g, "")).toBe(text);
        expect(marked.replace(/[^\uE000\uE001]/g, "")).toMatch(/^(?:\uE000\uE001)*$/);
      }),
    );
  });
});

describe("snippet", () => {
  const body = `${"before ".repeat(80)}the gasket of the pump leaked ${"after ".repeat(80)}`;

  test("shows the match with its context and dots where it is cut", () => {
    const { plain, marked } = snippet(body, new Set(["gasket"]));
    expect(show(marked)).toContain("the [gasket] of the pump leaked");
    expect([plain.startsWith("… "), plain.endsWith(" …"), plain.length < 260]).toEqual([true, true, true]);
    expect(marked.replace(/[\uE000\uE001]/g, "")).toBe(plain);
  });

  test("shows the place where most words match", () => {
    const text = `gasket ${"filler ".repeat(100)} gasket pump leaked ${"filler ".repeat(100)}`;
    expect(show(snippet(text, new Set(["gasket", "pump", "leaked"])).marked)).toContain("[gasket] [pump] [leaked]");
  });

  test("without a match it is the beginning; a short body is whole; an empty one is empty", () => {
    expect(snippet(body, new Set(["nothing"])).plain.startsWith("before before")).toBe(true);
    expect(snippet("a\n short  text", new Set())).toEqual({ plain: "a short text", marked: "a short text" });
    expect(snippet("", new Set(["x"]))).toEqual({ plain: "", marked: "" });
  });
});
