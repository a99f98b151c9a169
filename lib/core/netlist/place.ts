import { clean, readActiveLow, readRail, readRef } from "../marking/index.ts";
import { done, failed } from "../shared/index.ts";
import type { Result } from "../shared/index.ts";

/** A place on a board that can be measured. Spelt in one way only: see `printPlace`. */
export type Place =
  | { kind: "part"; designator: string }
  | { kind: "pin"; designator: string; pin: string }
  | { kind: "net"; net: string };

/**
 * What a board calls its parts and nets. With it, a word that could be either (`D3`: a diode or a data line; `5V`: a
 * rail or a grid position) is read as the board has it, and nets keep the board's spelling.
 */
export interface BoardNames {
  designators?: readonly string[];
  nets?: readonly string[];
}

/** Longest net name that is taken; netlists of the period stay far below. */
const LONGEST_NET = 80;

/** VSS is not among them: on a split supply it is another net. */
const GROUND = /^(?:gnd|ground)$/i;
/** Letters, digits and the signs that net names carry; brackets appear in names that programs make. */
const NET_SHAPE = /^[\p{L}\p{M}\p{N}_/+\-~!#*.$&()[\]{}:\\<>=']+$/u;
/** Names whose active-low marks have one spelling. Paths of a schematic (/sheet/RESET) are left as they are. */
const SIGNAL_NAME = /^[A-Za-z_](?:[A-Za-z0-9_+.-]*[A-Za-z0-9_+])?$/;
const READING_SHAPE = /^[+-]?\d+(?:[.,]\d+)?(?:[a-zA-Z%°]{1,4})?$/;

/** Cleaned, with letters beyond ASCII as capitals: δ is Δ on a printed board, and Δ is spelt out. */
function plainText(text: string): string {
  return clean(clean(text).replace(/[^ -~]+/g, (letters) => letters.toUpperCase()));
}

function quote(text: string): string {
  return `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
}

/** `+5V`, `-12V`, `±15V`, `6.3VAC`: a rail in its one spelling. */
function printRail(text: string): string | null {
  const rail = readRail(text);
  if (!rail) return null;
  if (rail.volts === "0") return "GND";
  return rail.alternating ? `${rail.volts}VAC` : `${rail.sign}${rail.volts}V`;
}

function printNet(text: string): string {
  if (GROUND.test(text)) return "GND";
  const rail = printRail(text);
  if (rail !== null) return rail;
  const { name, low } = readActiveLow(text);
  const isPlain = low && SIGNAL_NAME.test(name) && !readActiveLow(name).low;
  return isPlain ? `/${name.toUpperCase()}` : text.toUpperCase();
}

function netKey(net: string): string {
  return `net:${printNet(plainText(net)).toLowerCase()}`;
}

function knownPart(designator: string, board: BoardNames | undefined): string | undefined {
  const key = designator.toLowerCase();
  return board?.designators?.find((name) => name.toLowerCase() === key);
}

function knownNet(text: string, board: BoardNames | undefined): string | undefined {
  const key = netKey(text);
  return board?.nets?.find((name) => netKey(name) === key);
}

function partOrPin(text: string, board: BoardNames | undefined): Place | null {
  const ref = readRef(text) ?? unusualPart(text, board);
  if (!ref) return null;
  return ref.pin === undefined
    ? { kind: "part", designator: ref.designator }
    : { kind: "pin", designator: ref.designator, pin: ref.pin };
}

/** A designator whose letters are in no common use counts when the board has it, or when a pin follows a point. */
function unusualPart(text: string, board: BoardNames | undefined): { designator: string; pin?: string } | null {
  const ref = readRef(text, { anyPrefix: true });
  if (ref && (knownPart(ref.designator, board) !== undefined || (ref.pin !== undefined && text.includes("."))))
    return ref;
  // What the board calls a part is one, whatever it looks like.
  const [head = "", pin] = text.split(".");
  const part = knownPart(head, board);
  if (part === undefined) return null;
  return pin === undefined || pin === ""
    ? { designator: part.toUpperCase() }
    : { designator: part.toUpperCase(), pin: pin.toUpperCase() };
}

/** A place named by a word that the board knows. */
function placeOnBoard(text: string, board: BoardNames): Place | null {
  const part = partOrPin(text, board);
  if (part && part.kind !== "net" && knownPart(part.designator, board) !== undefined) return part;
  const net = knownNet(text, board);
  return net === undefined ? null : { kind: "net", net };
}

/**
 * Reads a place: `U7`, `U7.14`, `U7 pin 14`, `4F.12`, `CN3.A12`, `TP5`, `+5V`, `-12V`, `/RESET`, a net's name. A grid
 * position begins with a digit and has a letter; `5V` is a rail unless the board says otherwise. The problem is a
 * sentence for the person who typed it.
 */
export function readPlace(text: string, board?: BoardNames): Result<Place, string> {
  const plain = plainText(text).replace(/[.,:;\s]+$/, "");
  if (plain === "") return failed("No place was given. Write a pin such as U7.14, a test point or a net such as +5V.");
  const known = board && placeOnBoard(plain, board);
  if (known) return done(known);
  if (GROUND.test(plain) || readRail(plain)) return done({ kind: "net", net: printNet(plain) });
  const part = partOrPin(plain, board);
  if (part) return done(part);
  if (READING_SHAPE.test(plain) && !/^\d{1,2}[A-Z]/.test(plain)) {
    return failed(`${quote(plain)} is a reading, not a place. Begin with the place, for example U7.14 or +5V.`);
  }
  if (plain.length > LONGEST_NET || !NET_SHAPE.test(plain) || !/[\p{L}]/u.test(plain)) {
    return failed(
      `${quote(plain)} is no place on a board. Write a pin such as U7.14, a test point such as TP5 or a net.`,
    );
  }
  return done({ kind: "net", net: printNet(plain) });
}

/** The one spelling of a place, the same everywhere: `U7`, `U7.14`, `4F.12`, `+5V`, `/RESET`, `GND`. */
export function printPlace(place: Place): string {
  switch (place.kind) {
    case "part":
      return place.designator.toUpperCase();
    case "pin":
      return `${place.designator}.${place.pin}`.toUpperCase();
    case "net":
      return place.net;
  }
}

/** A key for maps and comparisons: equal for two spellings of one place, never equal for a part and a net. */
export function placeKey(place: Place): string {
  return place.kind === "net" ? netKey(place.net) : printPlace(place).toLowerCase();
}
