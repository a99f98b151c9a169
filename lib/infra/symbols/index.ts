import { Worker } from "node:worker_threads";
import type { ChipSymbol, RefusedSymbol } from "#lib/core/pinout/index.ts";
import type { Result } from "#lib/core/shared/index.ts";

// Not `import path`: Next's file tracing would evaluate the constant and copy what it finds.
const path = process.getBuiltinModule("node:path");

export interface SymbolFile {
  symbols: number;
  pins: number;
  refused: RefusedSymbol[];
}

export interface SymbolReader {
  /**
   * Reads a `.kicad_sym` file. `take` gets its symbols in the order of the file, a batch at a time, and is awaited;
   * `begin` gets the counts before that. Answers with the line where the file is broken.
   */
  read(
    bytes: Uint8Array,
    libraryName: string,
    take: (symbols: ChipSymbol[]) => Promise<void>,
    begin?: (file: SymbolFile) => void,
  ): Promise<Result<SymbolFile, { line: number; reason: string }>>;
}

const LIMITS = {
  /** One batch is unpacked at once on the main thread. Origin: 2,000 pins take under 10 ms. */
  pinsInBatch: 2_000,
  /** Megabytes that reading one file may take. Origin: Debian's largest library, 9.5 MB, is read within 192. */
  memory: 768,
} as const;

type FromWorker =
  | ({ kind: "read" } & SymbolFile)
  | { kind: "batch"; symbols: ChipSymbol[] | null }
  | { kind: "failed"; problem: { line: number; reason: string } };

/** Reads symbol libraries in a worker thread, one at a time: two large ones at once would double the memory. */
export function workerSymbolReader(): SymbolReader {
  let last: Promise<unknown> = Promise.resolve();
  return {
    read(bytes, libraryName, take, begin) {
      const mine = last.then(() => readInWorker(bytes, libraryName, take, begin));
      last = mine.catch(() => undefined);
      return mine;
    },
  };
}

async function readInWorker(...[bytes, libraryName, take, begin]: Parameters<SymbolReader["read"]>) {
  const worker = new Worker(/* turbopackIgnore: true */ path.resolve("lib/infra/symbols/symbols-worker.mjs"), {
    workerData: { bytes, libraryName, pinsInBatch: LIMITS.pinsInBatch },
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: LIMITS.memory },
  });
  const messages = inbox(worker);
  try {
    const first = await messages.next();
    if (first.kind === "failed") return { ok: false as const, problem: first.problem };
    if (first.kind === "batch") throw new Error("the symbol reader answered before it was asked");
    const file: SymbolFile = { symbols: first.symbols, pins: first.pins, refused: first.refused };
    begin?.(file);
    for (;;) {
      worker.postMessage("more");
      const answer = await messages.next();
      if (answer.kind !== "batch") throw new Error("the symbol reader answered out of turn");
      if (answer.symbols === null) return { ok: true as const, value: file };
      await take(answer.symbols);
    }
  } catch (error) {
    if ((error as { code?: unknown }).code === "ERR_WORKER_OUT_OF_MEMORY") {
      return { ok: false as const, problem: { line: 1, reason: `reading it takes more than ${LIMITS.memory} MB` } };
    }
    throw error;
  } finally {
    await worker.terminate();
  }
}

/** The worker's answers, each waited for. It speaks only when asked, so at most one is ever waiting. */
function inbox(worker: Worker): { next(): Promise<FromWorker> } {
  const waiting: FromWorker[] = [];
  let failure: Error | null = null;
  let wake = (): void => undefined;
  worker.on("message", (message: FromWorker) => {
    waiting.push(message);
    wake();
  });
  const fail = (error: Error) => {
    failure ??= error;
    wake();
  };
  worker.on("error", fail);
  worker.on("exit", () => fail(new Error("the symbol reader ended")));
  return {
    async next() {
      for (;;) {
        const message = waiting.shift();
        if (message) return message;
        if (failure) throw failure;
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
    },
  };
}
