import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  clean,
  codeKeys,
  codeParts,
  foldWord,
  looksLikeCode,
  lookAlikes,
  normalForm,
} from "#lib/core/marking/index.ts";

const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 60 }),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.string({ unit: fc.constantFrom(...Array.from("SNTMVQ0146 -/.#~µΩΔ–−\u200B\uE000ЛA{}+")), maxLength: 24 }),
);

describe("clean", () => {
  test.each([
    ["a non-breaking hyphen is a hyphen", "VQ4\u20110061", "VQ4-0061"],
    ["a minus sign is a hyphen", "\u221212V", "-12V"],
    ["a dash is a hyphen", "4164–15", "4164-15"],
    ["both micro signs are u", "10\u00B5F 10\u03BCF", "10uF 10uF"],
    ["both ohm signs are R", "4\u2126 4\u03A9", "4R 4R"],
    ["delta is spelt out", "ΔV", "deltaV"],
    ["full width letters are plain", "74ＬＳ244", "74LS244"],
    ["zero-width characters and soft hyphens go", "74\u200BLS\u00AD244", "74LS244"],
    ["private-use characters go", "74\uE000LS\uE001244", "74LS244"],
    ["all kinds of space are one space", "  no\u00A0\t video\r\n", "no video"],
  ])("%s", (_, text, cleaned) => {
    expect(clean(text)).toBe(cleaned);
  });

  test("cleaning twice changes nothing", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(clean(clean(text))).toBe(clean(text));
      }),
    );
  });

  test("no private-use character is left, so the marks around matches cannot be forged", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(clean(text)).not.toMatch(/[\uE000-\uF8FF]/);
      }),
    );
  });

  test.each([
    ["Flickering", "flickering"],
    ["Müll", "mull"],
    ["don’t", "dont"],
    ["ＦＵＬＬ", "full"],
  ])("the word %s is compared as %s", (word, folded) => {
    expect(foldWord(word)).toBe(folded);
  });
});

describe("codeKeys", () => {
  // The first three lines are the rule as it was set down for both search engines; the others follow from it.
  test.each([
    ["SN74LS244N", ["sn74ls244n", "74ls244n", "sn74ls244", "74ls244"]],
    ["VQ4-0061-03", ["vq4006103", "vq4", "vq40061", "0061", "006103"]],
    ["TMS4164-15NL", ["tms416415nl", "416415nl", "tms4164", "4164", "15nl"]],
    ["74LS244", ["74ls244"]],
    ["uPD4164", ["upd4164", "4164"]],
    ["µPD4164", ["upd4164", "4164"]],
    ["CD4011BE", ["cd4011be", "4011be", "cd4011", "4011"]],
    ["MC14011BCP", ["mc14011bcp", "4011bcp", "mc14011", "4011"]],
    ["4011B", ["4011b", "4011"]],
    ["LM7805CT", ["lm7805ct", "7805ct", "lm7805", "7805"]],
    ["6809E", ["6809e"]],
    ["2764A", ["2764a"]],
    ["К155ЛА3", ["k155la3"]],
    ["", []],
    ["—", []],
  ])("%s is indexed as %j", (code, keys) => {
    expect(codeKeys(code)).toEqual(keys);
  });

  test.each(["VQ4-0061-03", "vq4-0061-03", "VQ4 0061 03", "VQ4/0061/03", "VQ4‑0061‑03", "VQ4.0061.03", "VQ4006103"])(
    "%s has the one normal form",
    (spelling) => {
      expect(normalForm(spelling)).toBe("vq4006103");
    },
  );

  test("every key is letters and digits, is its own normal form, and is found again under itself", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const key of codeKeys(text)) {
          expect(key).toMatch(/^[a-z0-9]+$/);
          expect(normalForm(key)).toBe(key);
          expect(codeKeys(key)[0]).toBe(key);
        }
      }),
    );
  });

  test("the core of a code is among its keys", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[A-Z]{0,3}[0-9]{1,5}[A-Z]{0,3}(-[0-9]{1,3}[A-Z]{0,2})?$/), (code) => {
        expect(codeKeys(code)).toContain(codeParts(code).core);
      }),
    );
  });

  const number = fc.tuple(
    fc.constantFrom("74", "54"),
    fc.constantFrom("", "LS", "S", "ALS", "F", "HC", "HCT"),
    fc.integer({ min: 0, max: 999 }).map((one) => String(one).padStart(2, "0")),
  );
  const around = fc.tuple(
    fc.constantFrom("", "SN", "DM", "MC", "HD", "M"),
    fc.constantFrom("", "N", "P", "J", "D", "-N", "PC"),
    fc.constantFrom("", "-", " "),
  );
  type Spelt = [readonly [string, string, string], readonly [string, string, string]];
  const spell = ([[series, family, digits], [prefix, suffix, gap]]: Spelt): string =>
    `${prefix}${series}${gap}${family}${gap}${digits}${suffix}`;

  test("no query for one 54/74 number finds another, however both are written", () => {
    fc.assert(
      fc.property(fc.tuple(number, around), fc.tuple(number, around), (one, other) => {
        fc.pre(one[0].join() !== other[0].join());
        const { whole, core } = codeParts(spell(one));
        const keys = codeKeys(spell(other));
        expect(keys).not.toContain(core);
        expect(keys).not.toContain(whole);
      }),
      { numRuns: 3000 },
    );
  });

  test("every spelling of one 54/74 number has the number as its core", () => {
    fc.assert(
      fc.property(number, around, (name, dress) => {
        expect(codeParts(spell([name, dress])).core).toBe(name.join("").toLowerCase());
      }),
    );
  });
});

