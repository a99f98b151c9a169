import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readPinName, readSymbolLibrary, SYMBOL_LIMITS } from "#lib/core/pinout/index.ts";
import { library, pin, property, symbol, unit } from "./library.ts";

const read = (text: string) => readSymbolLibrary(text, { libraryName: "test" });

function accepted(text: string) {
  const result = read(text);
  if (!result.ok) throw new Error(`line ${result.problem.line}: ${result.problem.reason}`);
  return result.value;
}

const gate = symbol(
  "74LS37",
  property("Reference", "U"),
  property("ki_description", "quad buffer"),
  property("ki_keywords", "TTL buffer"),
  property("Datasheet", "https://parts.example/37.pdf"),
  property("ki_fp_filters", "DIP?14*"),
  unit("74LS37_1_1", pin("input", "line", "~", "1"), pin("output", "inverted", "~", "3")),
  unit("74LS37_1_2", pin("input", "inverted", "~", "1"), pin("output", "line", "~", "3")),
  unit("74LS37_2_0", pin("power_in", "line", "VCC", "14"), pin("power_in", "line", "GND", "7", "hide")),
);

describe("reading a library", () => {
  test("a part comes with everything the file says, pins in the order of their numbers", () => {
    expect(accepted(library(gate))).toEqual({
      symbols: [
        {
          library: "test",
          name: "74LS37",
          reference: "U",
          description: "quad buffer",
          keywords: "TTL buffer",
          datasheet: "https://parts.example/37.pdf",
          pins: [
            { number: "1", name: "", type: "input", role: "input", activeLow: false, unit: 1 },
            { number: "3", name: "", type: "output", role: "output", activeLow: true, unit: 1 },
            { number: "7", name: "GND", type: "power-in", role: "ground", activeLow: false, unit: 2 },
            { number: "14", name: "VCC", type: "power-in", role: "supply", activeLow: false, unit: 2 },
          ],
          packageGuess: { name: "DIP-14", style: "DIP", pinCount: 14, basis: "filter" },
        },
      ],
      refused: [],
    });
  });

  test("a derived part has its parent's pins and its own properties, wherever the parent stands", () => {
    const derived = `(symbol "SN7437N" (extends "74LS37") ${property("ki_description", "quad buffer, standard TTL")})`;
    const { symbols } = accepted(library(derived, gate));
    expect(symbols.map((one) => [one.name, one.description, one.keywords, one.pins.length])).toEqual([
      ["SN7437N", "quad buffer, standard TTL", "TTL buffer", 4],
      ["74LS37", "quad buffer", "TTL buffer", 4],
    ]);
  });

  test("supply pins that lie on each other, hidden ones too, stay separate pins", () => {
    const part = symbol("X1", unit("X1_1_1", ...["4", "5", "6"].map((n) => pin("power_in", "line", "GND", n, "hide"))));
    expect(accepted(library(part)).symbols[0]?.pins.map((one) => one.number)).toEqual(["4", "5", "6"]);
  });

  test("a pin drawn alike in two units is one pin, common to all units", () => {
    const enable = pin("input", "inverted", "OE", "1");
    const part = symbol("X1", unit("X1_1_1", enable), unit("X1_2_1", enable));
    expect(accepted(library(part)).symbols[0]?.pins).toEqual([
      { number: "1", name: "OE", type: "input", role: "enable", activeLow: true, unit: 0 },
    ]);
  });

  test("numbers with letters are kept as text and ordered as a table orders them", () => {
    const numbers = ["B2", "A10", "A2", "AA1", "B1"];
    const part = symbol("X1", unit("X1_1_1", ...numbers.map((n) => pin("passive", "line", "P", n))));
    expect(accepted(library(part)).symbols[0]?.pins.map((one) => one.number)).toEqual(["A2", "A10", "B1", "B2", "AA1"]);
  });

  test.each([
    ["no_connect", "NC", "no-connect"],
    ["no_connect", "DNC", "do-not-connect"],
    ["no_connect", "DU", "do-not-connect"],
    ["free", "X", "no-connect"],
    ["tri_state", "D0", "three-state"],
    ["open_emitter", "Y", "open-emitter"],
    ["power_out", "VO", "power-out"],
  ])("type %s of a pin called %s is %s", (word, name, type) => {
    const part = symbol("X1", unit("X1_1_1", pin(word, "line", name, "1")));
    expect(accepted(library(part)).symbols[0]?.pins[0]?.type).toBe(type);
  });

  test.each([
    ["a part without pins", symbol("X1", property("Reference", "U")), "no pins"],
    [
      "a power symbol",
      symbol("VCC", "(power)", unit("VCC_1_1", pin("power_in", "line", "VCC", "1"))),
      "a power symbol for drawings, not a part",
    ],
    ["a part derived from nothing", `(symbol "X1" (extends "X2"))`, "derived from X2, which is not in this library"],
    ["a part derived from itself", `(symbol "X1" (extends "X1"))`, "derived from itself by way of X1"],
    [
      "two truths about one pin",
      symbol("X1", unit("X1_1_1", pin("input", "line", "A", "3"), pin("output", "inverted", "B", "3"))),
      "pin 3 stands twice: as A (input) and as B (output, active low)",
    ],
    [
      "an unknown pin type",
      symbol("X1", unit("X1_1_1", pin("hot", "line", "A", "3"))),
      "pin 3 has the unknown type hot",
    ],
    [
      "a number for several pins",
      symbol("X1", unit("X1_1_1", pin("input", "line", "A", "[3-9]"))),
      "pin number [3-9] stands for several pins",
    ],
    ["a pin without a number", symbol("X1", unit("X1_1_1", pin("input", "line", "A", ""))), "a pin has no number"],
    ["a part without a name", symbol("", unit("_1_1", pin("input", "line", "A", "1"))), "the part has no name"],
  ])("%s is refused, the rest is read", (_, bad, reason) => {
    const { symbols, refused } = accepted(library(gate, bad));
    expect(symbols.map((one) => one.name)).toEqual(["74LS37"]);
    expect(refused.map((one) => one.reason)).toEqual([reason]);
  });

  test("the second of two parts of one name is refused with its line", () => {
    const again = gate.split("\n").length + 2;
    expect(accepted(library(gate, gate)).refused).toEqual([
      { name: "74LS37", line: again, reason: "the name stands twice in this library" },
    ]);
  });

  test("many parts derived from one large parent end at the limit instead of in memory", () => {
    const pins = Array.from({ length: SYMBOL_LIMITS.pins }, (_, i) => pin("passive", "line", "", String(i + 1)));
    const derived = Array.from({ length: 300 }, (_, i) => `(symbol "D${i}" (extends "BIG"))`);
    const { symbols, refused } = accepted(library(symbol("BIG", unit("BIG_1_1", ...pins)), ...derived));
    expect(symbols).toHaveLength(SYMBOL_LIMITS.libraryPins / SYMBOL_LIMITS.pins);
    expect(refused[0]?.reason).toBe("the parts before it have 1000000 pins already");
  });
});

