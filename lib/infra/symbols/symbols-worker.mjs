// Reads a symbol library in a thread of its own, so that a large file never stalls the web server, and hands it over in
// batches: each is unpacked on the other side in one go, so none may be large.
import { parentPort, workerData } from "node:worker_threads";
import { tsImport } from "tsx/esm/api";

const { bytes, libraryName, pinsInBatch } = workerData;
const { readSymbolLibrary } = await tsImport("../../core/pinout/index.ts", import.meta.url);

const read = readText(bytes);
const library = read.ok ? readSymbolLibrary(read.value, { libraryName }) : read;
if (library.ok) {
  const { symbols, refused } = library.value;
  const pins = symbols.reduce((sum, symbol) => sum + symbol.pins.length, 0);
  const batches = inBatches(symbols);
  parentPort.on("message", () => parentPort.postMessage({ kind: "batch", symbols: batches.next().value ?? null }));
  parentPort.postMessage({ kind: "read", symbols: symbols.length, pins, refused });
} else {
  parentPort.postMessage({ kind: "failed", problem: library.problem });
}

function* inBatches(symbols) {
  let batch = [];
  let pins = 0;
  for (const symbol of symbols) {
    if (batch.length > 0 && pins + symbol.pins.length > pinsInBatch) {
      yield batch;
      batch = [];
      pins = 0;
    }
    batch.push(symbol);
    pins += symbol.pins.length;
  }
  if (batch.length > 0) yield batch;
}

/** Text in UTF-8, or why it is none, with the line of the first byte that is not text. */
function readText(file) {
  const text = new TextDecoder("utf-8").decode(file);
  const odd = /[\0\uFFFD]/.exec(text);
  if (odd === null) return { ok: true, value: text };
  const line = text.slice(0, odd.index).split("\n").length;
  return { ok: false, problem: { line, reason: "not text: a picture, an archive or a program, or a damaged file" } };
}
