"use client";

import type { PDFDocumentProxy } from "pdfjs-dist";
import { useEffect, useRef, useState } from "react";
import { Button } from "./button.tsx";
import styles from "./pdf-pages.module.css";

/** Steps of the magnifier, as multiples of the width of the page. */
const ZOOMS = [1, 1.5, 2, 3] as const;

export interface PdfPagesProps {
  /** Address of the file; the link to download it is the fallback. */
  url: string;
  name: string;
  /** The sheet to show first, from 1. */
  startPage?: number;
  /** Opens at once instead of waiting for the button. */
  open?: boolean;
}

type Opened = { kind: "opening" | "failed" } | { kind: "open"; pdf: PDFDocumentProxy };

/** The pages of a PDF in the page, one at a time. The reader is loaded when it is opened, and runs no script of the file. */
export function PdfPages({ url, name, startPage = 1, open = false }: PdfPagesProps) {
  const [wanted, setWanted] = useState(open);
  const [state, setState] = useState<Opened>({ kind: "opening" });

  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    import("./pdf-document.client.tsx")
      .then(({ openPdf }) => openPdf(url, stop.signal))
      .then((pdf) => !stop.signal.aborted && setState({ kind: "open", pdf }))
      .catch(() => !stop.signal.aborted && setState({ kind: "failed" }));
    return () => stop.abort();
  }, [wanted, url]);

  return (
    <div className={styles.viewer}>
      <div className={`${styles.bar} no-print`}>
        {!wanted && <Button onClick={() => setWanted(true)}>Show the pages here</Button>}
        <a href={url} download={name}>
          Download {name}
        </a>
      </div>
      {wanted && state.kind === "opening" && <output className={styles.status}>Opening {name} …</output>}
      {state.kind === "failed" && (
        <p role="alert" className={styles.status}>
          This file cannot be shown here: it may be damaged, locked by a password, or out of reach. Download it instead.
        </p>
      )}
      {state.kind === "open" && <Sheets pdf={state.pdf} name={name} startPage={startPage} />}
    </div>
  );
}

function Sheets({ pdf, name, startPage }: { pdf: PDFDocumentProxy; name: string; startPage: number }) {
  const [page, setPage] = useState(Math.min(Math.max(1, startPage), pdf.numPages));
  const [zoom, setZoom] = useState<number>(1);
  const [broken, setBroken] = useState(false);
  const canvas = useRef<HTMLCanvasElement>(null);
  const frame = useRef<HTMLElement>(null);

  useEffect(() => {
    const into = canvas.current;
    const width = frame.current?.clientWidth;
    if (!into || !width) return;
    const stop = new AbortController();
    setBroken(false);
    import("./pdf-document.client.tsx")
      .then(({ drawPage }) => drawPage(pdf, page, into, width * zoom, stop.signal))
      .catch(() => !stop.signal.aborted && setBroken(true));
    return () => stop.abort();
  }, [pdf, page, zoom]);

  return (
    <>
      <div className={`${styles.bar} no-print`}>
        <Button disabled={page === 1} onClick={() => setPage(page - 1)}>
          ← Sheet before
        </Button>
        <label className={styles.picker}>
          Sheet
          <select value={page} onChange={(event) => setPage(Number(event.target.value))}>
            {Array.from({ length: pdf.numPages }, (_, index) => (
              <option key={index + 1} value={index + 1}>
                {index + 1} of {pdf.numPages}
              </option>
            ))}
          </select>
        </label>
        <Button disabled={page === pdf.numPages} onClick={() => setPage(page + 1)}>
          Next sheet →
        </Button>
        <label className={styles.picker}>
          Size
          <select value={zoom} onChange={(event) => setZoom(Number(event.target.value))}>
            {ZOOMS.map((step) => (
              <option key={step} value={step}>
                {step * 100} %
              </option>
            ))}
          </select>
        </label>
      </div>
      {broken && (
        <p role="alert" className={styles.status}>
          Sheet {page} cannot be drawn. The other sheets may be well; the download has them all.
        </p>
      )}
      {/* A region that scrolls must be reached by keyboard. */}
      {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
      <section ref={frame} className={styles.sheet} aria-label={`${name}, sheet ${page}`} tabIndex={0}>
        <canvas ref={canvas}>
          {name}, sheet {page} of {pdf.numPages}, as a picture
        </canvas>
      </section>
    </>
  );
}
