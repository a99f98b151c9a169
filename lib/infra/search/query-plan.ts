import type { Query } from "minisearch";
import { queryTerms } from "#lib/core/marking/index.ts";
import type { QueryTerm } from "#lib/core/marking/index.ts";
import type { IndexStore } from "./index-store.ts";

/** How much a term counts that is not exactly what was typed. Chosen by hand; the order is what matters. */
const WEIGHTS = {
  exact: 1,
  /** beep for beeps. */
  form: 0.8,
  /** The last word while it is typed. */
  completion: 0.5,
  oneError: 0.6,
  twoErrors: 0.4,
  /** The core of a code, the part of a pin. */
  fallback: 0.4,
} as const;

/** A word that more than this share of the documents hold tells little: relaxed, it is left out beside rarer ones. */
const COMMON_SHARE = 0.25;

/** In an index smaller than this, a word that many documents hold may still be the one that was meant. */
const FEW_DOCUMENTS = 100;

/** One thing asked for: any of these terms answers it. */
export interface Wanted {
  /** Term of the index → weight. Empty: nothing in the index answers it. */
  terms: Map<string, number>;
  /** Codes, places, signals and numbers stay required when the words are relaxed. */
  isWord: boolean;
  /** In so many documents that it hardly tells them apart. */
  isCommon: boolean;
  /** The exact key asked for. */
  key: string;
  /** Neighbours that are also tried as separate words of the query. */
  parts: Wanted[];
}

/** A query worked out against an index: strictly as typed, and relaxed for when that finds too little. */
export interface QueryPlan {
  strict: Wanted[];
  relaxed: Wanted[];
}

type Strictness = "strict" | "relaxed";

function isKnown(store: IndexStore, key: string): boolean {
  return store.words.has(key) || store.keys.has(key);
}

function addTerms(terms: Map<string, number>, found: Iterable<string>, weight: number): void {
  for (const term of found) if (!terms.has(term)) terms.set(term, weight);
}

function addCorrections(terms: Map<string, number>, store: IndexStore, word: string): void {
  for (const { word: correction, errors } of store.words.corrections(word)) {
    addTerms(terms, [correction], errors === 1 ? WEIGHTS.oneError : WEIGHTS.twoErrors);
  }
}

function wordTerms(store: IndexStore, word: string, unfinished: boolean, how: Strictness): Map<string, number> {
  const terms = new Map<string, number>();
  if (isKnown(store, word)) terms.set(word, WEIGHTS.exact);
  addTerms(
    terms,
    store.words.forms(word).map((form) => form.word),
    WEIGHTS.form,
  );
  if (unfinished) {
    const completions = [...store.words.completions(word), ...store.keys.completions(word)];
    addTerms(
      terms,
      completions.map((completion) => completion.word),
      WEIGHTS.completion,
    );
  }
  if (how === "relaxed" || terms.size === 0) addCorrections(terms, store, word);
  return terms;
}

/** Codes have no typing errors: exact, else while typing what begins so, else (or relaxed) the fallback. */
function keyTerms(store: IndexStore, term: QueryTerm, unfinished: boolean, how: Strictness): Map<string, number> {
  const terms = new Map<string, number>();
  addTerms(
    terms,
    term.keys.filter((key) => isKnown(store, key)),
    WEIGHTS.exact,
  );
  if (terms.size === 0 && unfinished) {
    const completions = store.keys.completions(term.keys[0] ?? "");
    addTerms(
      terms,
      completions.map((completion) => completion.word),
      WEIGHTS.completion,
    );
  }
  if (terms.size === 0 || how === "relaxed") {
    addTerms(
      terms,
      term.fallback.filter((key) => isKnown(store, key)),
      WEIGHTS.fallback,
    );
  }
  return terms;
}

function wantedTerm(store: IndexStore, term: QueryTerm, unfinished: boolean, how: Strictness): Wanted {
  const key = term.keys[0] ?? "";
  const isWord = term.kind === "word";
  const terms = isWord ? wordTerms(store, key, unfinished, how) : keyTerms(store, term, unfinished, how);
  const isCommon = isWord && store.size >= FEW_DOCUMENTS && store.words.uses(key) > COMMON_SHARE * store.size;
  return { terms, isWord, isCommon, key, parts: [] };
}

/** Works a query out against what is in the index. */
export function planQuery(store: IndexStore, text: string): QueryPlan {
  const { terms, joined, typing } = queryTerms(text);
  const plan = (how: Strictness): Wanted[] => {
    const isLast = (to: number): boolean => typing && to === terms.length;
    const wanted = terms.map((term, at) => wantedTerm(store, term, isLast(at + 1), how));
    const result: (Wanted | null)[] = [...wanted];
    for (const { from, to, whole, core } of joined) {
      if (result.slice(from, to).some((one) => one === null || one.parts.length > 0)) continue;
      const asCode: QueryTerm = { kind: "code", text: whole, keys: [whole], fallback: core === whole ? [] : [core] };
      const whatJoined = wantedTerm(store, asCode, isLast(to), how);
      if (whatJoined.terms.size === 0) continue;
      result.fill(null, from, to);
      result[from] = { ...whatJoined, parts: wanted.slice(from, to) };
    }
    return result.filter((one) => one !== null);
  };
  return { strict: plan("strict"), relaxed: plan("relaxed") };
}

function anyOf(terms: ReadonlyMap<string, number>): Query {
  return {
    combineWith: "OR",
    queries: [[...terms.keys()].join(" ")],
    boostTerm: (term: string) => terms.get(term) ?? 1,
  };
}

/** Documents that answer this one. */
export function one(wanted: Wanted): Query {
  if (wanted.parts.length === 0 || wanted.parts.some((part) => part.terms.size === 0)) return anyOf(wanted.terms);
  return {
    combineWith: "OR",
    queries: [anyOf(wanted.terms), { combineWith: "AND", queries: wanted.parts.map((part) => anyOf(part.terms)) }],
  };
}

/** Documents that answer everything asked for; null when something is not in the index at all. */
export function allOf(wanted: readonly Wanted[]): Query | null {
  if (wanted.length === 0 || wanted.some((each) => each.terms.size === 0)) return null;
  return { combineWith: "AND", queries: wanted.map(one) };
}

/** The one that the fewest documents answer. */
export function rarest(store: IndexStore, wanted: readonly Wanted[]): Wanted | undefined {
  const uses = (each: Wanted): number =>
    store.uses(each.terms.keys()) + each.parts.reduce((sum, part) => sum + store.uses(part.terms.keys()), 0);
  return wanted.toSorted((a, b) => uses(a) - uses(b))[0];
}

/** Of what was asked for, what tells documents apart: in the index, and not common beside something rarer. */
export function telling(wanted: readonly Wanted[]): Wanted[] {
  const found = wanted.filter((each) => each.terms.size > 0);
  const rarer = found.filter((each) => !each.isCommon);
  return rarer.length > 0 ? rarer : found;
}

/** Documents that answer any of these. */
export function someOf(wanted: readonly Wanted[]): Query {
  return { combineWith: "OR", queries: wanted.map(one) };
}

/** Whether a document that holds these terms answers what was asked for. */
export function isAnswered(wanted: Wanted, terms: ReadonlySet<string>): boolean {
  for (const term of wanted.terms.keys()) if (terms.has(term)) return true;
  return wanted.parts.length > 0 && wanted.parts.every((part) => part.terms.size > 0 && isAnswered(part, terms));
}
