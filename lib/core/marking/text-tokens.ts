import { clean, foldWord } from "./clean.ts";
import { codeKeys, normalForm } from "./code.ts";
import { readRef, refKeys } from "./designator.ts";
import { readActiveLow, readRail, signalKeys } from "./signal.ts";

/** What a token of a text is taken for. A `number` is a quantity or a bare number with a sign or decimals. */
export type TokenKind = "word" | "code" | "number" | "signal" | "ref";

/** A piece of a text that search can find, with where it stands (offsets of the text as given, end exclusive). */
export interface TextToken {
  kind: TokenKind;
  text: string;
  start: number;
  end: number;
  /** The exact key first. Words may hold letters of any script; all other keys are `[a-z0-9]+`. */
  keys: string[];
}

// Runs without white space and hard separators. A comma stays between digits, a colon between letters or digits.
const PIECE =
  /(?:[^\s,;:()[\]{}"“”„«»‹›<>|=→↔&?…^$~\uE000-\uF8FF]+|~\{[^\s{}]{1,20}\}|~|(?<=\d),(?=\d)|(?<=[\p{L}\p{N}]):(?=[\p{L}\p{N}]))+/gu;

/** Units that may stand behind their number with a space between. */
const UNITS = new Set(
  "v mv kv a ma ua hz khz mhz ghz ohm ohms kohm kohms mohm k m r kr mr f uf nf pf h mh uh s ms us ns w °c c vac vdc volt volts kb mb".split(
    " ",
  ),
);
const NUMBER = /^[+-]?\d{1,9}(?:[.,]\d{1,9})?$/;
const NUMBER_WITH_UNIT = /^[+-]?\d{1,9}[.,]\d{1,9}[a-z°%]{0,5}$/i;
const SIGNED_NUMBER = /^[+-]\d{1,9}$/;
const INTEGER_WITH_UNIT = /^\d{1,9}\s(\S+)$/;
/** Names such as R/W and I/O. */
const SLASHED_NAME = /^[A-Z]{1,3}\/[A-Z]{1,3}$/;
const SIGNAL_NAME = /^[A-Za-z][A-Za-z0-9_]{0,11}$/;
const PIN_WORD = /^(?:pin|leg)\.?$/i;
const PIN_NUMBER = /^[A-Za-z]?\d{1,3}$/;
/** The common case: a word of plain letters, perhaps with a full stop or comma that is cut off. */
const PLAIN_WORD = /^[a-zA-Z]+$/;
const WORD = /[\p{L}\p{M}]+(?:['’][\p{L}\p{M}]+)*/gu;
/** At most this many white-space characters may part the pieces of one token. */
const WIDEST_GAP = 2;

interface Piece {
  text: string;
  start: number;
  end: number;
}

function trimPiece(piece: Piece): Piece | null {
  if (PLAIN_WORD.test(piece.text)) return piece;
  const head = /^[.,'’‘`:_·•*?]+|^[-+/~!]+(?=[-+/~!])|^[!](?![A-Z])/.exec(piece.text)?.[0].length ?? 0;
  // Stars in front and behind are emphasis; one behind alone marks an active-low signal.
  const ending = piece.text.startsWith("*") ? /[.,'’‘`:!?_/+~*-]+$/ : /[.,'’‘`:!?_/+~-]+$/;
  const tail = ending.exec(piece.text.slice(head))?.[0].length ?? 0;
  const text = piece.text.slice(head, piece.text.length - tail);
  return text === "" ? null : { text, start: piece.start + head, end: piece.end - tail };
}

/** Two refs with a slash (U3/U4), times (12:30) and reading lists (612,610,611) are several pieces. */
function splitPiece(piece: Piece): Piece[] {
  if (!/[:/,]/.test(piece.text)) return [piece];
  const separator = [":", "/", ","].find((mark) => {
    const parts = piece.text.split(mark);
    if (parts.length < 2) return false;
    if (mark === ":") return readRef(piece.text) === null;
    if (mark === ",") return parts.length > 2;
    return parts.every((part) => readRef(part)?.style === "lettered");
  });
  if (separator === undefined) return [piece];
  let start = piece.start;
  return piece.text.split(separator).flatMap((text) => {
    const part = { text, start, end: start + text.length };
    start = part.end + separator.length;
    return text === "" ? [] : splitPiece(part);
  });
}

function pieces(text: string): Piece[] {
  return [...text.matchAll(PIECE)].flatMap((match) => {
    const whole = { text: match[0], start: match.index, end: match.index + match[0].length };
    return splitPiece(whole).flatMap((piece) => trimPiece(piece) ?? []);
  });
}

/** Joins a number with its unit (`+5 V`) and a designator with its pin (`U12 pin 26`). */
function mergeNeighbours(text: string, list: readonly Piece[]): Piece[] {
  const merged: Piece[] = [];
  const close = (a: Piece, b: Piece): boolean =>
    b.start - a.end <= WIDEST_GAP && /^\s+$/.test(text.slice(a.end, b.start));
  const joined = (a: Piece, b: Piece): Piece => ({ text: text.slice(a.start, b.end), start: a.start, end: b.end });
  for (let at = 0; at < list.length; at++) {
    const [one, two, three] = [list[at], list[at + 1], list[at + 2]];
    if (!one) break;
    if (PLAIN_WORD.test(one.text)) {
      merged.push(one);
    } else if (two && three && PIN_WORD.test(two.text) && isPartWithoutPin(one.text) && PIN_NUMBER.test(three.text)) {
      merged.push(joined(one, three));
      at += 2;
    } else if (two && NUMBER.test(clean(one.text)) && UNITS.has(clean(two.text).toLowerCase()) && close(one, two)) {
      merged.push(joined(one, two));
      at += 1;
    } else {
      merged.push(one);
    }
  }
  return merged;
}

function isPartWithoutPin(text: string): boolean {
  const ref = readRef(text);
  return ref !== null && ref.pin === undefined;
}

/** `3.58 MHz` → 3p58mhz, 3p58: the decimal point is kept, so that 4.87 is not 487. */
function numberKeys(text: string): string[] {
  const form = normalForm(text.replace(/(\d)[.,](?=\d)/g, "$1p"));
  const value = /^\d+(?:p\d+)?/.exec(form)?.[0] ?? form;
  return unique([form, value]);
}

function unique(keys: readonly string[]): string[] {
  return [...new Set(keys)].filter((key) => key !== "");
}

function token(kind: TokenKind, piece: Piece, keys: readonly string[]): TextToken[] {
  const kept = unique(keys);
  return kept.length === 0 ? [] : [{ kind, ...piece, keys: kept }];
}

function isMarkedSignal(plain: string): boolean {
  if (SLASHED_NAME.test(plain)) return true;
  const { name, low } = readActiveLow(plain);
  // A small n before a capital is a word's spelling as often as a signal's, and the word finds both.
  return low && SIGNAL_NAME.test(name) && !/^n[A-Z]/.test(plain) && !/_[nN]$/.test(plain);
}

function digitToken(piece: Piece, plain: string): TextToken[] {
  const rail = readRail(plain);
  if (rail) {
    // Without its sign a negative rail would be found as the positive one.
    const unsigned = rail.sign === "+" ? [normalForm(plain), ...numberKeys(plain)] : [];
    return token("signal", piece, [...signalKeys(plain), ...unsigned]);
  }
  if (NUMBER_WITH_UNIT.test(plain) || SIGNED_NUMBER.test(plain)) return token("number", piece, numberKeys(plain));
  const spaced = INTEGER_WITH_UNIT.exec(plain);
  if (spaced && UNITS.has((spaced[1] ?? "").toLowerCase())) return token("number", piece, numberKeys(plain));
  if (NUMBER.test(plain.split(" ")[0] ?? "") && plain.includes(" ")) return token("number", piece, numberKeys(plain));
  if (readRef(plain)) return token("ref", piece, [...refKeys(plain), ...codeKeys(plain)]);
  if (isMarkedSignal(plain)) return token("signal", piece, [...signalKeys(plain), ...codeKeys(plain)]);
  return token("code", piece, codeKeys(plain));
}

function wordTokens(piece: Piece): TextToken[] {
  return [...piece.text.matchAll(WORD)].flatMap((match) => {
    const start = piece.start + match.index;
    return token("word", { text: match[0], start, end: start + match[0].length }, [foldWord(match[0])]);
  });
}

/**
 * The tokens of a text in order of their place, with the keys under which each is indexed. The indexer, the query
 * builder and the highlighter all use this one function. Linear in the length of the text.
 */
export function textTokens(text: string): TextToken[] {
  return mergeNeighbours(text, pieces(text)).flatMap((piece) => {
    if (PLAIN_WORD.test(piece.text)) return [{ kind: "word" as const, ...piece, keys: [piece.text.toLowerCase()] }];
    const plain = clean(piece.text);
    if (/[0-9]/.test(plain)) {
      const found = digitToken(piece, plain);
      return found.length > 0 ? found : wordTokens(piece);
    }
    return isMarkedSignal(plain)
      ? token("signal", piece, [...signalKeys(plain), ...plain.split("/").map(normalForm)])
      : wordTokens(piece);
  });
}
