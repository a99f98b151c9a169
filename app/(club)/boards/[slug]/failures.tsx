import Link from "next/link";
import type { BoardView, Culprit } from "#lib/services/boards/index.ts";
import type { CaseLine } from "#lib/services/cases/index.ts";
import { placementId } from "#lib/ui/board-drawing.tsx";
import { Code } from "#lib/ui/code.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { Place } from "#lib/ui/place.tsx";
import { Section } from "#lib/ui/section.tsx";
import { NumberCell, Table } from "#lib/ui/table.tsx";
import { FAILURE_WORDS } from "#lib/ui/words.ts";
import { CaseList } from "../../cases/case-list.tsx";
import styles from "../board.module.css";

/** Culprits shown at once; the others are folded away. */
const SHOWN = 8;
/** Cases named beside a culprit. */
const NAMED = 4;

/** What failed on this board, the most frequent first. */
export function Culprits({ culprits, total }: { culprits: readonly Culprit[]; total: number }) {
  const [first, rest] = [culprits.slice(0, SHOWN), culprits.slice(SHOWN)];
  return (
    <Section id="failures" title="How it fails" count={total === 1 ? "1 case" : `${total} cases`}>
      {culprits.length === 0 ? (
        <EmptyState title={total === 0 ? "No case on this board yet." : "No cause was found in its cases yet."}>
          <p>When a case names a cause, the part stands here with the number of its cases.</p>
        </EmptyState>
      ) : (
        <>
          <CulpritTable label="What failed, most frequent first" culprits={first} />
          {rest.length > 0 && (
            <details className={styles.fold}>
              <summary>{rest.length} more that failed</summary>
              <CulpritTable label="More that failed" culprits={rest} />
            </details>
          )}
        </>
      )}
    </Section>
  );
}

function CulpritTable({ label, culprits }: { label: string; culprits: readonly Culprit[] }) {
  return (
    <Table
      label={label}
      columns={[{ head: "Place", narrow: true }, { head: "Cases", number: true, narrow: true }, "How it failed"]}
    >
      {culprits.map((culprit) => (
        <tr key={culprit.at} id={`cause-${culprit.at}`}>
          <th scope="row">
            {culprit.at === "" ? "no place told" : <Place at={culprit.at} href={`#${placementId(culprit.at)}`} />}
          </th>
          <NumberCell>{culprit.cases.length}</NumberCell>
          <td>
            {culprit.chip && <Code code={culprit.chip.name} href={`/chips/${culprit.chip.slug}`} />}{" "}
            {failuresOf(culprit)}
            <CaseNumbers culprit={culprit} />
          </td>
        </tr>
      ))}
    </Table>
  );
}

function CaseNumbers({ culprit: { cases } }: { culprit: Culprit }) {
  return (
    <span className={styles.numbers}>
      <span className="soft">{cases.length === 1 ? "case" : "cases"}</span>
      {cases.slice(0, NAMED).map(({ number, title }) => (
        <Link
          key={number}
          prefetch={false}
          href={`/cases/${number}`}
          title={title}
          aria-label={`Case ${number}: ${title}`}
        >
          {number}
        </Link>
      ))}
      {cases.length > NAMED && <span>and {cases.length - NAMED} more</span>}
    </span>
  );
}

/** `outputs dead 3, open 1`; the count only where there are several ways. */
function failuresOf({ cases }: Culprit): string {
  const counts = new Map<string, number>();
  for (const { failure } of cases) counts.set(FAILURE_WORDS[failure], (counts.get(FAILURE_WORDS[failure]) ?? 0) + 1);
  const ordered = [...counts].toSorted((a, b) => b[1] - a[1]);
  return ordered.map(([words, count]) => (ordered.length > 1 ? `${words} ${count}` : words)).join(", ");
}

const FORM_WORDS: Record<string, string> = { beeps: "beeps", flashes: "flashes", message: "message" };

/** What the machine says about itself. */
export function SelfTests({ board, isMember }: { board: BoardView; isMember: boolean }) {
  const known = new Set(board.placements.map((placed) => placed.designator));
  return (
    <Section id="self-test" title="Self-test codes" count={board.selfTests.length}>
      {board.selfTests.length === 0 ? (
        <EmptyState title="No beeps, flashes or messages are recorded.">
          {isMember && (
            <p>
              Does it have a self-test?{" "}
              <Link href={`/boards/${board.slug}/edit/self-test`}>Write down what it says.</Link>
            </p>
          )}
        </EmptyState>
      ) : (
        <Table label="Self-test codes" columns={["It says", "It means", "Suspects"]}>
          {board.selfTests.map((code) => (
            <tr key={`${code.form} ${code.signal}`}>
              <th scope="row">
                <span className="mono">{code.signal}</span>{" "}
                <span className={styles.form}>{FORM_WORDS[code.form] ?? code.form}</span>
              </th>
              <td>{code.meaning}</td>
              <td className={styles.places}>
                {code.suspects.map((suspect) => (
                  <Place
                    key={suspect}
                    at={suspect}
                    {...(known.has(suspect.toUpperCase()) && { href: `#${placementId(suspect.toUpperCase())}` })}
                  />
                ))}
              </td>
            </tr>
          ))}
        </Table>
      )}
    </Section>
  );
}

interface CasesProps {
  cases: readonly CaseLine[];
  total: number;
  board: BoardView;
  zone: string;
}

/** The newest cases, and the way to all of them. */
export function Cases({ cases, total, board, zone }: CasesProps) {
  return (
    <Section
      id="cases"
      title="Cases on it"
      count={total}
      aside={
        total > cases.length && (
          <Link prefetch={false} href={`/cases?board=${board.slug}`}>
            All {total} cases
          </Link>
        )
      }
    >
      {cases.length === 0 ? (
        <EmptyState title="No case on this board yet.">
          <p>
            One lies on the bench? <Link href={`/cases/new?board=${board.slug}`}>Open a case.</Link>
          </p>
        </EmptyState>
      ) : (
        <CaseList cases={cases} zone={zone} />
      )}
    </Section>
  );
}
