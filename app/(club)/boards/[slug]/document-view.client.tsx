"use client";

import { useEffect, useRef, useState } from "react";
import { sheetId } from "#lib/ui/board-table.client.tsx";
import { Button } from "#lib/ui/button.tsx";
import { PdfPages } from "#lib/ui/pdf-pages.client.tsx";
import styles from "../board.module.css";

export interface DocumentViewProps {
  url: string;
  name: string;
  title: string;
  isPdf: boolean;
  isPhoto: boolean;
  sheets: readonly { sheet: string; page: number; title: string }[];
  /** Sheets for which this document answers when the table of parts leads to them. */
  anchors: readonly string[];
}

/** A document with its list of sheets; a sheet of a PDF opens in the page. */
export function DocumentView({ url, name, title, isPdf, isPhoto, sheets, anchors }: DocumentViewProps) {
  // Counts the asking, so that the same sheet can be asked for again.
  const [shown, setShown] = useState({ page: 0, asked: 0 });
  const viewer = useRef<HTMLDivElement>(null);

  useEffect(() => {
    const show = () => {
      const asked = decodeURIComponent(location.hash.slice(1));
      const found = sheets.find(({ sheet }) => anchors.includes(sheet) && sheetId(sheet) === asked);
      if (!found) return;
      setShown((now) => ({ page: found.page, asked: now.asked + 1 }));
      viewer.current?.scrollIntoView();
    };
    show();
    window.addEventListener("hashchange", show);
    return () => window.removeEventListener("hashchange", show);
  }, [sheets, anchors]);

  return (
    <>
      {sheets.length > 0 && (
        <ul className={styles.sheets} aria-label={`Sheets of ${title}`}>
          {sheets.map(({ sheet, page, title: about }) => (
            <li key={`${sheet} ${page}`} {...(anchors.includes(sheet) && { id: sheetId(sheet) })}>
              {isPdf ? (
                <Button look="quiet" onClick={() => setShown({ page, asked: shown.asked + 1 })}>
                  Sheet {sheet} {about}
                </Button>
              ) : (
                <>
                  Sheet {sheet} {about}
                </>
              )}
            </li>
          ))}
        </ul>
      )}
      <div ref={viewer}>
        {isPdf ? (
          <PdfPages
            key={shown.asked}
            url={url}
            name={name}
            {...(shown.page > 0 && { startPage: shown.page, open: true })}
          />
        ) : (
          <a href={url} {...(!isPhoto && { download: name })}>
            {isPhoto ? `Open ${name}` : `Download ${name}`}
          </a>
        )}
      </div>
    </>
  );
}
