import { randomBytes } from "node:crypto";
import fs from "node:fs";
import { dataDir } from "../db/data-dir.ts";

/** The session signing key: from the configuration, or made once and kept in DATA_DIR, readable by its owner only. */
export function sessionSecret(configured: string | undefined): string {
  if (configured) return configured;
  const file = dataDir("auth-secret");
  try {
    return fs.readFileSync(file, "utf8").trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
  }
  fs.mkdirSync(dataDir(), { recursive: true, mode: 0o700 });
  try {
    fs.writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600, flag: "wx" });
  } catch (error) {
    // Another process of this club was first; its key is the one.
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
  return fs.readFileSync(file, "utf8").trim();
}
