import { boardCautions, type Caution as BoardCaution } from "#lib/core/board/index.ts";
import { HAZARDS } from "#lib/core/shared/index.ts";
import type { BoardView } from "#lib/services/boards/index.ts";
import { Caution } from "#lib/ui/notice.tsx";
import { Place } from "#lib/ui/place.tsx";
import { placementId } from "#lib/ui/board-drawing.tsx";
import styles from "../board.module.css";

const HAZARD_KEYS: ReadonlySet<string> = new Set(HAZARDS);

/** The cautions of a board, once: what harms people first, then what harms the board. */
export function Cautions({ board }: { board: BoardView }) {
  const cautions = boardCautions(board);
  const people = cautions.filter((caution) => HAZARD_KEYS.has(caution.key));
  const own = cautions.filter((caution) => !HAZARD_KEYS.has(caution.key));
  const known = new Set(board.placements.map((placed) => placed.designator));
  return (
    <>
      {people.length > 0 && (
        <Caution harms="people" title="This board can hurt you">
          <ul className={styles.cautions}>
            {people.map((caution) => (
              <li key={caution.key}>
                <strong>{caution.title}.</strong> {caution.text}
              </li>
            ))}
          </ul>
        </Caution>
      )}
      {own.length > 0 && (
        <Caution harms="board" title="Mind the board">
          <ul className={styles.cautions}>
            {own.map((caution) => (
              <OwnCaution key={caution.key} caution={caution} isKnown={known.has(caution.at.toUpperCase())} />
            ))}
          </ul>
        </Caution>
      )}
    </>
  );
}

function OwnCaution({ caution: { at, text }, isKnown }: { caution: BoardCaution; isKnown: boolean }) {
  const href = `#${placementId(at.toUpperCase())}`;
  return (
    <li>
      {at !== "" && <Place at={at} {...(isKnown && { href })} />} {text}
    </li>
  );
}
