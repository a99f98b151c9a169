import Link from "next/link";
import { printExpectation, printValue, quantityOf } from "#lib/core/quantity/index.ts";
import { expectFromRail, limitsOf } from "#lib/core/reading/index.ts";
import type { BoardView } from "#lib/services/boards/index.ts";
import { placementId } from "#lib/ui/board-drawing.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Place } from "#lib/ui/place.tsx";
import { QuantityText } from "#lib/ui/quantity-text.tsx";
import { Section } from "#lib/ui/section.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import styles from "../board.module.css";

type Rail = BoardView["rails"][number];

/** What each rail should read, and by whose word. */
export function Rails({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const known = new Set(board.placements.map((placed) => placed.designator));
  const hasNotes = board.rails.some((rail) => rail.notes !== "");
  return (
    <Section id="rails" title="Rails" count={board.rails.length} aside={isMember && edit(board, "rails")}>
      {board.rails.length === 0 ? (
        <EmptyState title="No rail is recorded yet.">
          <p>With its rails a board judges every supply reading by itself. The usual ones are a tap each.</p>
        </EmptyState>
      ) : (
        <Table
          label="Rails"
          columns={[
            { head: "Rail", narrow: true },
            { head: "Should read", number: true, narrow: true },
            "Tolerance",
            "Made by",
            ...(hasNotes ? ["Notes"] : []),
          ]}
        >
          {board.rails.map((rail) => (
            <tr key={rail.name}>
              <th scope="row" className={styles.rail}>
                <Place at={rail.name} />
              </th>
              <NumberCell>{limitText(rail)}</NumberCell>
              <td className={styles.remark}>
                <Tolerance rail={rail} />
              </td>
              <td className={styles.rail}>
                {rail.source !== "" && (
                  <Place
                    at={rail.source}
                    {...(known.has(rail.source.toUpperCase()) && {
                      href: `#${placementId(rail.source.toUpperCase())}`,
                    })}
                  />
                )}
              </td>
              {hasNotes && <td className={styles.remark}>{rail.notes}</td>}
            </tr>
          ))}
        </Table>
      )}
    </Section>
  );
}

/** `4.75 to 5.25 V`, `at least 7.65 V`. */
function limitText(rail: Rail): string {
  const { expectation } = expectFromRail(rail);
  const limits = limitsOf(expectation, rail.ac ? "ac-voltage" : "dc-voltage")?.limits;
  if (limits?.low === undefined || limits.high === undefined) return printExpectation(expectation);
  const [near, far] =
    Math.abs(limits.low) <= Math.abs(limits.high) ? [limits.low, limits.high] : [limits.high, limits.low];
  return `${Number(near.toPrecision(4))} to ${printValue(far, "V", 4)}${rail.ac ? " a.c." : ""}`;
}

function Tolerance({ rail }: { rail: Rail }) {
  const nominal = (
    <QuantityText
      text={`${printExpectation({ form: "near", nominal: quantityOf(rail.nominal, "V"), tolerance: null })}${rail.ac ? " a.c." : ""}`}
    />
  );
  if (!rail.regulated && !rail.ac) {
    return (
      <>
        {nominal}, unregulated: only too little is a fault
        {rail.tolerancePercent === null && <span className={styles.usual}>usual limit; the record says none</span>}
      </>
    );
  }
  const { why } = expectFromRail(rail);
  const usual = /±([\d.]+) % is usual/.exec(why)?.[1];
  return (
    <>
      {nominal} {rail.tolerancePercent === null ? `±${usual ?? ""} %` : `±${rail.tolerancePercent} %`}
      {rail.tolerancePercent === null && (
        <span className={styles.usual}>usual for such a rail; the record says none</span>
      )}
    </>
  );
}

export function edit(board: BoardView, part: string) {
  return (
    <Link prefetch={false} className="no-print" href={`/boards/${board.slug}/edit/${part}`}>
      Change
    </Link>
  );
}

/** How the issues of the board differ. */
export function Revisions({ board }: { board: BoardView }) {
  if (board.revisions.length === 0) return null;
  return (
    <Section id="revisions" title="Revisions" count={board.revisions.length}>
      <Table label="Revisions" columns={[{ head: "Revision", narrow: true }, "What differs"]}>
        {board.revisions.map((revision) => (
          <tr key={revision.id}>
            <th scope="row">{revision.name}</th>
            <td>{revision.notes}</td>
          </tr>
        ))}
      </Table>
    </Section>
  );
}
