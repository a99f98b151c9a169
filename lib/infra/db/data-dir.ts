// Not `import path`: Next's file tracing evaluates path.resolve(<constants>) and would copy the live data folder into the build.
const path = process.getBuiltinModule("node:path");

/** A path under DATA_DIR. */
export function dataDir(...more: string[]): string {
  return path.resolve(process.env.DATA_DIR ?? "data", ...more);
}
