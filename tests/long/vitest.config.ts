import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: ".",
    pool: "forks",
    maxWorkers: 1,
    fileParallelism: false,
    include: ["tests/long/**/*.test.ts"],
    testTimeout: 1_800_000,
    hookTimeout: 600_000,
  },
});
