import { answer } from "./answer.ts";
import { IndexStore } from "./index-store.ts";
import { SEARCH_KINDS, SearchError } from "./types.ts";
import type {
  RebuildProgress,
  SearchAnswer,
  SearchDocument,
  SearchEngine,
  SearchHealth,
  SearchKind,
  SearchQuery,
  SearchStats,
} from "./types.ts";

/** Work goes on for so long before others get their turn; the last document of a slice may add about as much again. */
const SLICE_MS = 5;

/** Documents between two reports of a rebuild. */
const REPORT_EVERY = 100;

const ID = /^[A-Za-z0-9_-]{1,500}$/;

/** Lets timers and requests run whenever a slice of work is over. */
function slices(): () => Promise<void> {
  let begun = performance.now();
  return async () => {
    if (performance.now() - begun < SLICE_MS) return;
    await new Promise((resolve) => {
      setImmediate(resolve);
    });
    begun = performance.now();
  };
}

/** The search inside the program: in memory, built at start from the database, comfortable to about 10,000 cases. */
class EmbeddedSearch implements SearchEngine {
  readonly name = "embedded";
  #live = new IndexStore();
  /** The index that a rebuild fills, with the ids written since it began: those are newer than what it reads. */
  #building: { store: IndexStore; written: Set<string> } | null = null;
  /** Writes are applied one call after the other, in the order of the calls. */
  #lastWrite: Promise<void> = Promise.resolve();
  #lastRebuild: Promise<void> = Promise.resolve();

  upsert(documents: readonly SearchDocument[]): Promise<void> {
    const wrong = documents.find(({ id }) => !ID.test(id));
    if (wrong) return Promise.reject(new SearchError("bad-query", `“${wrong.id}” cannot be the id of a document.`));
    return this.#write(documents, (store, document) => {
      store.put(document);
      return document.id;
    });
  }

  remove(ids: readonly string[]): Promise<void> {
    return this.#write(ids, (store, id) => {
      store.drop(id);
      return id;
    });
  }

  #write<T>(items: readonly T[], apply: (store: IndexStore, item: T) => string): Promise<void> {
    const work = this.#lastWrite.then(async () => {
      const breathe = slices();
      for (const item of items) {
        const id = apply(this.#live, item);
        if (this.#building) {
          apply(this.#building.store, item);
          this.#building.written.add(id);
        }
        await breathe();
      }
    });
    this.#lastWrite = work.catch(() => undefined);
    return work;
  }

  search(query: SearchQuery): Promise<SearchAnswer> {
    const begun = performance.now();
    try {
      const found = answer(this.#live, query);
      const tookMs = Math.round((performance.now() - begun) * 10) / 10;
      return Promise.resolve({ ...found, tookMs, engine: this.name });
    } catch (error) {
      if (error instanceof SearchError) return Promise.reject(error);
      return Promise.reject(new SearchError("unavailable", "The search failed.", { cause: error }));
    }
  }

  rebuild(documents: AsyncIterable<SearchDocument>, onProgress?: (progress: RebuildProgress) => void): Promise<void> {
    const work = this.#lastRebuild.then(() => this.#fill(documents, onProgress));
    this.#lastRebuild = work.catch(() => undefined);
    return work;
  }

  async #fill(
    documents: AsyncIterable<SearchDocument>,
    onProgress?: (progress: RebuildProgress) => void,
  ): Promise<void> {
    const building = { store: new IndexStore(), written: new Set<string>() };
    this.#building = building;
    const breathe = slices();
    let count = 0;
    try {
      for await (const document of documents) {
        if (!ID.test(document.id))
          throw new SearchError("bad-query", `“${document.id}” cannot be the id of a document.`);
        if (!building.written.has(document.id)) building.store.put(document);
        if (++count % REPORT_EVERY === 0) onProgress?.({ documents: count });
        await breathe();
      }
    } catch (error) {
      this.#building = null;
      if (error instanceof SearchError) throw error;
      throw new SearchError("unavailable", "The index could not be rebuilt; the old one stays in use.", {
        cause: error,
      });
    }
    this.#live = building.store;
    this.#building = null;
    onProgress?.({ documents: count });
  }

  health(): Promise<SearchHealth> {
    const held = `${this.#live.size} documents`;
    const detail = this.#building ? `${held}; being rebuilt, ${this.#building.store.size} ready` : held;
    return Promise.resolve({ ok: true, engine: this.name, detail });
  }

  stats(): Promise<SearchStats> {
    const zero: [SearchKind, number][] = SEARCH_KINDS.map((kind) => [kind, 0]);
    const byKind = new Map<SearchKind, number>(zero);
    for (const { kind } of this.#live.documents()) byKind.set(kind, (byKind.get(kind) ?? 0) + 1);
    const {
      case: cases = 0,
      board = 0,
      chip = 0,
      code = 0,
      spare = 0,
    }: Partial<Record<SearchKind, number>> = Object.fromEntries(byKind);
    return Promise.resolve({
      engine: this.name,
      documents: this.#live.size,
      byKind: { case: cases, board, chip, code, spare },
      rebuilding: this.#building !== null,
    });
  }
}

/** An empty embedded search. */
export function createEmbeddedSearch(): SearchEngine {
  return new EmbeddedSearch();
}
