import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { queryTerms, readRail, refKeys, signalKeys, textTokens } from "#lib/core/marking/index.ts";

const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 120 }),
  fc.string({ unit: "binary", maxLength: 120 }),
  fc.string({ unit: fc.constantFrom(...Array.from("UCV0157 .,:;-+/~#{}()*µΩ−pinMHz\uE000'’→=$")), maxLength: 60 }),
);

describe("signalKeys", () => {
  test.each([
    ["/CS", ["ncs", "cs"]],
    ["~CS", ["ncs", "cs"]],
    ["CS#", ["ncs", "cs"]],
    ["CS*", ["ncs", "cs"]],
    ["!CS", ["ncs", "cs"]],
    ["~{CS}", ["ncs", "cs"]],
    ["nCS", ["ncs", "cs"]],
    ["CS_N", ["ncs", "cs"]],
    ["C\u0305S\u0305", ["ncs", "cs"]],
    ["CS", ["cs"]],
    ["/IRQ7", ["nirq7", "irq7"]],
    ["R/W", ["rw"]],
    ["AUDIO_L", ["audiol"]],
    ["+12V", ["pos12v"]],
    ["12V", ["pos12v"]],
    ["12.00 V", ["pos12v"]],
    ["-12V", ["neg12v"]],
    ["−12V", ["neg12v"]],
    ["3.3V", ["pos3p3v"]],
    ["3V3", ["pos3p3v"]],
    ["-5.2 V", ["neg5p2v"]],
    ["±15V", ["pos15v", "neg15v"]],
    ["6.3 VAC", ["ac6p3v"]],
    ["+5", ["pos5v"]],
    ["+5VA", ["pos5va"]],
    ["", []],
  ])("%s → %j", (signal, keys) => {
    expect(signalKeys(signal)).toEqual(keys);
  });

  test("keys are letters and digits only, and a key stands for itself", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const key of signalKeys(text)) {
          expect(key).toMatch(/^[a-z0-9]+$/);
          expect(readRail(key) !== null || signalKeys(key).includes(key)).toBe(true);
        }
      }),
    );
  });

  test("the two signs of one rail never share a key", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.constantFrom("", " "), (volts, gap) => {
        const minus = signalKeys(`-${volts}${gap}V`);
        expect(signalKeys(`+${volts}${gap}V`).filter((key) => minus.includes(key))).toEqual([]);
      }),
    );
  });
});

describe("refKeys", () => {
  test.each([
    ["U12.26", ["u12p26", "u12"]],
    ["U12 pin 26", ["u12p26", "u12"]],
    ["U12-26", ["u12p26", "u12"]],
    ["u12:26", ["u12p26", "u12"]],
    ["U12.026", ["u12p26", "u12"]],
    ["u12p26", ["u12p26", "u12"]],
    ["CN3.A12", ["cn3pa12", "cn3"]],
    ["4F.12", ["4fp12", "4f"]],
    ["U12", ["u12"]],
    ["IC12", ["ic12"]],
    ["TMS4164-15", []],
    ["video", []],
    ["", []],
  ])("%s → %j", (text, keys) => {
    expect(refKeys(text)).toEqual(keys);
  });
});

