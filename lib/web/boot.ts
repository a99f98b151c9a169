import { log } from "#lib/infra/log.ts";
import { runtime } from "./runtime.ts";

/** Opens everything before the first request, and closes it before the process ends. */
export async function boot(): Promise<void> {
  const started = await runtime().catch((error: unknown) => {
    // Left alone, Next would answer every request with 500 and go on running.
    process.stderr.write(`\n${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  });
  const { database, follower } = started;
  log.info({ engine: database.engine, migrated: database.migrated }, "open");
  // Next's own handler ends the process before an asynchronous close is done; lib/cli/start.mjs turns it off.
  if (!process.env.NEXT_MANUAL_SIG_HANDLE) return;
  for (const signal of ["SIGTERM", "SIGINT"] as const) {
    process.once(signal, () => {
      void follower
        .stop()
        .then(() => database.close())
        .finally(() => process.exit(0));
    });
  }
}
