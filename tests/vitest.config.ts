import { defineConfig } from "vitest/config";

export default defineConfig({
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
