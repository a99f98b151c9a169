// npm run check: types and lint, in seconds.
import { install, runNode } from "./prepare.mjs";

install();
runNode(["node_modules/next/dist/bin/next", "typegen"], { stdio: ["ignore", "ignore", "inherit"] });
runNode(["node_modules/typescript/bin/tsc", "--noEmit", "-p", "."]);
runNode(["node_modules/typescript/bin/tsc", "--noEmit", "-p", "lib/core"]);
runNode([
  "node_modules/oxlint/bin/oxlint",
  "--type-aware",
  "-c",
  "tests/oxlint.json",
  "app",
  "lib",
  "seed",
  "tests",
  "proxy.ts",
  "instrumentation.ts",
]);
