import path from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { alias: { "server-only": path.resolve("node_modules/server-only/empty.js") } },
  test: {
    root: ".",
    pool: "forks",
    // Each file has a server and some a browser besides: two at a time fill two cores.
    maxWorkers: 2,
    include: ["tests/e2e/**/*.test.ts"],
    globalSetup: ["tests/support/prepared-clubs.ts"],
    setupFiles: ["tests/support/no-console-error.ts"],
    testTimeout: 180_000,
    hookTimeout: 300_000,
  },
});
