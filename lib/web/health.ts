import "server-only";
import { runtime } from "./runtime.ts";

export interface PartHealth {
  usable: boolean;
  /** One word or sentence for a steward. */
  says: string;
}

/** Whether database, search and storage can be used now. */
export async function health(): Promise<Record<"database" | "search" | "storage", PartHealth>> {
  const { database, search, files, follower } = await runtime();
  const [inDatabase, inSearch, inStorage] = await Promise.all([
    tried(async () => {
      await database.db.$queryRaw`select 1`;
      return database.engine;
    }),
    tried(async () => {
      if (!follower.isReady()) throw new Error("being built; searches find what is in it so far");
      const { ok, engine, detail } = await search.health();
      if (!ok) throw new Error(`${engine}: ${detail}`);
      return engine;
    }),
    tried(async () => {
      await files.health();
      return "folder";
    }),
  ]);
  return { database: inDatabase, search: inSearch, storage: inStorage };
}

async function tried(test: () => Promise<string>): Promise<PartHealth> {
  try {
    return { usable: true, says: await test() };
  } catch (error) {
    return { usable: false, says: error instanceof Error ? error.message : String(error) };
  }
}
