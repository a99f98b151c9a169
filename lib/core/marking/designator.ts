import { clean } from "./clean.ts";
import { normalForm } from "./code.ts";

/** Letters that stand in front of a designator's number, by common practice (no source); spelling as printed. */
export const DESIGNATOR_PREFIXES: readonly string[] = [
  "U IC Q TR T D CR ZD DZ LED DS R VR POT RV TH NTC RN RA RP RM C CP CE EC TC L FB LF X Y XTAL XT OSC",
  "J CN CON CONN P PL SK TB S SW DSW F FU FS K RY RL RLY TF TRF BT BAT B JP W LK LINK E SB TP TST SP LS M MOD",
].flatMap((line) => line.split(" "));

const KNOWN = new Set(DESIGNATOR_PREFIXES);

/** Of these letters the number 0 is a line of a bus (D0, Y0, P0), not a part. */
const ZERO_IS_A_LINE = new Set(["D", "Q", "Y", "P", "S", "B", "T", "X", "K", "E", "M", "F", "L"]);

/** A place on a board: what is printed beside the part, and perhaps one of its pins. Upper case. */
export interface Ref {
  designator: string;
  /** `lettered`: U7, IC12, TP5. `grid`: a position such as 4F, which begins with a digit. */
  style: "lettered" | "grid";
  /** The letters in front (lettered), empty for a grid position. */
  prefix: string;
  pin?: string;
}

const LETTERED = /^([A-Z]{1,4})(\d{1,4})([A-H])?/;
const GRID = /^\d{1,2}[A-Z]{1,2}(?=$|[.: ])/;
/** Behind a point or colon any pin may stand, behind a hyphen or `p` only a number. */
const PIN =
  /^(?:[.:]\s?([A-Z]{0,2}\d{1,4}|[A-Z]{1,2})|(?:-|P)(\d{1,3})|\s?(?:PIN|LEG)\.?\s?([A-Z]{0,2}\d{1,4}|[A-Z]))$/;

function pinSpelling(pin: string): string {
  return pin.replace(/^([A-Z]*)0+(?=\d)/, "$1");
}

/**
 * Reads `U12`, `U12.26`, `U12 pin 26`, `U12-26`, `CN3.A12`, `4F.12`, `4F`; null when the text is no such place. A
 * lettered designator needs a prefix in common use, unless `anyPrefix` is set.
 */
export function readRef(text: string, options: { anyPrefix?: boolean } = {}): Ref | null {
  const plain = clean(text).toUpperCase();
  const lettered = LETTERED.exec(plain);
  const prefix = lettered?.[1] ?? "";
  if (lettered && (KNOWN.has(prefix) || options.anyPrefix)) {
    if (Number(lettered[2]) === 0 && ZERO_IS_A_LINE.has(prefix)) return null;
    return withPin(lettered[0], { style: "lettered", prefix }, plain);
  }
  const grid = GRID.exec(plain);
  return grid ? withPin(grid[0], { style: "grid", prefix: "" }, plain) : null;
}

function withPin(designator: string, shape: Pick<Ref, "style" | "prefix">, plain: string): Ref | null {
  const rest = plain.slice(designator.length);
  if (rest === "") return { designator, ...shape };
  const match = PIN.exec(rest);
  if (match) return { designator, ...shape, pin: pinSpelling(match[1] ?? match[2] ?? match[3] ?? "") };
  // A letter that was taken for a section of the part may be the P of U12P26.
  return /[A-H]$/.test(designator) && shape.style === "lettered"
    ? withPin(designator.slice(0, -1), shape, plain)
    : null;
}

/**
 * The keys of a place: `U12.26`, `U12 pin 26`, `U12-26` → u12p26, u12; `U12` → u12. The exact one first; each is
 * `[a-z0-9]+`. Empty when the text is no place.
 */
export function refKeys(text: string): string[] {
  const ref = readRef(text);
  if (!ref) return [];
  const part = normalForm(ref.designator);
  return ref.pin === undefined ? [part] : [`${part}p${normalForm(ref.pin)}`, part];
}
