import { codeParts } from "./code.ts";
import { textTokens } from "./text-tokens.ts";
import type { TextToken, TokenKind } from "./text-tokens.ts";

/** One thing that a query asks for. */
export interface QueryTerm {
  kind: TokenKind;
  /** As typed. */
  text: string;
  /** Any of these is an exact match. */
  keys: string[];
  /** Tried when the exact keys find too little: the core of a code, the part of a pin, a signal without its mark. */
  fallback: string[];
}

/** Neighbouring terms read as one code: `VQ4 0061` → vq40061 for the terms from 0 to 2. */
export interface JoinedCode {
  /** Index of the first term and the index after the last. */
  from: number;
  to: number;
  whole: string;
  core: string;
}

/** A query taken apart. */
export interface QueryTerms {
  terms: QueryTerm[];
  /** Longest first: the first one that is in the index says how its terms were meant. */
  joined: JoinedCode[];
  /** Whether the last term may be unfinished: nothing stands behind it. */
  typing: boolean;
}

/** Words of a query beyond this many are not looked at; another engine has the same limit. */
export const MOST_QUERY_TERMS = 10;

/** Characters of a query that are read. */
export const LONGEST_QUERY = 400;

/** At most this many neighbours are tried as one code (`74 LS 244 N`). */
const MOST_JOINED = 4;

/** A piece of a code that has no digit is short: LS, HCT, SN. */
const LETTERS_OF_A_CODE = /^[a-z]{1,4}$/;

function queryTerm({ kind, text, keys }: TextToken): QueryTerm {
  const [exact = "", ...others] = keys;
  switch (kind) {
    case "word":
    case "number":
      return { kind, text, keys: [exact], fallback: [] };
    case "code": {
      const { core } = codeParts(text);
      return { kind, text, keys: [exact], fallback: core === exact ? [] : [core] };
    }
    case "ref": {
      // A pin behind a hyphen may also be a code spelt that way: C64-01.
      const whole = codeParts(text).whole;
      const part = others[0];
      return {
        kind,
        text,
        keys: [...new Set([exact, whole])],
        fallback: part === undefined || part === whole || !exact.startsWith(part) ? [] : [part],
      };
    }
    case "signal":
      return { kind, text, keys: [exact], fallback: exact.startsWith("neg") ? [] : others.slice(0, 1) };
  }
}

function isPieceOfCode(term: QueryTerm): boolean {
  const key = term.keys[0] ?? "";
  return term.kind === "word" ? LETTERS_OF_A_CODE.test(key) : term.kind !== "signal" && !/[.,]/.test(term.text);
}

function hasDigit(term: QueryTerm): boolean {
  return /\d/.test(term.keys[0] ?? "");
}

function joinedCodes(terms: readonly QueryTerm[]): JoinedCode[] {
  const joined: JoinedCode[] = [];
  for (let length = Math.min(MOST_JOINED, terms.length); length >= 2; length--) {
    for (let from = 0; from + length <= terms.length; from++) {
      const window = terms.slice(from, from + length);
      if (!window.every(isPieceOfCode) || !window.some(hasDigit)) continue;
      const { whole, core } = codeParts(window.map((term) => term.text).join(" "));
      joined.push({ from, to: from + length, whole, core });
    }
  }
  return joined;
}

/**
 * Takes a query apart into prose words, codes (whole form, core as fallback, neighbours tried joined), signals and
 * places. Marks of exclusion and quotes mean nothing: `-12V` is a rail. At most ten terms.
 */
export function queryTerms(text: string): QueryTerms {
  const asked = text.slice(0, LONGEST_QUERY);
  const terms = textTokens(asked).slice(0, MOST_QUERY_TERMS).map(queryTerm);
  return { terms, joined: joinedCodes(terms), typing: /[\p{L}\p{N}]$/u.test(asked) };
}
