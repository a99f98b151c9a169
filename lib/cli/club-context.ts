import { createCaseIndex } from "#lib/core/advice/index.ts";
import { secrets } from "#lib/infra/auth/index.ts";
import { systemClock } from "#lib/infra/clock.ts";
import { dataDir } from "#lib/infra/db/data-dir.ts";
import { configuredPlace, openDatabase, type OpenDatabase } from "#lib/infra/db/index.ts";
import { readEnv, type Env } from "#lib/infra/env.ts";
import { folderStore } from "#lib/infra/files/index.ts";
import { pictures } from "#lib/infra/files/pictures.ts";
import { newId } from "#lib/infra/id.ts";
import { databaseLimits } from "#lib/infra/limits.ts";
import { renderMarkdown } from "#lib/infra/markdown/index.ts";
import { createEmbeddedSearch } from "#lib/infra/search/embedded.ts";
import { workerSymbolReader } from "#lib/infra/symbols/index.ts";
import { createFactsCache } from "#lib/services/boards/index.ts";
import type { Ctx } from "#lib/services/context.ts";

/** The club as a command sees it: the database is opened here, search and advice are empty and not followed. */
export async function openClub(): Promise<{ ctx: Ctx; env: Env; database: OpenDatabase; close: () => Promise<void> }> {
  const env = readEnv(process.env);
  const database = await openDatabase(configuredPlace(env));
  const ctx: Ctx = {
    db: database.db,
    search: createEmbeddedSearch(),
    files: folderStore(dataDir("files")),
    pictures,
    prose: renderMarkdown,
    symbols: workerSymbolReader(),
    secrets,
    limits: databaseLimits(database.pool),
    cases: createCaseIndex(),
    boards: createFactsCache(database.db),
    actor: { kind: "club" },
    now: systemClock,
    newId,
    wake: () => undefined,
  };
  return { ctx, env, database, close: () => database.close() };
}
