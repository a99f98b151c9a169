import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openDatabase } from "#lib/infra/db/index.ts";
import { lockDirectory } from "#lib/infra/db/directory-lock.ts";

let folder: string;
beforeEach(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "benchlore-db-"));
});
afterEach(() => {
  fs.rmSync(folder, { recursive: true, force: true });
});

test("a second process on the same data folder is refused with a clear message", async () => {
  const first = await openDatabase({ directory: path.join(folder, "pg") });
  await expect(openDatabase({ directory: path.join(folder, "pg") })).rejects.toThrow(
    /already open in process \d+\. Stop that one first/,
  );
  await first.close();
  const again = await openDatabase({ directory: path.join(folder, "pg") });
  await again.close();
});

test("a lock that a killed process left behind is taken over", async () => {
  fs.writeFileSync(path.join(folder, ".lock.sock"), "");
  const release = await lockDirectory(folder);
  await expect(lockDirectory(folder)).rejects.toThrow(/already open/);
  await release();
});

test("what was committed is there after closing and opening again", async () => {
  const first = await openDatabase({ directory: path.join(folder, "pg") });
  await first.db.setting.create({ data: { name: "kept", value: 1, at: new Date() } });
  await first.close();
  const second = await openDatabase({ directory: path.join(folder, "pg") });
  expect(await second.db.setting.count()).toBe(1);
  await second.close();
});

test("a long query leaves the event loop free", async () => {
  const { pool, close } = await openDatabase({});
  let ticks = 0;
  const timer = setInterval(() => ticks++, 5);
  const { rows } = await pool.query("select count(*)::int as n from generate_series(1, 3000000) as g where g % 7 = 0");
  clearInterval(timer);
  expect(rows).toEqual([{ n: 428_571 }]);
  // On the main thread the timer would not fire once while the query runs.
  expect(ticks).toBeGreaterThan(10);
  await close();
});

test("an error inside a transaction leaves the connection usable", async () => {
  const { db, close } = await openDatabase({});
  const failing = db.$transaction(async (tx) => {
    await tx.setting.create({ data: { name: "x", value: 1, at: new Date() } });
    await tx.setting.create({ data: { name: "x", value: 2, at: new Date() } });
  });
  await expect(failing).rejects.toMatchObject({ code: "P2002" });
  expect(await db.setting.count()).toBe(0);
  await close();
});

test("an error outside a transaction gives nobody else's answer to those who ask next", async () => {
  const { db, close } = await openDatabase({});
  await db.setting.create({ data: { name: "there", value: 1, at: new Date() } });
  for (let turn = 1; turn <= 20; turn++) {
    const asked = [
      db.setting.create({ data: { name: "there", value: 2, at: new Date() } }).catch(() => "refused"),
      db.$queryRaw`select ${turn}::int as turn`,
      db.setting.count(),
    ];
    expect(await Promise.all(asked)).toEqual(["refused", [{ turn }], 1]);
  }
  await close();
});

test("every commit reaches the disk: the file layer is asked to sync", async () => {
  const { pool, close } = await openDatabase({ directory: path.join(folder, "pg") });
  const { rows } = await pool.query<{ name: string; setting: string }>(
    "select name, setting from pg_settings where name in ('fsync', 'synchronous_commit', 'wal_sync_method') order by name",
  );
  expect(rows).toEqual([
    { name: "fsync", setting: "on" },
    { name: "synchronous_commit", setting: "on" },
    { name: "wal_sync_method", setting: "fsync" },
  ]);
  await close();
});
