import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { placeKey, placementKindOf, printPlace, readPlace, readPlaceRun } from "#lib/core/netlist/index.ts";

const anyText = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 40 }),
  fc.string({ unit: "binary", maxLength: 40 }),
  fc.string({ unit: fc.constantFrom(...Array.from("UCV0157.:-+/#~{}nN_ pGDµ−*!\\")), maxLength: 12 }),
);

/** The spelling that a text gets, or the problem. */
function spelt(text: string): string {
  const place = readPlace(text);
  return place.ok ? `${place.value.kind} ${printPlace(place.value)}` : place.problem;
}

describe("readPlace", () => {
  test.each([
    ["U7", "part U7"],
    ["u7", "part U7"],
    ["IC12", "part IC12"],
    ["TP5", "part TP5"],
    ["RN2", "part RN2"],
    ["4F", "part 4F"],
    ["12ab", "part 12AB"],
    ["U7A", "part U7A"],
    ["U7.14", "pin U7.14"],
    ["u7.014", "pin U7.14"],
    ["U7:14", "pin U7.14"],
    ["U7-14", "pin U7.14"],
    ["U7 pin 14", "pin U7.14"],
    ["U7 leg 14", "pin U7.14"],
    ["4f.12", "pin 4F.12"],
    ["5V.3", "pin 5V.3"],
    ["CN3.a12", "pin CN3.A12"],
    ["J3.5", "pin J3.5"],
    ["Q3.B", "pin Q3.B"],
    ["XYZ9.3", "pin XYZ9.3"],
    ["+5V", "net +5V"],
    ["5V", "net +5V"],
    ["5 v", "net +5V"],
    ["+5.0 V", "net +5V"],
    ["-12V", "net -12V"],
    ["−12V", "net -12V"],
    ["3V3", "net +3.3V"],
    ["±15V", "net ±15V"],
    ["6.3 VAC", "net 6.3VAC"],
    ["gnd", "net GND"],
    ["Ground", "net GND"],
    ["0V", "net GND"],
    ["VSS", "net VSS"],
    ["/RESET", "net /RESET"],
    ["~reset", "net /RESET"],
    ["RESET#", "net /RESET"],
    ["~{RESET}", "net /RESET"],
    ["nRESET", "net /RESET"],
    ["phi2", "net PHI2"],
    ["D0", "net D0"],
    ["A15", "net A15"],
    ["R/W", "net R/W"],
    ["AUDIO_L", "net AUDIO_L"],
    ["Net-(U1-Pad3)", "net NET-(U1-PAD3)"],
    ["4.87", "“4.87” is a reading, not a place. Begin with the place, for example U7.14 or +5V."],
    ["612", "“612” is a reading, not a place. Begin with the place, for example U7.14 or +5V."],
    ["", "No place was given. Write a pin such as U7.14, a test point or a net such as +5V."],
    ["???", "“???” is no place on a board. Write a pin such as U7.14, a test point such as TP5 or a net."],
  ])("%s is %s", (text, expected) => {
    expect(spelt(text)).toBe(expected);
  });

  test("the board decides where a word could be a part or a net", () => {
    const board = { designators: ["5V", "D1", "A3"], nets: ["D3", "+5V", "Phi2", "RESET#"] };
    const on = (text: string): string => {
      const place = readPlace(text, board);
      return place.ok ? `${place.value.kind} ${printPlace(place.value)}` : place.problem;
    };
    expect(["5V", "+5V", "D1", "D3", "A3", "A3.2", "PHI2", "/reset", "U9"].map(on)).toEqual([
      "part 5V",
      "net +5V",
      "part D1",
      "net D3",
      "part A3",
      "pin A3.2",
      "net Phi2",
      "net RESET#",
      "part U9",
    ]);
  });

  test("never throws, and what is printed is read as the same place and printed alike", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const place = readPlace(text);
        expect(place.ok || place.problem.endsWith(".")).toBe(true);
        if (!place.ok) return;
        const again = readPlace(printPlace(place.value));
        expect(again).toEqual(place);
        expect(again.ok && placeKey(again.value)).toBe(placeKey(place.value));
      }),
      { numRuns: 2000 },
    );
  });

  test("a part, its pins and a net of the same letters have different keys", () => {
    const keys = [
      placeKey({ kind: "part", designator: "U7" }),
      placeKey({ kind: "pin", designator: "U7", pin: "1" }),
      placeKey({ kind: "pin", designator: "U7", pin: "14" }),
      placeKey({ kind: "net", net: "U7" }),
      placeKey({ kind: "net", net: "/CS" }),
      placeKey({ kind: "net", net: "CS" }),
      placeKey({ kind: "net", net: "+12V" }),
      placeKey({ kind: "net", net: "-12V" }),
    ];
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("two spellings of one net have one key", () => {
    expect(placeKey({ kind: "net", net: "Reset#" })).toBe(placeKey({ kind: "net", net: "/RESET" }));
  });
});

describe("readPlaceRun", () => {
  const run = (text: string): string[] | string => {
    const places = readPlaceRun(text);
    return places.ok ? places.value.map(printPlace) : places.problem;
  };
  test.each([
    ["U7.11-14", ["U7.11", "U7.12", "U7.13", "U7.14"]],
    ["U7.14-11", ["U7.14", "U7.13", "U7.12", "U7.11"]],
    ["U7.11..13", ["U7.11", "U7.12", "U7.13"]],
    ["U7.1,3,5-7", ["U7.1", "U7.3", "U7.5", "U7.6", "U7.7"]],
    ["CN3.A1-A3", ["CN3.A1", "CN3.A2", "CN3.A3"]],
    ["CN3.a1-3", ["CN3.A1", "CN3.A2", "CN3.A3"]],
    ["4F.1-2", ["4F.1", "4F.2"]],
    ["TP1-TP3", ["TP1", "TP2", "TP3"]],
    ["D0-D2", ["D0", "D1", "D2"]],
    ["U7.14", ["U7.14"]],
    ["+5V", ["+5V"]],
    ["U7.1-999", "“U7.1-999” is more than 256 places. Enter it in parts."],
  ])("%s", (text, places) => {
    expect(run(text)).toEqual(places);
  });
});

test.each([
  ["U7", "chip"],
  ["IC12", "chip"],
  ["4F", "chip"],
  ["Q3", "transistor"],
  ["D1", "diode"],
  ["LED2", "diode"],
  ["R10", "resistor"],
  ["RN1", "resistor-pack"],
  ["C14", "capacitor"],
  ["L1", "inductor"],
  ["Y1", "crystal"],
  ["J3", "connector"],
  ["CN3", "connector"],
  ["SW1", "switch"],
  ["F1", "fuse"],
  ["K1", "relay"],
  ["T1", "transformer"],
  ["BT1", "battery"],
  ["JP4", "jumper"],
  ["TP5", "test-point"],
  ["XYZ9", "other"],
  ["", "other"],
])("%s is usually a %s", (designator, kind) => {
  expect(placementKindOf(designator)).toBe(kind);
});
