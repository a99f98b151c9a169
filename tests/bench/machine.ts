import { execFileSync } from "node:child_process";
import os from "node:os";

/** What stands beside every figure: a number without its machine and commit says nothing. */
export interface Setting {
  machine: string;
  node: string;
  commit: string;
  /** Whether the tree was as committed. */
  clean: boolean;
}

export function setting(): Setting {
  const [cpu] = os.cpus();
  const load = os.loadavg()[0] ?? 0;
  return {
    machine: `${os.cpus().length} cores, ${cpu?.model.trim() ?? "unknown"}, ${Math.round(os.totalmem() / 2 ** 30)} GiB, load ${load.toFixed(1)}`,
    node: process.version,
    commit: git("rev-parse", "--short", "HEAD"),
    clean: git("status", "--porcelain") === "",
  };
}

function git(...words: string[]): string {
  try {
    return execFileSync("git", words, { encoding: "utf8" }).trim();
  } catch {
    return "unknown";
  }
}

/** The value below which a share of the sorted times lies, in ms, to a tenth. */
export function percentile(times: readonly number[], share: number): number {
  const sorted = times.toSorted((a, b) => a - b);
  const at = Math.min(sorted.length - 1, Math.floor(share * sorted.length));
  return Math.round((sorted[at] ?? 0) * 10) / 10;
}
