import Link from "next/link";
import type { Advice } from "#lib/services/advice/index.ts";
import type { CaseView } from "#lib/services/cases/index.ts";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { FAILURE_WORDS } from "#lib/ui/words.ts";
import { Feedback } from "./feedback.client.tsx";
import styles from "./case.module.css";

interface HelpedProps {
  view: CaseView;
  zone: string;
  /** Handle of the member who reads; null: a visitor. */
  reader: string | null;
}

/** Whom it helped and whom it did not, and the reader's own word. */
export function Helped({ view, zone, reader }: HelpedProps) {
  const own = view.confirmations.find((one) => one.by.handle === reader);
  const mayTell = reader !== null && reader !== view.author.handle && view.state === "published";
  return (
    <>
      <p className={styles.counts}>
        <span>
          <strong>{view.helped}</strong> cured by this
        </span>
        <span>
          <strong>{view.didNotHelp}</strong> not helped
        </span>
      </p>
      {mayTell && (
        <Feedback
          caseNumber={view.number}
          board={view.board ?? ""}
          causes={view.causes.map((cause) => ({
            value: cause.id,
            label: [cause.at, cause.chip?.name, FAILURE_WORDS[cause.failure]].filter(Boolean).join(" "),
          }))}
          said={own?.helped ?? null}
        />
      )}
      {reader === null && <p className="soft no-print">Members tell here whether it helped: sign in first.</p>}
      {view.confirmations.length > 0 && (
        <ul className={styles.lines}>
          {view.confirmations.map((one) => (
            <li key={one.id}>
              <strong>{one.helped ? "Cured" : "Did not help"}</strong>: {one.by.name},{" "}
              <TimeText at={one.at} zone={zone} />
              {one.note && <span className={styles.under}>{one.note}</span>}
              {one.linked && (
                <span className={styles.under}>
                  It was another cause:{" "}
                  <Link prefetch={false} href={`/cases/${one.linked.number}`}>
                    case {one.linked.number}, {one.linked.title}
                  </Link>
                </span>
              )}
            </li>
          ))}
        </ul>
      )}
      {view.followers.length > 0 && (
        <>
          <p>Opened because this did not help:</p>
          <ul className={styles.lines}>
            {view.followers.map((one) => (
              <li key={one.number}>
                <Link prefetch={false} href={`/cases/${one.number}`}>
                  Case {one.number}: {one.title}
                </Link>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** Past cases shown on a case's page; the bench shows more. */
const MOST_SIMILAR = 3;

/** Past cases whose failed checks agree best. */
export function Similar({ similar }: { similar: Advice["similar"] }) {
  if (similar.length === 0) {
    return (
      <EmptyState title="No other case like it.">
        <p>Cases are compared by their failed checks and symptoms.</p>
      </EmptyState>
    );
  }
  return (
    <ul className={styles.lines}>
      {similar.slice(0, MOST_SIMILAR).map((one) => (
        <li key={one.case}>
          <Link prefetch={false} href={`/cases/${one.case}`}>
            Case {one.case}: {one.title}
          </Link>
          {one.matched.length > 0 && <span className={styles.under}>Alike: {one.matched.slice(0, 3).join("; ")}</span>}
          {one.contradicted.length > 0 && (
            <span className={styles.under}>Not alike: {one.contradicted.slice(0, 2).join("; ")}</span>
          )}
          {one.cause && <span className={styles.under}>It was: {one.cause}</span>}
        </li>
      ))}
    </ul>
  );
}
