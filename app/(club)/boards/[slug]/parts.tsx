import Link from "next/link";
import { PLACEMENT_KINDS, type PlacementKind } from "#lib/core/shared/index.ts";
import type { BoardView, Culprit } from "#lib/services/boards/index.ts";
import { BoardDrawing, type DrawnPlacement } from "#lib/ui/board-drawing.tsx";
import { BoardTable } from "#lib/ui/board-table.client.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Section } from "#lib/ui/section.tsx";
import { edit } from "./rails.tsx";
import { shownSheets } from "./documents.tsx";
import styles from "../board.module.css";

interface PartsProps {
  board: BoardView;
  culprits: readonly Culprit[];
  isMember: boolean;
}

/** All parts as a table, and the drawing that leads into it. */
export function Parts({ board, culprits, isMember }: PartsProps) {
  const cases = new Map(culprits.map((culprit) => [culprit.at, culprit.cases.length]));
  const drawn = drawnPlacements(board, cases);
  return (
    <Section id="parts" title="Parts" count={board.placements.length} aside={isMember && edit(board, "parts")}>
      {board.placements.length === 0 ? (
        <EmptyState title="No parts list yet.">
          <p>
            {isMember ? <Link href={`/boards/${board.slug}/edit/parts`}>Paste one</Link> : "Members paste one"}, one
            part a line: U1 74LS244.
          </p>
        </EmptyState>
      ) : (
        <>
          {board.width !== null && board.height !== null && drawn.length > 0 && (
            <div className={styles.drawing}>
              <BoardDrawing
                name={board.name}
                width={board.width}
                height={board.height}
                placements={drawn}
                connectors={board.connectors.map(({ designator, name }) => ({ designator, name }))}
              />
            </div>
          )}
          <BoardTable
            name={board.name}
            sheets={shownSheets(board)}
            parts={inOrder(board.placements).map(({ x: _x, y: _y, ...part }) => ({
              ...part,
              cases: cases.get(part.designator) ?? 0,
            }))}
          />
        </>
      )}
    </Section>
  );
}

/** Chips first, as the list of kinds has it; within a kind U2 before U10. */
function inOrder(placements: BoardView["placements"]): BoardView["placements"] {
  const rank = (kind: PlacementKind) => PLACEMENT_KINDS.indexOf(kind);
  return placements.toSorted((a, b) => rank(a.kind) - rank(b.kind) || NATURAL.compare(a.designator, b.designator));
}

const NATURAL = new Intl.Collator("en", { numeric: true });

function drawnPlacements(board: BoardView, cases: ReadonlyMap<string, number>): DrawnPlacement[] {
  return board.placements.flatMap((placed): DrawnPlacement[] => {
    const { designator, kind, x, y, chip, code, value } = placed;
    if (x === null || y === null) return [];
    const marked = cases.get(designator);
    const label = code?.code ?? chip?.name ?? value;
    return [
      {
        designator,
        kind,
        label,
        x,
        y,
        ...(placed.package !== "" && { package: placed.package }),
        ...(marked !== undefined && { marked }),
      },
    ];
  });
}
