import { createHash, randomBytes } from "node:crypto";

/** A secret for a link or an interface token: 32 random bytes, shown once. */
export function newToken(prefix = ""): string {
  return prefix + randomBytes(32).toString("base64url");
}

/** What is stored of a token. It is random, so a plain hash is enough; looking it up by hash compares nothing byte by byte. */
export function tokenHash(token: string): string {
  return createHash("sha256").update(token).digest("hex");
}
