import type { PackageStyle } from "../shared/index.ts";
import type { PackageGuess } from "./symbol.ts";

interface PackageHint {
  /** Letters of the designator; only chips are guessed by the number of their pins. */
  reference: string;
  footprint: string;
  filters: string;
  pinNumbers: readonly string[];
}

/** Package words in footprint names, longest first, and the style under which they are drawn. */
const PACKAGE_WORDS: readonly (readonly [string, PackageStyle])[] = [
  ["HTSSOP", "SOIC"],
  ["TSSOP", "SOIC"],
  ["HTSOP", "SOIC"],
  ["VSSOP", "SOIC"],
  ["MSOP", "SOIC"],
  ["SSOP", "SOIC"],
  ["QSOP", "SOIC"],
  ["TSOP", "other"],
  ["SOIC", "SOIC"],
  ["SOP", "SOIC"],
  ["SOJ", "SOIC"],
  ["LQFP", "QFP"],
  ["TQFP", "QFP"],
  ["PQFP", "QFP"],
  ["QFP", "QFP"],
  ["PLCC", "PLCC"],
  ["PDIP", "DIP"],
  ["CERDIP", "DIP"],
  ["DIP", "DIP"],
  ["SIP", "SIP"],
  ["TO", "TO"],
  ["SO", "SOIC"],
];

/** Pins of the dual in-line packages that were made in numbers. */
const DIP_COUNTS: readonly number[] = [4, 6, 8, 14, 16, 18, 20, 22, 24, 28, 32, 36, 40, 42, 48, 52, 64];

const CHIP_LETTERS = /^(U|IC)$/;

/**
 * The package in which a repairer most likely meets a part: the footprint named in the file, else the first dual
 * in-line filter, else the first filter that names a package, else by the number of pins.
 */
export function guessPackage(hint: PackageHint): PackageGuess {
  const pins = highestPin(hint.pinNumbers);
  const footprint = readPackageWord(hint.footprint.slice(hint.footprint.indexOf(":") + 1));
  if (footprint !== null) return { ...named(footprint, pins), basis: "footprint" };
  const filters = hint.filters
    .slice(0, 2_000)
    .split(" ")
    .map(readPackageWord)
    .filter((found) => found !== null);
  const filter = filters.find((found) => found.style === "DIP") ?? filters[0];
  if (filter !== undefined) return { ...named(filter, pins), basis: "filter" };
  const dip = DIP_COUNTS.find((count) => count >= pins);
  if (!CHIP_LETTERS.test(hint.reference) || pins < 4 || dip === undefined || hint.pinNumbers.length < dip / 2)
    return { name: `${pins} pins`, style: "other", pinCount: pins, basis: "pin-count" };
  return { name: `DIP-${dip}`, style: "DIP", pinCount: dip, basis: "pin-count" };
}

/**
 * Style and number of pins of a package as people write it: `DIP-20`, `dip20`, `PLCC 44`, `TSSOP-14`. The number is
 * null where the name has none or, as in `TO-220`, another one. Null when the text names no package we know.
 */
export function readPackageName(text: string): { style: PackageStyle; pinCount: number | null } | null {
  const spaced = text
    .trim()
    .replace(/^([A-Za-z]{2,6})(?=\d)/, "$1-")
    .replace(/\s+/g, "-");
  const found = readPackageWord(spaced);
  if (found === null) return null;
  return { style: found.style, pinCount: isOutlineNumber(found) ? null : found.digits };
}

interface PackageWord {
  word: string;
  style: PackageStyle;
  /** The number behind the word: pins, or the outline's number in TO packages. Null where a wildcard stands. */
  digits: number | null;
}

/** Reads `DIP?20*`, `SOIC*3.9x4.9mm*`, `TO-220-3_Vertical`, `LQFP-64_10x10mm`. */
function readPackageWord(text: string): PackageWord | null {
  const upper = text.slice(0, 100).toUpperCase().replace(/^[*]+/, "");
  const found = PACKAGE_WORDS.find(([word]) => upper.startsWith(word) && !/^[A-Z0-9]/.test(upper.slice(word.length)));
  if (found === undefined) return upper === "" ? null : otherPackage(upper);
  const [word, style] = found;
  const digits = /^[-?_](\d{1,3})(?![\d.X])/.exec(upper.slice(word.length))?.[1];
  return {
    word: word === "PDIP" || word === "CERDIP" ? "DIP" : word,
    style,
    digits: digits === undefined ? null : Number(digits),
  };
}

/** Packages that have a name but no drawing of ours: `SOT-23`, `QFN-32`. Everything else names no package. */
function otherPackage(upper: string): PackageWord | null {
  const found = /^([A-Z]{2,6})[-?_](\d{1,3})(?![\d.X])/.exec(upper);
  return found === null || !OTHER_WORDS.has(found[1] ?? "")
    ? null
    : { word: found[1] ?? "", style: "other", digits: Number(found[2]) };
}
const OTHER_WORDS: ReadonlySet<string> = new Set([
  "SOT",
  "TSOT",
  "SC",
  "QFN",
  "VQFN",
  "DFN",
  "WSON",
  "BGA",
  "UFBGA",
  "TFBGA",
  "LCC",
  "PGA",
]);

/** In `TO-220` and `SOT-23` the number is that of the outline, not of the pins. */
function isOutlineNumber({ word, style }: PackageWord): boolean {
  return style === "TO" || word === "SOT" || word === "TSOT" || word === "SC";
}

function named(found: PackageWord, pins: number): Omit<PackageGuess, "basis"> {
  const { word, style, digits } = found;
  if (isOutlineNumber(found)) return { name: digits === null ? word : `${word}-${digits}`, style, pinCount: pins };
  const evenUp = style === "DIP" || style === "SOIC" ? pins + (pins % 2) : pins;
  // Some filters name a package with fewer pins than the table has; the table is right.
  const stated = digits !== null && digits >= pins ? digits : null;
  const pinCount = stated ?? (style === "DIP" ? (DIP_COUNTS.find((count) => count >= pins) ?? evenUp) : evenUp);
  return { name: `${word}-${pinCount}`, style, pinCount };
}

/** Pins that a library leaves out are mostly free ones, so the highest number tells more than the count. */
function highestPin(pinNumbers: readonly string[]): number {
  let highest = 0;
  for (const number of pinNumbers) if (/^\d{1,4}$/.test(number)) highest = Math.max(highest, Number(number));
  return highest > 2 * pinNumbers.length ? pinNumbers.length : Math.max(highest, pinNumbers.length);
}
