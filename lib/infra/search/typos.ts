import { alignmentDistance } from "./edit-distance.ts";

/** Letters from which a word may have one and two typing errors. The other engine has the same numbers. */
export const TYPO_LETTERS = { one: 4, two: 8 } as const;

/** Most words that one misspelt word may stand for; the nearest, then the most used are kept. */
const MOST_CORRECTIONS = 12;

/** Most words that an unfinished word may become. */
const MOST_COMPLETIONS = 24;

/** From this many letters on an unfinished word is completed: one letter says nothing and costs the most. */
const SHORTEST_START = 2;

/** Endings that make another form of the same word, so that "beep" also finds "beeps". */
const ENDINGS = new Set(["s", "es", "ed", "d", "ing", "er", "y"]);

/** A word of the index that a query's word may stand for. */
export interface Relative {
  word: string;
  /** Typing errors between the two; 0 for a completion or another form. */
  errors: number;
}

/** How many typing errors a word of so many letters may have. */
export function errorsAllowed(letters: number): number {
  return letters >= TYPO_LETTERS.two ? 2 : letters >= TYPO_LETTERS.one ? 1 : 0;
}

/** One bit for each letter that occurs; letters beyond a to z share the last bits. */
function letterBits(word: string): number {
  let bits = 0;
  for (let at = 0; at < word.length; at++) bits |= 1 << ((word.charCodeAt(at) - 97) & 31);
  return bits;
}

function countBits(bits: number): number {
  let rest = bits - ((bits >>> 1) & 0x55555555);
  rest = (rest & 0x33333333) + ((rest >>> 2) & 0x33333333);
  return (((rest + (rest >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}

interface Entry {
  word: string;
  bits: number;
  /** Documents that hold the word. */
  uses: number;
}

/** The digit-free words of the index, kept by length. Codes are never in it, so codes are never "corrected". */
export class Vocabulary {
  readonly #entries = new Map<string, Entry>();
  readonly #byLength = new Map<number, Set<Entry>>();
  readonly #byStart = new Map<string, Set<Entry>>();

  get size(): number {
    return this.#entries.size;
  }

  has(word: string): boolean {
    return this.#entries.has(word);
  }

  /** Documents that hold the word. */
  uses(word: string): number {
    return this.#entries.get(word)?.uses ?? 0;
  }

  add(word: string): void {
    const known = this.#entries.get(word);
    if (known) {
      known.uses++;
      return;
    }
    const entry = { word, bits: letterBits(word), uses: 1 };
    this.#entries.set(word, entry);
    addTo(this.#byLength, word.length, entry);
    addTo(this.#byStart, word.slice(0, SHORTEST_START), entry);
  }

  remove(word: string): void {
    const entry = this.#entries.get(word);
    if (!entry || --entry.uses > 0) return;
    this.#entries.delete(word);
    this.#byLength.get(word.length)?.delete(entry);
    this.#byStart.get(word.slice(0, SHORTEST_START))?.delete(entry);
  }

  /** Words within the typing errors that the word's length allows, the nearest first; never the word itself. */
  corrections(word: string): Relative[] {
    const most = errorsAllowed(word.length);
    if (most === 0) return [];
    const bits = letterBits(word);
    const found: (Relative & { uses: number })[] = [];
    for (let length = word.length - most; length <= word.length + most; length++) {
      for (const entry of this.#byLength.get(length) ?? []) {
        // Each error changes at most two letters of the set, so most words are refused without aligning them.
        if (countBits(entry.bits ^ bits) > 2 * most || entry.word === word) continue;
        const errors = alignmentDistance(word, entry.word, most);
        if (errors <= most) found.push({ word: entry.word, errors, uses: entry.uses });
      }
    }
    return best(found, MOST_CORRECTIONS);
  }

  /** Other forms of the same word that are in the index: beep, beeps, beeping. */
  forms(word: string): Relative[] {
    const found: (Relative & { uses: number })[] = [];
    if (word.length < TYPO_LETTERS.one) return [];
    for (const ending of ENDINGS) {
      const longer = this.#entries.get(word + ending);
      if (longer) found.push({ word: longer.word, errors: 0, uses: longer.uses });
      const stem = word.endsWith(ending) ? word.slice(0, -ending.length) : "";
      const shorter = stem.length >= TYPO_LETTERS.one - 1 ? this.#entries.get(stem) : undefined;
      if (shorter) found.push({ word: shorter.word, errors: 0, uses: shorter.uses });
    }
    return best(found, MOST_CORRECTIONS);
  }

  /** Words that begin with these letters, the most used first; never the letters alone. */
  completions(start: string): Relative[] {
    if (start.length < SHORTEST_START) return [];
    const found: (Relative & { uses: number })[] = [];
    for (const { word, uses } of this.#byStart.get(start.slice(0, SHORTEST_START)) ?? []) {
      if (word.length > start.length && word.startsWith(start)) found.push({ word, errors: 0, uses });
    }
    return best(found, MOST_COMPLETIONS);
  }
}

function addTo<K>(map: Map<K, Set<Entry>>, key: K, entry: Entry): void {
  const set = map.get(key);
  if (set) set.add(entry);
  else map.set(key, new Set([entry]));
}

function best(found: readonly (Relative & { uses: number })[], most: number): Relative[] {
  return found
    .toSorted((a, b) => a.errors - b.errors || b.uses - a.uses || (a.word < b.word ? -1 : 1))
    .slice(0, most)
    .map(({ word, errors }) => ({ word, errors }));
}
