"use client";

import type { PDFDocumentProxy } from "pdfjs-dist";

// The decoders that scanned sheets need (JBIG2, JPEG 2000, colour profiles), bundled: nothing comes from elsewhere.
const DECODERS: Readonly<Record<string, string>> = {
  "jbig2.wasm": new URL("pdfjs-dist/wasm/jbig2.wasm", import.meta.url).href,
  "openjpeg.wasm": new URL("pdfjs-dist/wasm/openjpeg.wasm", import.meta.url).href,
  "qcms_bg.wasm": new URL("pdfjs-dist/wasm/qcms_bg.wasm", import.meta.url).href,
};

/** Hands the reader the bundled decoders by name; anything else it asks for is not there. */
class BundledData {
  async fetch({ filename }: { kind: string; filename: string }): Promise<Uint8Array> {
    const address = DECODERS[filename];
    if (!address) throw new Error(`${filename} is not part of this program`);
    const response = await fetch(address);
    if (!response.ok) throw new Error(`${filename} answered ${response.status}`);
    return new Uint8Array(await response.arrayBuffer());
  }
}

/**
 * Opens a PDF for drawing only: no script of the file runs, no expression is compiled, no form is filled. When `signal` is
 * aborted the worker ends and frees what it held. Throws for a file that cannot be read.
 */
export async function openPdf(url: string, signal: AbortSignal): Promise<PDFDocumentProxy> {
  const { PDFWorker, getDocument } = await import("pdfjs-dist");
  signal.throwIfAborted();
  // A worker for each file: one that is shared cannot be opened again while it closes.
  const port = new Worker(new URL("pdfjs-dist/build/pdf.worker.min.mjs", import.meta.url), { type: "module" });
  const worker = PDFWorker.create({ port });
  const close = () => {
    worker.destroy();
    port.terminate();
  };
  signal.addEventListener("abort", close, { once: true });
  try {
    const task = getDocument({
      url,
      verbosity: 0,
      worker,
      isEvalSupported: false,
      enableXfa: false,
      useWorkerFetch: false,
      wasmUrl: "bundled:/",
      BinaryDataFactory: BundledData,
    });
    return await task.promise;
  } catch (error) {
    close();
    throw error;
  }
}

/** Draws one page into the canvas at the given width in CSS pixels. `signal` breaks the drawing off. */
export async function drawPage(
  pdf: PDFDocumentProxy,
  number: number,
  canvas: HTMLCanvasElement,
  width: number,
  signal: AbortSignal,
): Promise<void> {
  const page = await pdf.getPage(number);
  if (signal.aborted) return;
  const density = Math.min(window.devicePixelRatio || 1, 2);
  const viewport = page.getViewport({ scale: (width * density) / page.getViewport({ scale: 1 }).width });
  canvas.width = Math.floor(viewport.width);
  canvas.height = Math.floor(viewport.height);
  canvas.style.width = `${width}px`;
  canvas.style.height = `${Math.round((width * viewport.height) / viewport.width)}px`;
  // 0: no annotation of the file is drawn, so none can be pressed either.
  const task = page.render({ canvas, viewport, annotationMode: 0 });
  signal.addEventListener("abort", () => task.cancel(), { once: true });
  await task.promise;
}
