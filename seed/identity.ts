import { createHash } from "node:crypto";

/**
 * An id that is always the same for the same record of the demo club, shaped as a uuid of version 7 with its time, so
 * that loading may be interrupted and run again without making anything twice.
 */
export function demoId(kind: string, key: string, at: Date): string {
  const time = at.getTime().toString(16).padStart(12, "0").slice(-12);
  const hash = createHash("sha256").update(`${kind} ${key}`).digest("hex");
  const variant = ((Number.parseInt(hash.charAt(3), 16) & 3) | 8).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hash.slice(0, 3)}-${variant}${hash.slice(4, 7)}-${hash.slice(7, 19)}`;
}
