import { createHash } from "node:crypto";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { createCaseIndex } from "#lib/core/advice/index.ts";
import type { Role } from "#lib/core/shared/index.ts";
import { secrets } from "#lib/infra/auth/index.ts";
import { openDatabase, type OpenDatabase } from "#lib/infra/db/index.ts";
import { migrate } from "#lib/infra/db/migrate.ts";
import { pglitePool } from "#lib/infra/db/pglite-pool.ts";
import { folderStore } from "#lib/infra/files/index.ts";
import { pictures } from "#lib/infra/files/pictures.ts";
import { newId } from "#lib/infra/id.ts";
import { databaseLimits } from "#lib/infra/limits.ts";
import { renderMarkdown } from "#lib/infra/markdown/index.ts";
import { createEmbeddedSearch } from "#lib/infra/search/embedded.ts";
import { workerSymbolReader } from "#lib/infra/symbols/index.ts";
import { createFactsCache } from "#lib/services/boards/index.ts";
import type { Actor, Ctx, MemberActor } from "#lib/services/context.ts";
import { followChanges, type Follower } from "#lib/services/indexing/index.ts";

/** A club of its own for a test file: a fresh, migrated database, real search, real files. */
export interface TestClub {
  ctx(actor?: Actor): Ctx;
  member(handle: string, role?: Role): Promise<MemberActor>;
  /** Waits until search and advice have caught up with the database. */
  settled(): Promise<void>;
  database: OpenDatabase;
  follower: Follower;
  close(): Promise<void>;
}

const IMAGES = "node_modules/.cache/test-database";

/** A migrated empty database, made once and kept by the hash of migrations and driver: loading takes 0.5 s, making 3 s. */
async function emptyImage(): Promise<string> {
  const hash = createHash("sha256").update(fs.readFileSync("node_modules/@electric-sql/pglite/package.json"));
  for (const file of fs.readdirSync("prisma/migrations", { recursive: true, encoding: "utf8" }).toSorted()) {
    if (file.endsWith(".sql")) hash.update(file).update(fs.readFileSync(path.join("prisma/migrations", file)));
  }
  const image = path.resolve(IMAGES, `${hash.digest("hex").slice(0, 16)}.tar`);
  if (fs.existsSync(image)) return image;
  fs.mkdirSync(IMAGES, { recursive: true });
  const making = `${image}.${process.pid}`;
  const pglite = await pglitePool({});
  await migrate(pglite.pool, "prisma/migrations");
  await pglite.dump(making);
  await pglite.close();
  fs.renameSync(making, image);
  return image;
}

/**
 * Opens a club. With TEST_DATABASE_URL set, on that PostgreSQL server, in a database of the test's own; else embedded.
 */
export async function testClub(): Promise<TestClub> {
  const server = process.env.TEST_DATABASE_URL;
  const own = server ? await ownDatabase(server) : null;
  const database = await openDatabase(own ? { url: own.url } : { image: await emptyImage() });
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "benchlore-files-"));
  const search = createEmbeddedSearch();
  const cases = createCaseIndex();
  const boards = createFactsCache(database.db);
  const now = () => new Date();
  const follower = followChanges(
    { db: database.db, search, cases, boards },
    {
      onProblem: (problem) => {
        throw new Error(`following the change log: ${JSON.stringify(problem)}`);
      },
    },
  );
  const symbols = workerSymbolReader();
  const limits = databaseLimits(database.pool);
  const ctx = (actor: Actor = { kind: "club" }): Ctx => ({
    db: database.db,
    search,
    files: folderStore(folder),
    pictures,
    prose: renderMarkdown,
    symbols,
    secrets,
    limits,
    cases,
    boards,
    actor,
    now,
    newId,
    wake: follower.wake,
    address: "192.0.2.1",
  });
  const member = async (handle: string, role: Role = "member"): Promise<MemberActor> => {
    const at = now();
    const id = newId();
    await database.db.member.create({
      data: { id, handle, name: handle, email: `${handle}@example.org`, role, createdAt: at, updatedAt: at },
      select: { id: true },
    });
    return { kind: "member", id, handle, name: handle, role };
  };
  const close = async () => {
    await follower.stop();
    await database.close();
    await own?.drop();
    fs.rmSync(folder, { recursive: true, force: true });
  };
  return { ctx, member, settled: () => follower.settled(), database, follower, close };
}

async function ownDatabase(server: string): Promise<{ url: string; drop(): Promise<void> }> {
  const { default: pg } = await import("pg");
  const name = `t_${newId().replaceAll("-", "")}`;
  const run = async (sql: string) => {
    const client = new pg.Client({ connectionString: server });
    await client.connect();
    try {
      await client.query(sql);
    } finally {
      await client.end();
    }
  };
  await run(`create database ${name}`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  return { url: url.href, drop: () => run(`drop database ${name} with (force)`) };
}
