import path from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { alias: { "server-only": path.resolve("node_modules/server-only/empty.js") } },
  test: {
    root: ".",
    pool: "forks",
    maxWorkers: 1,
    fileParallelism: false,
    include: ["tests/long/**/*.test.ts"],
    globalSetup: ["tests/support/prepared-clubs.ts"],
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
  },
});
