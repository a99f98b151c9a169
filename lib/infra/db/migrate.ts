import { createHash, randomUUID } from "node:crypto";
import fs from "node:fs";
import type pg from "pg";

const path = process.getBuiltinModule("node:path");

/** The advisory lock that keeps two starting programs from migrating at once. */
const MIGRATION_LOCK = 72_707_369;

const TABLE = `create table if not exists _prisma_migrations (
  id varchar(36) primary key not null, checksum varchar(64) not null, finished_at timestamptz,
  migration_name varchar(255) not null, logs text, rolled_back_at timestamptz,
  started_at timestamptz not null default now(), applied_steps_count integer not null default 0)`;

interface AppliedRow {
  name: string;
  checksum: string;
  finished: Date | null;
}

/**
 * Applies prisma/migrations/<name>/migration.sql in name order, each in a transaction with its row in the table that
 * Prisma's own tools use. Refuses an edited, a half-applied or a newer history. Returns the names applied now.
 */
export async function migrate(pool: pg.Pool, directory: string): Promise<string[]> {
  const names = migrationNames(directory);
  const client = await pool.connect();
  try {
    await client.query("select pg_advisory_lock($1)", [MIGRATION_LOCK]);
    await client.query(TABLE);
    const { rows } = await client.query<AppliedRow>(
      `select migration_name as name, checksum, finished_at as finished from _prisma_migrations where rolled_back_at is null`,
    );
    refuseForeignHistory(rows, names);
    const known = new Map(rows.map((row) => [row.name, row.checksum]));
    const applied: string[] = [];
    for (const name of names) {
      if (await applyOne(client, directory, name, known.get(name))) applied.push(name);
    }
    return applied;
  } finally {
    await client.query("select pg_advisory_unlock($1)", [MIGRATION_LOCK]).catch(() => undefined);
    client.release();
  }
}

function migrationNames(directory: string): string[] {
  return fs
    .readdirSync(directory, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .toSorted();
}

function refuseForeignHistory(rows: AppliedRow[], names: string[]): void {
  const half = rows.find((row) => !row.finished);
  if (half) {
    throw new Error(
      `Migration ${half.name} failed earlier. Repair the database, then delete its row in _prisma_migrations.`,
    );
  }
  const newer = rows.find((row) => !names.includes(row.name));
  if (newer) {
    throw new Error(
      `The database has migration ${newer.name}, which this program does not know: the database is newer than the program. Start the newer program.`,
    );
  }
}

async function applyOne(client: pg.PoolClient, directory: string, name: string, known?: string): Promise<boolean> {
  const sql = fs.readFileSync(path.join(directory, name, "migration.sql"), "utf8");
  const checksum = createHash("sha256").update(sql).digest("hex");
  if (known !== undefined) {
    if (known !== checksum) throw new Error(`Migration ${name} was changed after it was applied.`);
    return false;
  }
  await client.query("begin");
  try {
    await client.query(sql); // without parameters the simple protocol takes the whole file, function bodies included
    await client.query(
      `insert into _prisma_migrations(id, checksum, finished_at, migration_name, applied_steps_count) values ($1, $2, clock_timestamp(), $3, 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query("commit");
    return true;
  } catch (error) {
    await client.query("rollback");
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`Migration ${name} failed, nothing of it was applied: ${why}`, { cause: error });
  }
}
