import type { BoardFacts } from "#lib/core/board/index.ts";
import type { Db } from "#lib/infra/db/index.ts";
import { boardFacts } from "./facts.ts";

/** Boards whose facts are kept. Each takes some 50 kB; a club at its benches works on far fewer at once. */
const MOST_BOARDS = 200;

/** Facts of boards, kept until a board or a chip changes. For reading only: a verb that writes asks the database. */
export interface FactsCache {
  get(boardId: string): Promise<BoardFacts | null>;
  /** A board or a chip changed. */
  clear(): void;
}

export function createFactsCache(db: Db): FactsCache {
  const kept = new Map<string, Promise<BoardFacts | null>>();
  return {
    get(boardId) {
      const known = kept.get(boardId);
      if (known) return known;
      const [oldest] = kept.keys();
      if (kept.size >= MOST_BOARDS && oldest) kept.delete(oldest);
      const loading = boardFacts(db, boardId);
      kept.set(boardId, loading);
      // A failed load is not kept: the next who asks tries again.
      loading.catch(() => kept.delete(boardId));
      return loading;
    },
    clear: () => kept.clear(),
  };
}
