import type { SearchDocument, SearchEngine } from "#lib/infra/search/types.ts";

/**
 * A search engine that also remembers every document that it was given, so that a test can lay the index beside the
 * database. It keeps the promise of `rebuild` in the plainest way: what is written meanwhile wins.
 */
export function remembering(engine: SearchEngine): SearchEngine & { held(): Map<string, SearchDocument> } {
  let held = new Map<string, SearchDocument>();
  let building: { documents: Map<string, SearchDocument>; written: Set<string> } | null = null;
  return {
    name: engine.name,
    held: () => held,
    async upsert(documents) {
      await engine.upsert(documents);
      for (const document of documents) {
        held.set(document.id, document);
        building?.documents.set(document.id, document);
        building?.written.add(document.id);
      }
    },
    async remove(ids) {
      await engine.remove(ids);
      for (const id of ids) {
        held.delete(id);
        building?.documents.delete(id);
        building?.written.add(id);
      }
    },
    async rebuild(documents, onProgress) {
      const filling = { documents: new Map<string, SearchDocument>(), written: new Set<string>() };
      building = filling;
      await engine.rebuild(taken(documents, filling), onProgress);
      held = filling.documents;
      building = null;
    },
    search: (query) => engine.search(query),
    health: () => engine.health(),
    stats: () => engine.stats(),
  };
}

async function* taken(
  documents: AsyncIterable<SearchDocument>,
  filling: { documents: Map<string, SearchDocument>; written: Set<string> },
): AsyncGenerator<SearchDocument> {
  for await (const document of documents) {
    if (!filling.written.has(document.id)) filling.documents.set(document.id, document);
    yield document;
  }
}
