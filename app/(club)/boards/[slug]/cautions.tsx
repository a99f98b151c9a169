import { boardCautions, type Caution as BoardCaution } from "#lib/core/board/index.ts";
import { HAZARDS } from "#lib/core/shared/index.ts";
import type { BoardView } from "#lib/services/boards/index.ts";
import { Caution } from "#lib/ui/notice.tsx";
import { Place } from "#lib/ui/place.tsx";
import { placementId } from "#lib/ui/board-drawing.tsx";
import styles from "../board.module.css";

const HAZARD_KEYS: ReadonlySet<string> = new Set(HAZARDS);

/** The cautions of a board, once: what harms people first, each by itself; then what harms the board, in one list. */
export function Cautions({ board }: { board: BoardView }) {
  const cautions = boardCautions(board);
  const people = cautions.filter((caution) => HAZARD_KEYS.has(caution.key));
  const own = cautions.filter((caution) => !HAZARD_KEYS.has(caution.key));
  const known = new Set(board.placements.map((placed) => placed.designator));
  return (
    <>
      {people.map((caution) => (
        <Caution key={caution.key} harms="people" title={caution.title}>
          <p>{caution.text}</p>
        </Caution>
      ))}
      {own.length > 0 && (
        <Caution harms="board" title="This board">
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
