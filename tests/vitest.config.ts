import path from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  // Next's bundler replaces this guard by nothing on the server, and so do tests of server code.
  resolve: { alias: { "server-only": path.resolve("node_modules/server-only/empty.js") } },
  test: {
    root: ".",
    pool: "forks",
    maxWorkers: 2,
    include: ["tests/{core,infra,services,web,seed,architecture,ui}/**/*.test.{ts,tsx}"],
    setupFiles: ["tests/support/no-console-error.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