describe("codeParts", () => {
  test.each([
    ["SN74LS244N", { whole: "sn74ls244n", core: "74ls244", makerPrefix: "sn", packageSuffix: "n" }],
    ["TMS4164-15NL", { whole: "tms416415nl", core: "4164", makerPrefix: "tms", packageSuffix: "nl", grade: "15" }],
    ["AM27C256-15/BP", { whole: "am27c25615bp", core: "27c256", makerPrefix: "am", packageSuffix: "bp", grade: "15" }],
    ["VQ4-0061-03", { whole: "vq4006103", core: "vq40061", grade: "03" }],
    ["VQ4-06", { whole: "vq406", core: "vq406" }],
    ["74-LS-244", { whole: "74ls244", core: "74ls244" }],
    ["2764A", { whole: "2764a", core: "2764a" }],
    ["U7", { whole: "u7", core: "u7" }],
    ["", { whole: "", core: "" }],
  ])("%s", (code, parts) => {
    expect(codeParts(code)).toEqual(parts);
  });
});

describe("looksLikeCode", () => {
  test.each([
    "74LS244",
    "SN74LS244N",
    "VQ4-0061-03",
    "27C256",
    "TMS4164-15NL",
    "7805",
    "2764A",
    "NE555",
    "LM317T",
    "К155ЛА3",
  ])("%s is a code", (token) => {
    expect(looksLikeCode(token)).toBe(true);
  });
  test.each([
    "U7",
    "U7.14",
    "IC12",
    "+5V",
    "4.87V",
    "3.58MHz",
    "100nF",
    "4k7",
    "612",
    "video",
    "2024-05-11",
    "12:30",
    "",
    "5%",
  ])("%s is none", (token) => {
    expect(looksLikeCode(token)).toBe(false);
  });
});

describe("lookAlikes", () => {
  test("one character first, then two, never the form itself", () => {
    expect(lookAlikes("a0b1")).toEqual(["aob1", "a081", "a0bi", "a0bl", "ao81", "aobi", "aobl", "a08i", "a08l"]);
  });
  test("a form that nothing resembles has none", () => {
    expect(lookAlikes("k947")).toEqual([]);
  });
  test("never more than 200, each of the same length", () => {
    const forms = lookAlikes("0".repeat(60));
    expect(forms).toHaveLength(200);
    expect(new Set(forms.map((form) => form.length))).toEqual(new Set([60]));
  });
});
