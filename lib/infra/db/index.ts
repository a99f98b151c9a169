import { PrismaPg } from "@prisma/adapter-pg";
import pg from "pg";
import { dataDir } from "./data-dir.ts";
import { lockDirectory } from "./directory-lock.ts";
import { PrismaClient, type Prisma } from "./generated/client.ts";
import { migrate } from "./migrate.ts";
import { pglitePool } from "./pglite-pool.ts";

const path = process.getBuiltinModule("node:path");

export type Db = PrismaClient;
export type Tx = Prisma.TransactionClient;
export type { Prisma } from "./generated/client.ts";

export interface OpenDatabase {
  db: Db;
  pool: pg.Pool;
  engine: "embedded" | "postgresql";
  /** Names of the migrations applied while opening. */
  migrated: string[];
  close: () => Promise<void>;
}

export interface DatabasePlace {
  /** `postgres://…`; left out: embedded under `directory`. */
  url?: string;
  /** Folder of the embedded database; left out as well: in memory. */
  directory?: string;
  /** An image to start an in-memory database from. For tests. */
  image?: string;
  onDeath?: (error: Error) => void;
}

/**
 * One connection waits in line behind others, so the default of 2 s would refuse ordinary bursts.
 * Origin: 50 parallel transactions of 60 ms each on the embedded database, 18 refused with the default.
 */
const TRANSACTION_LIMITS = { maxWait: 20_000, timeout: 20_000 } as const;

/** Opens, locks (embedded on disk) and migrates a database. Errors say what stands in the way. */
export async function openDatabase(place: DatabasePlace): Promise<OpenDatabase> {
  const opened = place.url ? openServer(place.url) : await openEmbedded(place);
  try {
    const migrated = await migrate(opened.pool, path.resolve(/* turbopackIgnore: true */ "prisma/migrations"));
    const db = new PrismaClient({ adapter: new PrismaPg(opened.pool), transactionOptions: TRANSACTION_LIMITS });
    const close = async () => {
      await db.$disconnect();
      await opened.close();
    };
    return { db, pool: opened.pool, engine: opened.engine, migrated, close };
  } catch (error) {
    await opened.close();
    throw error;
  }
}

function openServer(url: string) {
  // Prisma's driver sends times without an offset, so the session must be in UTC whatever the server's zone is.
  const pool = new pg.Pool({ connectionString: url, options: "-c TimeZone=UTC", max: 10 });
  pool.on("error", () => undefined); // an idle connection that the server dropped; the next query opens another
  return { pool, engine: "postgresql" as const, close: () => pool.end() };
}

async function openEmbedded(place: DatabasePlace) {
  const unlock = place.directory ? await lockDirectory(path.dirname(place.directory)) : undefined;
  try {
    const pglite = await pglitePool({
      ...(place.directory && { dataDir: place.directory }),
      ...(place.image && { image: place.image }),
      ...(place.onDeath && { onDeath: place.onDeath }),
    });
    const close = async () => {
      await pglite.close();
      await unlock?.();
    };
    return { pool: pglite.pool, engine: "embedded" as const, close };
  } catch (error) {
    await unlock?.();
    throw error;
  }
}

/** The place that the configuration names. */
export function configuredPlace(env: { DATABASE_URL?: string | undefined }): DatabasePlace {
  return env.DATABASE_URL ? { url: env.DATABASE_URL } : { directory: dataDir("pg") };
}
