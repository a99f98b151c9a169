/** A place taken apart: `U7.28` is pin 28 of U7; `U7` and `+5V` have no pin. */
export interface Place {
  part: string;
  pin: string | null;
}

/** The one spelling by which places compare: capitals, no outer spaces. */
export function placeKey(at: string): string {
  return at.trim().toUpperCase();
}

/** Reads `at`. A rail such as `+3.3V` is one name although it has a dot. */
export function placeOf(at: string): Place {
  const text = placeKey(at);
  if (railName(text) !== null) return { part: text, pin: null };
  const dot = text.indexOf(".");
  if (dot <= 0 || dot === text.length - 1) return { part: text, pin: null };
  return { part: text.slice(0, dot), pin: text.slice(dot + 1) };
}

/** The rail that a place names, in one spelling (`+5`, `+5 V` and `+5V` are `+5V`), or null. */
export function railName(at: string): string | null {
  const found = /^([+-])\s*(\d+(?:\.\d+)?)\s*V?$/.exec(placeKey(at));
  if (found === null) return null;
  return `${found[1]}${found[2]}V`;
}

/** What a designator's letters usually stand for; common practice, no source. Grid positions (`4F`) hold chips. */
const PLACE_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:U|IC)\d/, "chip"],
  [/^\d{1,2}[A-Z]{1,2}$/, "chip"],
  [/^(?:J|CN|P|X)\d/, "connector"],
  [/^TP\d/, "test point"],
  [/^(?:Q|T|TR)\d/, "transistor"],
  [/^(?:D|CR|ZD)\d/, "diode"],
  [/^(?:R|RN|RP|VR)\d/, "resistor"],
  [/^C\d/, "capacitor"],
  [/^L\d/, "inductor"],
  [/^F\d/, "fuse"],
];

/** The plain word for a place of which only the name is known. */
export function placeWord(at: string): string {
  if (railName(at) !== null) return "rail";
  const { part } = placeOf(at);
  return PLACE_WORDS.find(([shape]) => shape.test(part))?.[1] ?? "net";
}
