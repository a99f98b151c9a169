import { createCaseIndex, type CaseIndex } from "#lib/core/advice/index.ts";
import { secrets, sessionSecret } from "#lib/infra/auth/index.ts";
import { systemClock } from "#lib/infra/clock.ts";
import { dataDir } from "#lib/infra/db/data-dir.ts";
import { configuredPlace, openDatabase, type OpenDatabase } from "#lib/infra/db/index.ts";
import { readEnv, type Env } from "#lib/infra/env.ts";
import { folderStore, type FileStore } from "#lib/infra/files/index.ts";
import { pictures } from "#lib/infra/files/pictures.ts";
import { newId } from "#lib/infra/id.ts";
import { databaseLimits, type Limits } from "#lib/infra/limits.ts";
import { log } from "#lib/infra/log.ts";
import { renderMarkdown } from "#lib/infra/markdown/index.ts";
import { createEmbeddedSearch } from "#lib/infra/search/embedded.ts";
import type { SearchEngine } from "#lib/infra/search/types.ts";
import { workerSymbolReader, type SymbolReader } from "#lib/infra/symbols/index.ts";
import { createFactsCache, type FactsCache } from "#lib/services/boards/index.ts";
import type { Actor, Ctx } from "#lib/services/context.ts";
import { followChanges, type Follower } from "#lib/services/indexing/index.ts";

/** Everything that lives as long as the process. */
export interface Runtime {
  env: Env;
  secret: string;
  database: OpenDatabase;
  search: SearchEngine;
  files: FileStore;
  symbols: SymbolReader;
  cases: CaseIndex;
  boards: FactsCache;
  limits: Limits;
  follower: Follower;
}

// Each bundle of Next (pages, routes, actions, start-up) has its own copy of this module, so what must be one is shared here.
const shared = globalThis as unknown as { benchloreRuntime?: Promise<Runtime> };

/** The runtime, opened by the first who asks; the same for all. */
export function runtime(): Promise<Runtime> {
  shared.benchloreRuntime ??= open().catch((error: unknown) => {
    delete shared.benchloreRuntime;
    throw error;
  });
  return shared.benchloreRuntime;
}

async function open(): Promise<Runtime> {
  if (process.env.NEXT_PHASE === "phase-production-build")
    throw new Error("The database must not be opened while building.");
  const env = readEnv(process.env);
  const database = await openDatabase({ ...configuredPlace(env), onDeath: endAfterDeath });
  const search = createEmbeddedSearch();
  const cases = createCaseIndex();
  const boards = createFactsCache(database.db);
  const files = folderStore(dataDir("files"));
  const base = { db: database.db, search, cases, boards };
  const follower = followChanges(base, { onProblem: (problem) => log.error(problem, "following the change log") });
  const limits = databaseLimits(database.pool);
  const symbols = workerSymbolReader();
  return {
    env,
    secret: sessionSecret(env.AUTH_SECRET),
    database,
    search,
    files,
    symbols,
    cases,
    boards,
    limits,
    follower,
  };
}

/** The embedded database's thread is gone: nothing can be served, and a restart opens it again safely. */
function endAfterDeath(error: Error): void {
  log.fatal({ error: error.message }, "the embedded database ended; stopping");
  process.exit(70);
}

export function contextFor(from: Runtime, actor: Actor, address?: string): Ctx {
  return {
    db: from.database.db,
    search: from.search,
    files: from.files,
    symbols: from.symbols,
    pictures,
    prose: renderMarkdown,
    secrets,
    limits: from.limits,
    cases: from.cases,
    boards: from.boards,
    actor,
    now: systemClock,
    newId,
    wake: from.follower.wake,
    ...(address && { address }),
  };
}
