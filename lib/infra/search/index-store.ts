import MiniSearch from "minisearch";
import type { Query } from "minisearch";
import { withoutPrivateUse } from "#lib/core/marking/index.ts";
import { documentTerms, FIELDS } from "./document-terms.ts";
import type { Field, IndexedDocument } from "./document-terms.ts";
import type { SearchDocument } from "./types.ts";
import { Vocabulary } from "./typos.ts";

/** How much a match in each field counts beside one in the body. Chosen by hand: a record's own name and codes first. */
const FIELD_WEIGHTS: Record<Field, number> = {
  /** The exact form of a code the record is about: puts the page of a code above the cases that mention it. */
  whole: 8,
  codes: 4,
  title: 3,
  symptoms: 3,
  refs: 2.5,
  signals: 2.5,
  board: 2,
  body: 1,
};

/** Share by which one point of a document's boost lifts its score, and the points that count. */
const BOOST = { step: 0.03, most: 10 } as const;

/** One match of a query. */
export interface Match {
  document: SearchDocument;
  score: number;
  /** Terms of the document that the query found. */
  terms: readonly string[];
}

function splitTerms(text: string): string[] {
  return text === "" ? [] : text.split(" ");
}

/** Strips what would forge marks. Everything else is shown as it was written. */
function showable(document: SearchDocument): SearchDocument {
  return {
    ...document,
    title: withoutPrivateUse(document.title),
    body: withoutPrivateUse(document.body),
    codes: document.codes.map(withoutPrivateUse),
  };
}

/** The documents, their terms and the lists of known words and keys, kept in step. Every step is synchronous. */
export class IndexStore {
  readonly #documents = new Map<string, SearchDocument>();
  readonly #mini = new MiniSearch<IndexedDocument>({
    fields: [...FIELDS],
    tokenize: splitTerms,
    processTerm: (term) => term,
    searchOptions: { boost: FIELD_WEIGHTS, prefix: false, fuzzy: false },
    autoVacuum: false,
  });
  /** Prose words of all documents. */
  readonly words = new Vocabulary();
  /** Codes, places, signals and numbers of all documents. */
  readonly keys = new Vocabulary();

  get size(): number {
    return this.#documents.size;
  }

  documents(): IterableIterator<SearchDocument> {
    return this.#documents.values();
  }

  put(document: SearchDocument): void {
    this.drop(document.id);
    const shown = showable(document);
    const { indexed, words, keys } = documentTerms(shown);
    this.#mini.add(indexed);
    this.#documents.set(shown.id, shown);
    for (const word of words) this.words.add(word);
    for (const key of keys) this.keys.add(key);
  }

  drop(id: string): void {
    const document = this.#documents.get(id);
    if (!document) return;
    const { indexed, words, keys } = documentTerms(document);
    this.#mini.remove(indexed);
    this.#documents.delete(id);
    for (const word of words) this.words.remove(word);
    for (const key of keys) this.keys.remove(key);
  }

  /** How many documents hold these terms, counted with repetition: cheap, and enough to tell rare from common. */
  uses(terms: Iterable<string>): number {
    let uses = 0;
    for (const term of terms) uses += this.words.uses(term) + this.keys.uses(term);
    return uses;
  }

  /** All documents that match, best first; with `among`, only of those. */
  find(query: Query, among?: ReadonlySet<string>): Match[] {
    const matches: Match[] = [];
    // Refusing a document here saves the library from making a result of it, which is what costs.
    const found = this.#mini.search(query, among ? { boostDocument: (id) => (among.has(String(id)) ? 1 : 0) } : {});
    for (const { id, score, terms } of found) {
      const document = this.#documents.get(String(id));
      if (document) matches.push({ document, score: score * lift(document.boost), terms });
    }
    return matches.sort((a, b) => b.score - a.score || byRank(a.document, b.document));
  }
}

function lift(boost: number): number {
  return 1 + BOOST.step * Math.min(Math.max(boost, 0), BOOST.most);
}

/** Among equals the better confirmed first, then the newer, then by id, so that pages of hits never overlap. */
export function byRank(a: SearchDocument, b: SearchDocument): number {
  return b.boost - a.boost || b.updatedAt - a.updatedAt || (a.id < b.id ? -1 : 1);
}
