// Writes lib/infra/db/generated. `prisma generate` insists on a schema engine binary that it never runs for this
// generator, and would download it; pointing it at any existing file keeps the step offline.
import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";

const cli = createRequire(import.meta.url).resolve("prisma/build/index.js");
const result = spawnSync(process.execPath, [cli, "generate", "--no-hints", "--schema", "prisma/schema.prisma"], {
  stdio: ["ignore", "ignore", "inherit"],
  env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: "1" },
});
process.exit(result.status ?? 1);
