"use client";

import { useEffect, useState } from "react";
import type { PlacementKind } from "#lib/core/shared/index.ts";
import { placementId } from "./board-drawing.tsx";
import { Code } from "./code.tsx";
import { EmptyState } from "./empty-state.tsx";
import { TextField } from "./field.tsx";
import { NumberCell, Table } from "./table.tsx";
import { PLACEMENT_KIND_WORDS } from "./words.ts";
import styles from "./board-table.module.css";

export interface TabledPart {
  designator: string;
  kind: PlacementKind;
  chip: { slug: string; name: string; function: string } | null;
  code: { id: string; code: string } | null;
  value: string;
  package: string;
  socketed: boolean;
  sheet: string;
  notes: string;
  /** How many cases name it as a cause. */
  cases: number;
}

export interface BoardTableProps {
  parts: readonly TabledPart[];
  /** Whose parts. */
  name: string;
  /** Sheets that a document shows: their cells become links to `#sheet-…`. */
  sheets: readonly string[];
}

/** Id of the place on a page where a sheet of a document is shown. */
export function sheetId(sheet: string): string {
  return `sheet-${sheet}`;
}

/** All parts of a board, one a row, with a box that narrows them while one types. */
export function BoardTable({ parts, name, sheets }: BoardTableProps) {
  const [typed, setTyped] = useState("");
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const shown = parts.filter((part) => words.every((word) => textOf(part).includes(word)));
  const hasCases = parts.some((part) => part.cases > 0);

  // A link to a part that is narrowed away must still lead to its row.
  useEffect(() => {
    const show = () => {
      if (!location.hash.startsWith("#place-")) return;
      setTyped("");
      setTimeout(() => document.getElementById(decodeURIComponent(location.hash.slice(1)))?.scrollIntoView(), 0);
    };
    window.addEventListener("hashchange", show);
    return () => window.removeEventListener("hashchange", show);
  }, []);

  return (
    <>
      <div className="no-print">
        <TextField
          label="Find a part"
          name="part"
          type="search"
          mono
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          hint="Designator, chip, value or what it does: U7, 74LS, buffer"
        />
        <output className="visually-hidden">{typed === "" ? "" : `${shown.length} of ${parts.length} parts`}</output>
      </div>
      {shown.length === 0 ? (
        <EmptyState title={`No part of ${name} fits “${typed.trim()}”.`} />
      ) : (
        <Table
          label={`Parts of ${name}`}
          columns={[
            { head: "Place", narrow: true },
            "Part",
            { head: "Socket", narrow: true },
            { head: "Sheet", narrow: true },
            { head: "Package", narrow: true },
            ...(hasCases ? [{ head: "Cases", number: true, narrow: true }] : []),
            "Notes",
          ]}
        >
          {shown.map((part) => (
            <tr key={part.designator} id={placementId(part.designator)} className={styles.row}>
              <th scope="row" className="mono">
                {part.designator}
              </th>
              <td>
                <PartName part={part} />
              </td>
              <td>{part.socketed ? "socketed" : ""}</td>
              <td>
                {sheets.includes(part.sheet) ? (
                  <a href={`#${sheetId(part.sheet)}`} aria-label={`Show sheet ${part.sheet}`}>
                    {part.sheet}
                  </a>
                ) : (
                  part.sheet
                )}
              </td>
              <td className={styles.package}>{part.package}</td>
              {hasCases && (
                <NumberCell>{part.cases > 0 && <a href={`#cause-${part.designator}`}>{part.cases}</a>}</NumberCell>
              )}
              <td className={styles.notes}>{part.notes}</td>
            </tr>
          ))}
        </Table>
      )}
    </>
  );
}

function PartName({ part: { chip, code, value, kind } }: { part: TabledPart }) {
  const plain = value !== code?.code && value !== chip?.name ? value : "";
  return (
    <>
      {code && <Code code={code.code} href={`/codes/${code.id}`} />} {chip && <ChipName chip={chip} />}{" "}
      {plain && <span className={styles.value}>{plain}</span>}
      {!chip && !code && plain === "" && <span className="soft">{PLACEMENT_KIND_WORDS[kind]}</span>}
      {chip?.function && <span className={styles.does}>{chip.function}</span>}
    </>
  );
}

function ChipName({ chip }: { chip: { slug: string; name: string } }) {
  return <Code code={chip.name} href={`/chips/${chip.slug}`} />;
}

/** All words by which a part may be looked for. */
function textOf({ designator, kind, chip, code, value, package: pack, socketed, sheet, notes }: TabledPart): string {
  const words = [designator, kind, chip?.name, chip?.function, code?.code, value, pack, notes];
  return [...words, socketed && "socketed", sheet && `sheet ${sheet}`].filter(Boolean).join(" ").toLowerCase();
}
