// Prisma's schema engine compiled to WebAssembly: the difference between migrations and schema, with no native binary and no server.
import fs from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { PrismaPg } from "@prisma/adapter-pg";
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
  type SqlResultSet,
} from "@prisma/driver-adapter-utils";
import * as engineCode from "@prisma/schema-engine-wasm/schema_engine_bg";
import { migrate } from "#lib/infra/db/migrate.ts";
import { pglitePool } from "#lib/infra/db/pglite-pool.ts";

/** PostgreSQL's internal "char" type, which its catalogs use and the adapter has no mapping for. */
const INTERNAL_CHAR = 18;
const BPCHAR = 1042;

interface RawResult {
  fields: { dataTypeID: number }[];
}
type AdapterInside = SqlDriverAdapter & { performIO(query: object): Promise<RawResult> };

function readInternalChar(factory: SqlMigrationAwareDriverAdapterFactory): SqlMigrationAwareDriverAdapterFactory {
  const patch = (adapter: SqlDriverAdapter): SqlDriverAdapter => {
    const inside = adapter as AdapterInside;
    const charColumns = new WeakMap<object, number[]>();
    const performIO = inside.performIO.bind(inside);
    const queryRaw = inside.queryRaw.bind(inside);
    inside.performIO = async (query) => {
      const result = await performIO(query);
      const columns: number[] = [];
      result.fields.forEach((field, column) => {
        if (field.dataTypeID !== INTERNAL_CHAR) return;
        field.dataTypeID = BPCHAR;
        columns.push(column);
      });
      charColumns.set(query, columns);
      return result;
    };
    inside.queryRaw = async (query: SqlQuery): Promise<SqlResultSet> => {
      const result = await queryRaw(query);
      for (const column of charColumns.get(query) ?? []) result.columnTypes[column] = ColumnTypeEnum.Character;
      return result;
    };
    return inside;
  };
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connect: async () => patch(await factory.connect()),
    connectToShadowDb: async () => patch(await factory.connectToShadowDb()),
  };
}

async function loadEngine(): Promise<void> {
  // The engine reports panics through this global.
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message: (message: string) => process.stderr.write(`schema engine: ${message}\n`),
    },
  });
  const code = createRequire(import.meta.url).resolve("@prisma/schema-engine-wasm/schema_engine_bg");
  const { instance } = await WebAssembly.instantiate(fs.readFileSync(code.replace(/\.js$/, ".wasm")), {
    "./schema_engine_bg.js": engineCode as never,
  });
  engineCode.__wbg_set_wasm(instance.exports as never);
  (instance.exports as unknown as { __wbindgen_start(): void }).__wbindgen_start();
}

/** The SQL that leads from the migrations so far to prisma/schema.prisma; empty: they agree. Takes about 3 s. */
export async function schemaDifference(
  migrations = "prisma/migrations",
  schema = "prisma/schema.prisma",
): Promise<string> {
  const files = [{ path: schema, content: fs.readFileSync(schema, "utf8") }];
  const { pool, close } = await pglitePool({});
  try {
    if (fs.existsSync(migrations)) await migrate(pool, migrations);
    await loadEngine();
    const engine = await engineCode.SchemaEngine.new(
      { datamodels: files.map((file): [string, string] => [file.path, file.content]) },
      () => undefined,
      bindMigrationAwareSqlAdapterFactory(readInternalChar(new PrismaPg(pool))),
    );
    const { stdout } = await engine.diff({
      from: { tag: "schemaDatasource", files, configDir: path.resolve("prisma") },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: null,
      filters: { externalTables: [], externalEnums: [] },
    } as never);
    const sql = stdout?.trim() ?? "";
    return sql.includes("This is an empty migration") ? "" : sql;
  } finally {
    await close();
  }
}
