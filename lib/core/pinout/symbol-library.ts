import { done, failed, type PinRole, type PinType, type Result } from "../shared/index.ts";
import { comparePinNumbers } from "./pin-number.ts";
import { pinRoles } from "./pin-role.ts";
import { guessPackage } from "./package-guess.ts";
import { listsNamed, readSExpression, wordAt, type ReadRules, type SList, type SyntaxProblem } from "./s-expression.ts";
import type { ChipSymbol, SymbolPin } from "./symbol.ts";

export const SYMBOL_LIMITS = {
  /** Brackets inside brackets. Real libraries need 8; the limit keeps a hostile file from costing memory. */
  nesting: 64,
  /** Pins of one part. The largest gate arrays stay under 2,000. */
  pins: 4_000,
  /** Pins of all parts together: many parts derived from one large parent are a short text and a great many pins. */
  libraryPins: 1_000_000,
  /** Parts in a row of which each is derived from the next. Real libraries have 2. */
  lineage: 16,
  /** Characters of a part's or pin's name. The longest pin name in Debian's libraries has 122. */
  nameLength: 200,
} as const;

export interface RefusedSymbol {
  name: string;
  line: number;
  reason: string;
}

export interface SymbolLibrary {
  symbols: ChipSymbol[];
  refused: RefusedSymbol[];
}

/**
 * Reads a `.kicad_sym` library: every part with its pin table, and every part that was refused with the reason.
 * Derived symbols take their parent's pins and keep their own properties; a second drawing style is skipped; active
 * low is kept from a bar over the name or from the pin's shape. Time and memory grow in proportion to the text.
 * Fails, naming the line, when the brackets do not add up or the text is no symbol library.
 * Format: "Symbol Library File Format" of the KiCad developer documentation, versions 20201005 and later.
 */
export function readSymbolLibrary(
  text: string,
  options: { libraryName: string },
): Result<SymbolLibrary, { line: number; reason: string }> {
  const read = readSExpression(text, LIBRARY_RULES);
  if (!read.ok) return read;
  if (read.value.head !== "kicad_symbol_lib") return failed({ line: read.value.line, reason: "not a symbol library" });
  const library: SymbolLibrary = { symbols: [], refused: [] };
  const parts = new Map<string, LibraryPart>();
  for (const list of listsNamed(read.value, "symbol")) {
    const part = libraryPart(list);
    if (!parts.has(part.name)) parts.set(part.name, part);
    else library.refused.push(refusal(part, "the name stands twice in this library"));
  }
  let pinsLeft: number = SYMBOL_LIMITS.libraryPins;
  for (const part of parts.values()) {
    const symbol = readSymbol(part, parts, options.libraryName);
    if (!symbol.ok) library.refused.push(refusal(part, symbol.problem));
    else if ((pinsLeft -= symbol.value.pins.length) >= 0) library.symbols.push(symbol.value);
    else library.refused.push(refusal(part, `the parts before it have ${SYMBOL_LIMITS.libraryPins} pins already`));
  }
  library.refused.sort((a, b) => a.line - b.line);
  return done(library);
}

function refusal(part: LibraryPart, reason: string): RefusedSymbol {
  return { name: part.name.slice(0, SYMBOL_LIMITS.nameLength), line: part.list.line, reason };
}

const LIBRARY_RULES: ReadRules = {
  nestingLimit: SYMBOL_LIMITS.nesting,
  dropped: new Set(["effects", "polyline", "rectangle", "circle", "arc", "bezier", "text", "text_box", "at", "length"]),
  misplaced,
};

/**
 * A lost bracket mostly leaves the file balanced somewhere far below, so it is noticed where the next part, property
 * or pin turns up inside something that cannot hold one.
 */
function misplaced(head: string, parents: readonly SList[]): SyntaxProblem | null {
  const parent = parents.at(-1);
  if (parent === undefined || !HOLDERS.has(head)) return null;
  if (parent.head === "symbol" && (head !== "symbol" || parents.length === 2)) return null;
  if (parent.head === "kicad_symbol_lib" && head === "symbol") return null;
  if (parents[0]?.head !== "kicad_symbol_lib") return null;
  return { line: parent.line, reason: `closing bracket missing: a ${head} begins inside this ${parent.head}` };
}
const HOLDERS: ReadonlySet<string> = new Set(["symbol", "property", "pin"]);

/** What is read of a part once, however many others are derived from it. */
interface LibraryPart {
  name: string;
  list: SList;
  parent: string | undefined;
  isPower: boolean;
  properties: ReadonlyMap<string, string>;
  pins: Result<SymbolPin[], string> | undefined;
}

