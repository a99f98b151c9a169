// npm run migrate:new -- <name>: writes prisma/migrations/<time>_<name>/migration.sql. `-- --check` only compares.
import fs from "node:fs";
import path from "node:path";
import { schemaDifference } from "./schema-difference.ts";

const [asked] = process.argv.slice(2);
if (!asked) throw new Error("usage: npm run migrate:new -- <name> | --check");
const sql = await schemaDifference();
if (sql === "") process.stdout.write("The migrations and the schema agree.\n");
else if (asked === "--check") {
  process.stdout.write(`${sql}\nThe migrations do not lead to this schema: npm run migrate:new -- <name>\n`);
  process.exitCode = 1;
} else {
  const stamp = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
  const folder = path.join("prisma/migrations", `${stamp}_${asked.toLowerCase().replace(/[^a-z0-9]+/g, "_")}`);
  fs.mkdirSync(folder, { recursive: true });
  fs.writeFileSync(path.join(folder, "migration.sql"), `${sql}\n`);
  fs.writeFileSync("prisma/migrations/migration_lock.toml", 'provider = "postgresql"\n');
  process.stdout.write(`${folder}/migration.sql\n`);
}
process.exit();