describe("a broken file names the line", () => {
  const lost = (text: string, at: string) => text.replace(at, at.slice(0, -1));
  test.each<[string, string, { line: number; reason: string }]>([
    ["nothing at all", "", { line: 1, reason: "the file is empty" }],
    ["prose", "hello", { line: 1, reason: "text outside the brackets" }],
    ["another format", "(module X)", { line: 1, reason: "not a symbol library" }],
    ["the last bracket missing", library(gate).slice(0, -1), { line: 1, reason: "closing bracket missing" }],
    ["a bracket too many", `${library(gate)}\n)`, { line: 40, reason: "closing bracket without an opening one" }],
    ["a second list", `${library(gate)}\n\n(more)`, { line: 41, reason: "text after the last closing bracket" }],
    ["an open quotation", `(kicad_symbol_lib\n (symbol "X1\n))`, { line: 2, reason: "closing quotation mark missing" }],
    [
      "a bracket lost behind a property",
      lost(library(gate), `"TTL buffer" (id 0) (at 0 0 0) (effects (font (size 1.27 1.27)) hide))`),
      { line: 5, reason: "closing bracket missing: a property begins inside this property" },
    ],
    [
      "a bracket lost behind a pin",
      library(gate).replace(/\n {6}\)\n {6}\(pin output/, "\n      (pin output"),
      { line: 9, reason: "closing bracket missing: a pin begins inside this pin" },
    ],
    [
      "a bracket lost behind a part",
      library(gate.replace(/\n {2}\)$/, ""), symbol("X1", unit("X1_1_1", pin("input", "line", "A", "1")))),
      { line: 38, reason: "closing bracket missing: a symbol begins inside this symbol" },
    ],
    [
      "brackets without end",
      `(kicad_symbol_lib\n${"(".repeat(100)}`,
      { line: 2, reason: "brackets nested more than 64 deep" },
    ],
  ])("%s", (_, text, problem) => {
    expect(read(text)).toEqual({ ok: false, problem });
  });
});

