import { codeKeys, looksLikeCode, normalForm, refKeys, signalKeys, textTokens } from "#lib/core/marking/index.ts";
import { LONGEST_BODY } from "./types.ts";
import type { SearchDocument } from "./types.ts";

/** The fields of the index. `whole` holds only the exact forms of a record's own codes. */
export const FIELDS = ["whole", "codes", "title", "symptoms", "refs", "signals", "board", "body"] as const;
export type Field = (typeof FIELDS)[number];

/** A document as the index holds it: the terms of each field with a space between. */
export type IndexedDocument = { id: string } & Record<Field, string>;

/** What goes into the index for one document, and what its lists of words and keys need. */
export interface DocumentTerms {
  indexed: IndexedDocument;
  /** Prose words: may be misspelt in a query. */
  words: Set<string>;
  /** Everything else: codes, places, signals, numbers. Matched exactly or not at all. */
  keys: Set<string>;
}

/** A place that is none in common spelling is still found as a code is. */
function placeKeys(text: string): string[] {
  const keys = refKeys(text);
  return keys.length > 0 ? keys : codeKeys(text);
}

/**
 * Exact forms of the codes that a record is about: of chips and codes their own ones, and the code that begins the title.
 * A case or a board only mentions its codes, so the page of the part stands above it.
 */
function wholeForms({ kind, title, codes }: SearchDocument): string[] {
  const isPart = kind === "chip" || kind === "code";
  const first = title.split(" ", 1)[0] ?? "";
  const named = isPart && looksLikeCode(first) ? [first] : [];
  const alone = looksLikeCode(title) ? [title] : [];
  return [...new Set([...(isPart ? codes : []), ...named, ...alone].map(normalForm))].filter((form) => form !== "");
}

/** The terms of a document. Depends on nothing else, so that the same document can be taken out again. */
export function documentTerms(document: SearchDocument): DocumentTerms {
  const words = new Set<string>();
  const keys = new Set<string>();
  const prose = (text: string): string => {
    const terms: string[] = [];
    for (const token of textTokens(text)) {
      for (const key of token.keys) {
        terms.push(key);
        (token.kind === "word" ? words : keys).add(key);
      }
    }
    return terms.join(" ");
  };
  const exact = (texts: readonly string[], keysOf: (text: string) => string[]): string => {
    const terms = texts.flatMap(keysOf);
    for (const term of terms) keys.add(term);
    return terms.join(" ");
  };
  const indexed: IndexedDocument = {
    id: document.id,
    whole: exact(wholeForms(document), (form) => [form]),
    codes: exact(document.codes, codeKeys),
    title: prose(document.title),
    symptoms: prose(document.symptoms.join(" ; ")),
    refs: exact(document.refs, placeKeys),
    signals: exact(document.signals, signalKeys),
    board: prose(document.board?.name ?? ""),
    body: prose(document.body.slice(0, LONGEST_BODY)),
  };
  return { indexed, words, keys };
}
