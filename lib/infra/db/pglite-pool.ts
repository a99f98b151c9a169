import { Duplex } from "node:stream";
import { Worker } from "node:worker_threads";
import pg from "pg";

// Not `import path`: Next's file tracing would evaluate the constant and copy what it finds.
const path = process.getBuiltinModule("node:path");

/** Of the wire protocol: the client goes. PGlite has one session, which stays for the next client. */
const TERMINATE = "X".charCodeAt(0);
let streams = 0;

/**
 * The socket that `pg` talks to: bytes go to the worker's PGlite and come back. One connection, as PGlite has one
 * session; but after an error the pool drops its client and makes another, so each hears only the answers to its own
 * words.
 */
class WorkerStream extends Duplex {
  readonly #id = ++streams;
  constructor(private readonly worker: Worker) {
    super();
    worker.on("message", this.#receive);
    worker.once("error", this.#fail);
    this.once("close", () => {
      worker.off("message", this.#receive);
      worker.off("error", this.#fail);
    });
  }
  readonly #receive = (message: { to: number; bytes: Uint8Array } | string) => {
    if (typeof message === "string" || message.to !== this.#id) return;
    const { buffer, byteOffset, byteLength } = message.bytes;
    this.push(Buffer.from(buffer, byteOffset, byteLength));
  };
  readonly #fail = (error: Error) => {
    this.destroy(error);
  };
  connect() {
    queueMicrotask(() => this.emit("connect"));
    return this;
  }
  setNoDelay() {}
  setKeepAlive() {}
  ref() {}
  unref() {}
  override _read() {}
  override _write(chunk: Buffer, _encoding: string, done: () => void) {
    if (chunk[0] !== TERMINATE) this.worker.postMessage({ from: this.#id, bytes: Uint8Array.from(chunk) });
    done();
  }
  override _final(done: () => void) {
    done();
    // No server here hangs up; the pool waits for it before it makes another client.
    queueMicrotask(() => this.destroy());
  }
}

export interface PglitePool {
  pool: pg.Pool;
  close: () => Promise<void>;
  /** Writes an image of the whole database to a file; later pools start from it. For tests. */
  dump: (file: string) => Promise<void>;
}

/**
 * A node-postgres pool over a PGlite in a worker thread.
 * `dataDir` left out: in memory. `image`: a file that `dump` wrote. `onDeath`: the worker ended by itself; nothing can be
 * read or written after that.
 */
export async function pglitePool(options: {
  dataDir?: string;
  image?: string;
  onDeath?: (error: Error) => void;
}): Promise<PglitePool> {
  const worker = new Worker(/* turbopackIgnore: true */ path.resolve("lib/infra/db/pglite-worker.mjs"), {
    workerData: { dataDir: options.dataDir, image: options.image },
    execArgv: [],
  });
  await new Promise((ready, failed) => {
    worker.once("message", ready);
    worker.once("error", failed);
  });
  let closing = false;
  worker.on("error", (error) => options.onDeath?.(error));
  worker.on("exit", (code) => {
    if (!closing) options.onDeath?.(new Error(`the embedded database ended with code ${code}`));
  });
  const pool = new pg.Pool({
    max: 1,
    idleTimeoutMillis: 0,
    user: "postgres",
    database: "postgres",
    stream: () => new WorkerStream(worker) as never,
    // A client given back in the middle of a transaction left it open: there is no server here that would end it.
    verify: (client: pg.PoolClient, done: (error?: Error) => void) => {
      client.query("rollback").then(
        () => done(),
        (error: Error) => done(error),
      );
    },
  } as pg.PoolConfig);
  const close = async () => {
    closing = true;
    await pool.end();
    const gone = new Promise((exit) => worker.once("exit", exit));
    worker.postMessage("close");
    await gone;
  };
  const dump = async (file: string) => {
    const dumped = new Promise<void>((done) => {
      worker.on("message", function wait(message) {
        if (message !== "dumped") return;
        worker.off("message", wait);
        done();
      });
    });
    worker.postMessage({ dumpTo: file });
    await dumped;
  };
  return { pool, close, dump };
}