describe("bars over names", () => {
  test.each([
    ["~{CE}", "CE", true],
    ["~CE", "CE", true],
    ["CE", "CE", false],
    ["R/~{W}", "R/W", false],
    ["~{RST}/NMI", "RST/NMI", true],
    ["~", "", false],
    ["~{}", "", false],
    ["", "", false],
  ])("%s is %s, active low %s", (text, name, activeLow) => {
    expect(readPinName(text)).toEqual({ name, activeLow });
  });
});

/** What no answer may be: two pins of one number, or a problem on a line that is not there. */
function faultOf(result: ReturnType<typeof read>, lines: number): string | null {
  if (!result.ok)
    return result.problem.line >= 1 && result.problem.line <= lines ? null : `line ${result.problem.line}`;
  const torn = result.value.symbols.find((one) => new Set(one.pins.map((p) => p.number)).size < one.pins.length);
  return torn === undefined ? null : `${torn.name} has a pin twice`;
}

describe("laws", () => {
  const whole = library(gate, symbol("X1", unit("X1_1_1", pin("input", "inverted_clock", "~{CLK}", "1"))));

  test("a mutated library is read or refused, never more, and names a line that exists", () => {
    const piece = fc.oneof(
      fc.constantFrom(
        "(",
        ")",
        '"',
        "\\",
        "\n",
        "~{",
        "(symbol ",
        "(pin ",
        '(extends "X1")',
        "(power)",
        "_1_1",
        "\u0000",
      ),
      fc.string({ maxLength: 6 }),
    );
    const place = fc.nat({ max: whole.length });
    fc.assert(
      fc.property(
        fc.array(fc.record({ at: place, cut: fc.nat({ max: 40 }), piece }), { minLength: 1, maxLength: 6 }),
        (edits) => {
          const text = edits.reduce((t, { at, cut, piece: p }) => t.slice(0, at) + p + t.slice(at + cut), whole);
          expect(faultOf(read(text), text.split("\n").length)).toBeNull();
        },
      ),
      { numRuns: 2_000 },
    );
  });

  test("names survive whatever characters they have", () => {
    const name = fc
      .string({ minLength: 1, maxLength: 20 })
      .filter((text) => text.trim() === text && !/[~{}\r]/.test(text));
    fc.assert(
      fc.property(name, (text) => {
        const quoted = text.replaceAll("\\", "\\\\").replaceAll('"', '\\"').replaceAll("\n", "\\n");
        const part = symbol("X1", unit("X1_1_1", pin("input", "line", quoted, "1")));
        expect(accepted(library(part)).symbols[0]?.pins[0]?.name).toBe(text);
      }),
    );
  });
});