function libraryPart(list: SList): LibraryPart {
  const extending = listsNamed(list, "extends")[0];
  return {
    name: unescapeName(wordAt(list, 0) ?? ""),
    list,
    parent: extending === undefined ? undefined : unescapeName(wordAt(extending, 0) ?? ""),
    isPower: listsNamed(list, "power").length > 0,
    properties: new Map(
      listsNamed(list, "property").map((one) => [wordAt(one, 0) ?? "", wordAt(one, 1)?.trim() ?? ""]),
    ),
    pins: undefined,
  };
}

function readSymbol(
  part: LibraryPart,
  parts: ReadonlyMap<string, LibraryPart>,
  library: string,
): Result<ChipSymbol, string> {
  const { name } = part;
  if (name === "") return failed("the part has no name");
  if (name.length > SYMBOL_LIMITS.nameLength)
    return failed(`the name is longer than ${SYMBOL_LIMITS.nameLength} characters`);
  const lineage = lineageOf(part, parts);
  if (!lineage.ok) return lineage;
  if (lineage.value.some((one) => one.isPower)) return failed("a power symbol for drawings, not a part");
  const bearer = lineage.value.at(-1) ?? part;
  const pins = (bearer.pins ??= readPins(bearer.list));
  if (!pins.ok) return pins;
  const property = (key: string) => inheritedProperty(lineage.value, key);
  const datasheet = property("Datasheet");
  return done({
    library,
    name,
    reference: property("Reference"),
    description: property("ki_description") || property("Description"),
    keywords: property("ki_keywords"),
    ...(/^https?:[/][/]/i.test(datasheet) ? { datasheet } : {}),
    pins: pins.value,
    packageGuess: guessPackage({
      reference: property("Reference"),
      footprint: property("Footprint"),
      filters: property("ki_fp_filters"),
      pinNumbers: pins.value.map((pin) => pin.number),
    }),
  });
}

/** The part, its parent, and so on; the last one is not derived. */
function lineageOf(part: LibraryPart, parts: ReadonlyMap<string, LibraryPart>): Result<LibraryPart[], string> {
  const lineage = [part];
  for (let next = part.parent; next !== undefined; next = lineage.at(-1)?.parent) {
    const parent = parts.get(next);
    if (parent === undefined)
      return failed(`derived from ${next.slice(0, SYMBOL_LIMITS.nameLength)}, which is not in this library`);
    if (lineage.includes(parent)) return failed(`derived from itself by way of ${parent.name}`);
    if (lineage.length === SYMBOL_LIMITS.lineage)
      return failed(`derived more than ${SYMBOL_LIMITS.lineage - 1} times over`);
    lineage.push(parent);
  }
  return done(lineage);
}

/** The nearest value that is not empty; `~` is how the format writes an empty one. */
function inheritedProperty(lineage: readonly LibraryPart[], key: string): string {
  for (const { properties } of lineage) {
    const value = properties.get(key) ?? "";
    if (value !== "" && value !== "~") return value;
  }
  return "";
}

function readPins(list: SList): Result<SymbolPin[], string> {
  const read: BarePin[] = [];
  for (const drawing of listsNamed(list, "symbol")) {
    const { unit, style } = unitAndStyle(wordAt(drawing, 0) ?? "");
    if (style > 1) continue;
    for (const pin of listsNamed(drawing, "pin")) {
      const one = readPin(pin, unit);
      if (!one.ok) return one;
      read.push(one.value);
      if (read.length > SYMBOL_LIMITS.pins * 2) return failed(`more than ${SYMBOL_LIMITS.pins} pins`);
    }
  }
  if (read.length === 0) return failed("no pins");
  const merged = mergeRepeated(read);
  if (!merged.ok) return merged;
  if (merged.value.length > SYMBOL_LIMITS.pins) return failed(`more than ${SYMBOL_LIMITS.pins} pins`);
  const sorted = merged.value.sort((a, b) => comparePinNumbers(a.number, b.number));
  const roles = pinRoles(sorted);
  return done(sorted.map((pin, i) => tablePin(pin, roles[i] ?? "unknown")));
}

function tablePin({ number, name, type, activeLow, unit }: BarePin, role: PinRole): SymbolPin {
  return { number, name, type, role, activeLow, unit };
}

/** `74LS00_4_1` is unit 4 in drawing style 1; unit 0 belongs to all units, style 0 to both styles. */
function unitAndStyle(name: string): { unit: number; style: number } {
  const parts = name.slice(-24).split("_");
  return { unit: countOf(parts.at(-2)), style: countOf(parts.at(-1)) };
}

function countOf(digits: string | undefined): number {
  return digits !== undefined && /^\d{1,4}$/.test(digits) ? Number(digits) : 0;
}

