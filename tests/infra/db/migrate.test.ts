import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import type pg from "pg";
import { afterEach, beforeEach, expect, test } from "vitest";
import { migrate } from "#lib/infra/db/migrate.ts";
import { pglitePool } from "#lib/infra/db/pglite-pool.ts";

let folder: string;
let pool: pg.Pool;
let close: () => Promise<void>;

beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "benchlore-migrate-"));
  ({ pool, close } = await pglitePool({}));
});
afterEach(async () => {
  await close();
  fs.rmSync(folder, { recursive: true });
});

function write(name: string, sql: string): void {
  fs.mkdirSync(path.join(folder, name), { recursive: true });
  fs.writeFileSync(path.join(folder, name, "migration.sql"), sql);
}

async function tables(): Promise<string[]> {
  const { rows } = await pool.query<{ name: string }>(
    "select tablename as name from pg_tables where schemaname = 'public' and tablename not like '\\_%' order by 1",
  );
  return rows.map((row) => row.name);
}

test("applies each migration once, in name order, functions with semicolons included", async () => {
  write("2_b", "create table b (id int references a); insert into a values (1);");
  write(
    "1_a",
    "create table a (id int primary key); create function f() returns int language plpgsql as $$ begin return 1; end $$;",
  );
  expect(await migrate(pool, folder)).toEqual(["1_a", "2_b"]);
  expect(await migrate(pool, folder)).toEqual([]);
  expect(await tables()).toEqual(["a", "b"]);
});

test("leaves nothing of a migration that fails, and says which one and why", async () => {
  write("1_a", "create table a (id int);");
  write("2_bad", "create table half (id int); select nothing_here();");
  await expect(migrate(pool, folder)).rejects.toThrow(/2_bad failed, nothing of it was applied: .*nothing_here/);
  expect(await tables()).toEqual(["a"]);
});

test("refuses a migration that was changed after it was applied", async () => {
  write("1_a", "create table a (id int);");
  await migrate(pool, folder);
  write("1_a", "create table a (id bigint);");
  await expect(migrate(pool, folder)).rejects.toThrow(/1_a was changed/);
});

test("refuses a database that is newer than the program", async () => {
  write("1_a", "create table a (id int);");
  write("2_b", "create table b (id int);");
  await migrate(pool, folder);
  fs.rmSync(path.join(folder, "2_b"), { recursive: true });
  await expect(migrate(pool, folder)).rejects.toThrow(/2_b.*newer than the program/);
});

test("three who start at once apply once", async () => {
  write("1_a", "create table a (id int);");
  const all = await Promise.all([migrate(pool, folder), migrate(pool, folder), migrate(pool, folder)]);
  expect(all.flat()).toEqual(["1_a"]);
});
