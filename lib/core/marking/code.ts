import {
  CYRILLIC_LETTERS,
  DIGIT_PREFIXES,
  FAMILY_SUFFIXES,
  MAKER_PREFIXES,
  ONE_LETTER_PREFIXES,
  PACKAGE_SUFFIXES,
} from "./affixes.ts";
import { clean } from "./clean.ts";

/** A code taken apart. All in normal form (lower case letters and digits). */
export interface CodeParts {
  /** Everything that was printed. */
  whole: string;
  /** The number that names the part: without maker prefix, package suffix and grade. Never empty when `whole` is not. */
  core: string;
  makerPrefix?: string;
  packageSuffix?: string;
  /** Speed or selection after a hyphen: `15` of TMS4164-15NL, `03` of VQ4-0061-03. */
  grade?: string;
}

/** Keys shorter than this say too little to stand alone. */
const SHORTEST_KEY = 3;

/** A code in more pieces than this is indexed whole, by pieces and by neighbours, not by every run of pieces. */
const MOST_PARTS_JOINED = 5;

/** Digits that must stand before a two-digit ending for it to be a grade; below, it is part of the number. */
const DIGITS_BEFORE_GRADE = 4;

/** Two digits, or a round three-digit number of nanoseconds, and perhaps a package behind it. */
const GRADE = /^(\d{1,2}|\d{2}[05])([a-z]{0,3})$/;

function latin(text: string): string {
  return text.replace(/[\u0430-\u044F]/g, (letter) => CYRILLIC_LETTERS[letter] ?? "");
}

function lowerCode(code: string): string {
  return latin(clean(code).toLowerCase()).normalize("NFKD");
}

/**
 * The normal form of a code: lower case, only `a` to `z` and `0` to `9`. Two spellings of one print have the same
 * form; `74LS244` and `74LS245` never do. Empty when nothing of a code is in the text.
 */
export function normalForm(code: string): string {
  return lowerCode(code).replace(/[^a-z0-9]/g, "");
}

function splitCode(code: string): string[] {
  return lowerCode(code)
    .replace(/\p{M}/gu, "")
    .split(/[^a-z0-9]+/)
    .filter((part) => part !== "");
}

function takePrefix(stem: string): { prefix?: string; rest: string } {
  const special = DIGIT_PREFIXES.find(
    ({ letters, before }) => stem.startsWith(letters) && before.test(stem.slice(letters.length)),
  );
  const letters =
    special?.letters ??
    MAKER_PREFIXES.find((prefix) => stem.startsWith(prefix) && /^\d/.test(stem.slice(prefix.length))) ??
    ONE_LETTER_PREFIXES.find((prefix) => stem.startsWith(prefix) && /^\d{4}/.test(stem.slice(prefix.length)));
  if (letters === undefined || stem.length - letters.length < SHORTEST_KEY) return { rest: stem };
  return { prefix: letters, rest: stem.slice(letters.length) };
}

function takeSuffix(stem: string): { suffix?: string; rest: string } {
  const bare = takePrefix(stem).rest;
  const family = FAMILY_SUFFIXES.find(
    ({ letters, after }) => bare.endsWith(letters) && after.test(bare.slice(0, -letters.length)),
  );
  const letters =
    family?.letters ??
    PACKAGE_SUFFIXES.find((suffix) => stem.endsWith(suffix) && /\d[ab]?$/.test(stem.slice(0, -suffix.length)));
  if (letters === undefined || stem.length - letters.length < SHORTEST_KEY) return { rest: stem };
  return { suffix: letters, rest: stem.slice(0, -letters.length) };
}

interface Endings {
  stem: string;
  suffix?: string;
  grade?: string;
}

/** Takes the grade and the package off the end of a code in several parts. */
function takeEndings(parts: readonly string[]): Endings {
  const rest = [...parts];
  const endings: Endings = { stem: "" };
  const last = rest.at(-1) ?? "";
  if (rest.length > 1 && PACKAGE_SUFFIXES.includes(last)) {
    endings.suffix = last;
    rest.pop();
  }
  const grade = GRADE.exec(rest.at(-1) ?? "");
  const before = rest.slice(0, -1).join("");
  if (rest.length > 1 && grade && before.replace(/\D/g, "").length >= DIGITS_BEFORE_GRADE) {
    endings.grade = grade[1] ?? "";
    if (grade[2]) endings.suffix ??= grade[2];
    rest.pop();
  }
  endings.stem = rest.join("");
  return endings;
}

