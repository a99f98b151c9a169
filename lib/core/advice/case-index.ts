import type { WeightedFeature } from "./features.ts";
import { createIntLists } from "./int-lists.ts";
import { createIntTable } from "./int-table.ts";
import { createTopK, type Ranked } from "./top-k.ts";
import { rarity as idf } from "./weights.ts";

export interface SearchOptions {
  /** A case that is not to answer, such as the one in hand. */
  exclude?: number;
  /** Whether the asker may see a case; asked only of cases that would be among the best. */
  allowed?: (caseId: number) => boolean;
  /** How telling a feature is that `holders` of `cases` have; IDF unless told otherwise. */
  rarity?: (holders: number, cases: number) => number;
}

/** Past cases by their features, in memory. Case numbers are 32-bit integers, as the club counts its cases. */
export interface CaseIndex {
  /** Adds a case, or replaces its features. */
  put(caseId: number, features: ArrayLike<number>): void;
  /** Takes a case out; nothing happens where it is not in. */
  remove(caseId: number): void;
  /** The `k` cases that agree best, best first, equal scores by smaller number. Scores of zero or less do not answer. */
  search(query: readonly WeightedFeature[], k: number, options?: SearchOptions): Ranked[];
  /** The score of a case that agrees in everything: the scale on which scores can be read. */
  best(query: readonly WeightedFeature[], options?: Pick<SearchOptions, "rarity">): number;
  readonly size: number;
  /** Memory held by the typed arrays, in bytes. */
  memoryBytes(): number;
}

const FIRST_CASES = 64;

/** Each feature once, ascending: the order in which scores are added up. A feature given twice keeps its larger weights. */
function inOrder(query: readonly WeightedFeature[]): WeightedFeature[] {
  const once = new Map<number, WeightedFeature>();
  for (const feature of query) {
    const id = feature.id | 0;
    const known = once.get(id);
    once.set(id, {
      id,
      weight: Math.max(feature.weight, known?.weight ?? 0),
      against: Math.max(feature.against, known?.against ?? 0),
    });
  }
  return [...once.values()].toSorted((a, b) => a.id - b.id);
}

function isAscending(features: ArrayLike<number>): boolean {
  for (let at = 0; at < features.length; at++) {
    const feature = features[at] ?? 0;
    if (feature !== (feature | 0) || (at > 0 && feature <= (features[at - 1] ?? 0))) return false;
  }
  return true;
}

/** The features as distinct 32-bit integers; stored ones are already so. */
function distinct(features: ArrayLike<number>): ArrayLike<number> {
  return isAscending(features) ? features : [...new Set(Array.from(features, (feature) => feature | 0))];
}

/**
 * An inverted index: for each feature the list of cases that have it, in typed arrays.
 *
 * Scores are summed in 32-bit floats, and float sums depend on their order. That order is fixed here: a case takes at
 * most two amounts from each feature of the query (for, then against), in ascending order of the feature. How the lists
 * are ordered inside, and hence when a case arrived, can not show; a plain loop in the same order gives equal bits.
 *
 * A feature that no case has any more keeps its empty list: few do, and the index is rebuilt at each start.
 */