describe("textTokens", () => {
  const keysOf = (text: string): string[] => textTokens(text).map((token) => token.keys[0] ?? "");

  // The spellings are those that a general tokeniser was seen to cut or join wrongly.
  test.each([
    ["SN74LS244N", ["sn74ls244n"]],
    ["VQ4-0061-03", ["vq4006103"]],
    ["no-video, and/or noise.", ["no", "video", "and", "or", "noise"]],
    ["U3/U4", ["u3", "u4"]],
    ["C12,C13", ["c12", "c13"]],
    ["U12 pin 26 is low", ["u12p26", "is", "low"]],
    ["+12V / -12V / −12V", ["pos12v", "neg12v", "neg12v"]],
    ["+5 V rail", ["pos5v", "rail"]],
    ["3.58 MHz", ["3p58mhz"]],
    ["3.58MHz", ["3p58mhz"]],
    ["4.87", ["4p87"]],
    ["4,87", ["4p87"]],
    ["612,610,611", ["612", "610", "611"]],
    ["12:30", ["12", "30"]],
    ["U7:14", ["u7p14"]],
    ["/CS CS# ~{OE}", ["ncs", "ncs", "noe"]],
    ["R/W and I/O", ["rw", "and", "io"]],
    ["pin→gnd OE=0 x<b $D000", ["pin", "gnd", "oe", "0", "x", "b", "d000"]],
    ["no\u00A0video", ["no", "video"]],
    ["74ＬＳ244", ["74ls244"]],
    ["10µF 10μF", ["10uf", "10uf"]],
    ["*bold* _it_ don’t", ["bold", "it", "dont"]],
    ['5.25" drive', ["5p25", "drive"]],
    ["", []],
  ])("%s → %j", (text, keys) => {
    expect(keysOf(text)).toEqual(keys);
  });

  test("tokens stand in order, do not overlap, and say where they stand", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        let end = 0;
        for (const token of textTokens(text)) {
          expect(token.start).toBeGreaterThanOrEqual(end);
          expect(token.end).toBeGreaterThan(token.start);
          expect(text.slice(token.start, token.end)).toBe(token.text);
          end = token.end;
        }
      }),
    );
  });

  test("all keys but words are letters and digits only; no key has a space", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { kind, keys } of textTokens(text)) {
          for (const key of keys) expect(key).toMatch(kind === "word" ? /^[\p{L}\p{N}]+$/u : /^[a-z0-9]+$/);
        }
      }),
    );
  });

  test("a long text without spaces comes to an end", () => {
    expect(textTokens("~{".repeat(20_000))).toEqual([]);
    expect(textTokens("1,".repeat(5_000)).length).toBe(5_000);
  });
});

describe("queryTerms", () => {
  const terms = (text: string) => queryTerms(text).terms.map(({ keys, fallback }) => ({ keys, fallback }));

  test("a code has its core as fallback, words have none", () => {
    expect(terms("SN74LS244N no video")).toEqual([
      { keys: ["sn74ls244n"], fallback: ["74ls244"] },
      { keys: ["no"], fallback: [] },
      { keys: ["video"], fallback: [] },
    ]);
  });

  test("a negative rail is a rail and excludes nothing", () => {
    expect(terms("-12V missing")).toEqual([
      { keys: ["neg12v"], fallback: [] },
      { keys: ["missing"], fallback: [] },
    ]);
  });

  test("a pin falls back to its part", () => {
    expect(terms("U12 pin 26")).toEqual([{ keys: ["u12p26", "u12pin26"], fallback: ["u12"] }]);
  });

  test("an active-low signal falls back to its name", () => {
    expect(terms("/RESET")).toEqual([{ keys: ["nreset"], fallback: ["reset"] }]);
  });

  test("neighbours that could be one code are given joined, the longest first", () => {
    expect(queryTerms("VQ4 0061").joined).toEqual([{ from: 0, to: 2, whole: "vq40061", core: "vq40061" }]);
    expect(queryTerms("74 LS 244 dead").joined.map(({ whole }) => whole)).toEqual([
      "74ls244dead",
      "74ls244",
      "ls244dead",
      "74ls",
      "ls244",
      "244dead",
    ]);
  });

  test("the last word is unfinished until something stands behind it", () => {
    expect([queryTerms("no vid").typing, queryTerms("no video ").typing]).toEqual([true, false]);
  });

  test("at most ten terms, whatever is pasted", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(queryTerms(text.repeat(20)).terms.length).toBeLessThanOrEqual(10);
      }),
    );
  });

  test("what a query asks for is what the index holds for the same text", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const held = new Set(textTokens(text).flatMap((token) => token.keys));
        for (const term of queryTerms(text).terms) expect(term.keys.some((key) => held.has(key))).toBe(true);
      }),
    );
  });
});