/** Takes a code apart. Works on any text; text without letters or digits gives an empty `whole`. */
export function codeParts(code: string): CodeParts {
  const whole = normalForm(code);
  const endings = takeEndings(splitCode(code));
  let { stem, suffix } = endings;
  if (endings.grade === undefined && suffix === undefined) {
    const taken = takeSuffix(stem);
    stem = taken.rest;
    suffix = taken.suffix;
  }
  const { prefix, rest } = takePrefix(stem);
  return {
    whole,
    core: rest.length >= SHORTEST_KEY ? rest : whole,
    ...(prefix !== undefined && { makerPrefix: prefix }),
    ...(suffix !== undefined && { packageSuffix: suffix }),
    ...(endings.grade !== undefined && { grade: endings.grade }),
  };
}

/** Every run of neighbouring parts, joined; for codes in very many parts only single ones and pairs. */
function joinedRuns(parts: readonly string[]): { text: string; fromStart: boolean }[] {
  const longest = parts.length > MOST_PARTS_JOINED ? 2 : parts.length;
  const runs: { text: string; fromStart: boolean }[] = [];
  for (let from = 0; from < parts.length; from++) {
    for (let to = from + 1; to <= Math.min(parts.length, from + longest); to++) {
      runs.push({ text: parts.slice(from, to).join(""), fromStart: from === 0 });
    }
  }
  return runs;
}

/**
 * The keys under which a code is indexed, the whole form first: whole, without maker prefix, without package suffix,
 * joined across its hyphens, and by its parts of three or more characters. `SN74LS244N` → sn74ls244n, 74ls244n,
 * sn74ls244, 74ls244. Each key is `[a-z0-9]+`. Empty for text without letters or digits.
 */
export function codeKeys(code: string): string[] {
  const whole = normalForm(code);
  if (whole === "") return [];
  const parts = splitCode(code);
  const keys = new Set<string>();
  const add = (text: string, fromStart: boolean): void => {
    if (text.length < SHORTEST_KEY) return;
    keys.add(text);
    if (fromStart) keys.add(takePrefix(text).rest);
  };
  for (const { text, fromStart } of [{ text: whole, fromStart: true }, ...joinedRuns(parts)]) add(text, fromStart);
  const endings = takeEndings(parts);
  // Of a code with a grade the package goes with the grade, and the joined runs already hold the rest.
  if (endings.grade === undefined) add(endings.suffix === undefined ? takeSuffix(whole).rest : endings.stem, true);
  keys.delete(whole);
  return [whole, ...keys];
}

/** Digits with a unit of measure are readings, not codes. */
const READING = /^[+-]?\d+([.,]\d+)?(?:[pnumkMG]?(?:V|A|F|H|W|Hz|R|s|ohms?|Ohms?)|V(?:AC|DC|ac|dc)|°?C|%|[kKM]\d*)?$/;
/** Four digits and up, and perhaps a version letter that is no unit of measure: 7805, 4164, 2764A. */
const PLAIN_NUMBER = /^\d{4,6}[A-EG-QS-UX-Z]{0,2}$/;
const DATE_OR_TIME = /^\d{4}-\d{2}-\d{2}$|^\d{1,2}:\d{2}$/;
const CODE_SHAPE = /^[\p{L}0-9][\p{L}0-9/.-]*$/u;
/** A designator, with or without a pin: letters, at most three digits, then nothing or a pin. */
const PLACE_SHAPE = /^[A-Za-z]{1,3}\d{1,3}(?:[.:][A-Za-z]?\d{1,3})?$/;

/**
 * Whether a word of a text is probably the code of a part: it has a digit, at least three letters and digits, and is
 * neither a reading (`4.87V`), a place (`U7.14`), a date nor a small number.
 */
export function looksLikeCode(token: string): boolean {
  const text = clean(token);
  if (!/\d/.test(text) || !CODE_SHAPE.test(text) || normalForm(text).length < SHORTEST_KEY) return false;
  if (PLAIN_NUMBER.test(text)) return true;
  // A known maker's prefix before a number is a code (NE555, LM317), though it has the shape of a designator.
  if (PLACE_SHAPE.test(text) && !isPrefixedNumber(text)) return false;
  return !READING.test(text) && !DATE_OR_TIME.test(text);
}

function isPrefixedNumber(text: string): boolean {
  const { makerPrefix, core } = codeParts(text);
  return makerPrefix !== undefined && makerPrefix.length > 1 && core.length >= SHORTEST_KEY && !text.includes(".");
}