export function createCaseIndex(): CaseIndex {
  const listOfFeature = createIntTable();
  /** For each feature, the rows of the cases that have it. */
  const postings = createIntLists();
  /** For each row, pairs: a list of `postings`, and where in it the row stands (so that it can be taken out at once). */
  const forward = createIntLists();
  const rowOfCase = new Map<number, number>();
  const freeRows: number[] = [];
  let caseOfRow = new Int32Array(FIRST_CASES);
  let scores = new Float32Array(FIRST_CASES);
  let touched = new Int32Array(FIRST_CASES);
  let rows = 0;
  let touchedCount = 0;

  function takeRow(): number {
    const reused = freeRows.pop();
    if (reused !== undefined) return reused;
    if (rows === caseOfRow.length) {
      const wider = new Int32Array(rows * 2);
      wider.set(caseOfRow);
      caseOfRow = wider;
      scores = new Float32Array(rows * 2);
      touched = new Int32Array(rows * 2);
    }
    forward.create();
    return rows++;
  }

  function listFor(feature: number): number {
    const known = listOfFeature.get(feature);
    if (known >= 0) return known;
    const list = postings.create();
    listOfFeature.set(feature, list);
    return list;
  }

  /** Tells a row that its entry in `list` now stands at `position`. */
  function moveEntry(row: number, list: number, position: number): void {
    const items = forward.items();
    const start = forward.start(row);
    const end = start + forward.length(row);
    for (let at = start; at < end; at += 2) {
      if (items[at] !== list) continue;
      items[at + 1] = position;
      return;
    }
  }

  /** Takes one entry out of a list; the list's last entry takes its place. */
  function takeOut(list: number, position: number): void {
    const items = postings.items();
    const start = postings.start(list);
    const last = postings.length(list) - 1;
    postings.truncate(list, last);
    if (position === last) return;
    const moved = items[start + last] ?? 0;
    items[start + position] = moved;
    moveEntry(moved, list, position);
  }

  function remove(caseId: number): void {
    const row = rowOfCase.get(caseId);
    if (row === undefined) return;
    const items = forward.items();
    const start = forward.start(row);
    const end = start + forward.length(row);
    for (let at = start; at < end; at += 2) takeOut(items[at] ?? 0, items[at + 1] ?? 0);
    forward.truncate(row, 0);
    rowOfCase.delete(caseId);
    freeRows.push(row);
  }

  function put(caseId: number, features: ArrayLike<number>): void {
    remove(caseId);
    const row = takeRow();
    rowOfCase.set(caseId, row);
    caseOfRow[row] = caseId;
    const unique = distinct(features);
    forward.reserve(row, unique.length * 2);
    for (let at = 0; at < unique.length; at++) {
      const list = listFor(unique[at] ?? 0);
      forward.push(row, list);
      forward.push(row, postings.length(list));
      postings.push(list, row);
    }
  }

  /** A row can be noted twice when its score came back to zero; collecting empties it the first time. */
  function note(row: number): void {
    if (touchedCount === touched.length) {
      const wider = new Int32Array(touched.length * 2);
      wider.set(touched);
      touched = wider;
    }
    touched[touchedCount++] = row;
  }

  function addToAll(list: number, amount: number): void {
    const items = postings.items();
    const start = postings.start(list);
    const end = start + postings.length(list);
    for (let at = start; at < end; at++) {
      const row = items[at] ?? 0;
      const before = scores[row] ?? 0;
      if (before === 0) note(row);
      scores[row] = before + amount;
    }
  }

  const holders = (feature: number) => {
    const list = listOfFeature.get(feature);
    return list < 0 ? 0 : postings.length(list);
  };

  function collect(k: number, { exclude, allowed }: SearchOptions): Ranked[] {
    const top = createTopK(k);
    for (let at = 0; at < touchedCount; at++) {
      const row = touched[at] ?? 0;
      const item = { case: caseOfRow[row] ?? 0, score: scores[row] ?? 0 };
      scores[row] = 0;
      if (item.score <= 0 || !top.accepts(item) || item.case === exclude) continue;
      if (allowed === undefined || allowed(item.case)) top.add(item);
    }
    touchedCount = 0;
    return top.items();
  }

  /** Empties what a search left behind whose `allowed` threw. */
  function forgetTouched(): void {
    for (let at = 0; at < touchedCount; at++) scores[touched[at] ?? 0] = 0;
    touchedCount = 0;
  }

  return {
    put,
    remove,
    search(query, k, options = {}) {
      forgetTouched();
      const rarity = options.rarity ?? idf;
      const addIfHeld = (feature: number, weight: number) => {
        const count = weight === 0 ? 0 : holders(feature);
        if (count > 0) addToAll(listOfFeature.get(feature), Math.fround(weight * rarity(count, rowOfCase.size)));
      };
      for (const { id, weight, against } of inOrder(query)) {
        addIfHeld(id, weight);
        addIfHeld(id ^ 1, -against);
      }
      return collect(k, options);
    },
    best(query, { rarity = idf } = {}) {
      return inOrder(query).reduce((sum, { id, weight }) => sum + weight * rarity(holders(id), rowOfCase.size), 0);
    },
    get size() {
      return rowOfCase.size;
    },
    memoryBytes() {
      const rowBytes = caseOfRow.byteLength + scores.byteLength + touched.byteLength;
      // A number-to-number entry of a Map takes some 40 bytes (Node 20, 64 bit, measured roughly).
      return listOfFeature.bytes() + postings.bytes() + forward.bytes() + rowBytes + rowOfCase.size * 40;
    },
  };
}