type BarePin = Omit<SymbolPin, "role"> & { clockShape: boolean };

const PIN_TYPE_WORDS: ReadonlyMap<string, PinType> = new Map<string, PinType>([
  ["input", "input"],
  ["output", "output"],
  ["bidirectional", "bidirectional"],
  ["tri_state", "three-state"],
  ["passive", "passive"],
  ["free", "no-connect"],
  ["unspecified", "unspecified"],
  ["power_in", "power-in"],
  ["power_out", "power-out"],
  ["open_collector", "open-collector"],
  ["open_emitter", "open-emitter"],
  ["no_connect", "no-connect"],
  ["unconnected", "no-connect"],
]);

const LOW_SHAPES: ReadonlySet<string> = new Set([
  "inverted",
  "inverted_clock",
  "input_low",
  "clock_low",
  "output_low",
  "edge_clock_high",
]);

function readPin(list: SList, unit: number): Result<BarePin, string> {
  const number = firstWordOf(list, "number");
  if (number === "" || number === "~") return failed("a pin has no number");
  if (number.length > SYMBOL_LIMITS.nameLength) return failed("a pin number is too long");
  if (/[[\],]/.test(number)) return failed(`pin number ${number} stands for several pins`);
  const word = wordAt(list, 0) ?? "";
  const type = PIN_TYPE_WORDS.get(word);
  if (type === undefined) return failed(`pin ${number} has the unknown type ${word || "(none)"}`.slice(0, 300));
  const named = readPinName(firstWordOf(list, "name"));
  if (named.name.length > SYMBOL_LIMITS.nameLength) return failed(`the name of pin ${number} is too long`);
  const shape = wordAt(list, 1) ?? "";
  const activeLow = named.activeLow || LOW_SHAPES.has(shape);
  const clockShape = shape.includes("clock");
  const leftAlone = type === "no-connect" && LEAVE_ALONE.test(named.name);
  return done({ number, name: named.name, type: leftAlone ? "do-not-connect" : type, activeLow, unit, clockShape });
}

/** Names that data sheets give to a pin which must stay unconnected, as against one that is free. */
const LEAVE_ALONE = /^(DNC|DNU|DU|NMC|RSVD?|RESERVED)\d*$/i;

function firstWordOf(list: SList, head: string): string {
  const found = listsNamed(list, head)[0];
  return found === undefined ? "" : unescapeName((wordAt(found, 0) ?? "").trim());
}

/**
 * Takes the bar off a pin name. `~{CE}` (and the older `~CE`) is active low; in a name of several functions the first
 * one decides, so that `R/~{W}` is `R/W`, not active low, and `~{RST}/NMI` is `RST/NMI`, active low.
 */
export function readPinName(text: string): { name: string; activeLow: boolean } {
  const activeLow = text.length > 1 && text.startsWith("~");
  const name = text.replace(/~\{([^{}]*)\}/g, "$1").replaceAll("~", "");
  return { name, activeLow: activeLow && name !== "" };
}

/**
 * A pin may be drawn again in each unit (a supply, a shared input). Drawn alike it is one pin, common to all units;
 * drawn with two names it would be two truths about one pin, and the part is refused.
 */
function mergeRepeated(pins: readonly BarePin[]): Result<BarePin[], string> {
  const byNumber = new Map<string, BarePin>();
  for (const pin of pins) {
    const first = byNumber.get(pin.number);
    if (first === undefined) byNumber.set(pin.number, pin);
    else if (first.name !== pin.name || first.type !== pin.type || first.activeLow !== pin.activeLow)
      return failed(`pin ${pin.number} stands twice: as ${printed(first)} and as ${printed(pin)}`);
    else if (first.unit !== pin.unit) byNumber.set(pin.number, { ...first, unit: 0 });
  }
  return done([...byNumber.values()]);
}

function printed(pin: BarePin): string {
  return `${pin.name === "" ? "a pin without a name" : pin.name} (${pin.type}${pin.activeLow ? ", active low" : ""})`;
}

/** The format writes characters that it reserves as words in braces. */
const NAME_ESCAPES: ReadonlyMap<string, string> = new Map([
  ["{slash}", "/"],
  ["{backslash}", "\\"],
  ["{colon}", ":"],
  ["{dblquote}", '"'],
  ["{quote}", "'"],
  ["{lt}", "<"],
  ["{gt}", ">"],
  ["{bar}", "|"],
  ["{space}", " "],
]);

function unescapeName(text: string): string {
  return text.includes("{") ? text.replace(/(?<!~)\{[a-z]{2,9}\}/g, (word) => NAME_ESCAPES.get(word) ?? word) : text;
}
