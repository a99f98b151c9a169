import fs from "node:fs";
import { install, runNode } from "./prepare.mjs";

install();
if (fs.existsSync(".env")) process.loadEnvFile(".env");
runNode(["--no-deprecation", "--import", "tsx", "lib/cli/prepare-data.ts"]);
runNode([
  "node_modules/next/dist/bin/next",
  "dev",
  "-H",
  process.env.LISTEN ?? "127.0.0.1",
  "-p",
  process.env.PORT ?? "3000",
]);
