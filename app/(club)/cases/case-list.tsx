import Link from "next/link";
import type { Failure } from "#lib/core/shared/index.ts";
import type { CaseLine } from "#lib/services/cases/index.ts";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { TimeText } from "#lib/ui/time-text.tsx";
import { FAILURE_WORDS } from "#lib/ui/words.ts";
import styles from "./case-list.module.css";

/** Cases, one below the other: what it did, on which board, what it was. */
export function CaseList({ cases, zone }: { cases: readonly CaseLine[]; zone: string }) {
  return (
    <ol className={styles.list}>
      {cases.map((one) => (
        <li key={one.number} className={styles.item}>
          <span className={styles.number}>{one.number}</span>
          <div>
            <p className={styles.title}>
              <Link prefetch={false} href={`/cases/${one.number}`}>
                {one.title}
              </Link>
            </p>
            {one.lesson && <p className={styles.lesson}>{one.lesson}</p>}
            <p className={styles.facts}>
              <OutcomeMark outcome={one.outcome} />
              {one.state === "draft" && <strong>draft</strong>}
              {one.board && (
                <Link prefetch={false} href={`/boards/${one.board.slug}`}>
                  {one.board.name}
                </Link>
              )}
              {one.causes.length > 0 && <span>{one.causes.map(causeText).join("; ")}</span>}
              <span>{one.checks === 1 ? "1 check" : `${one.checks} checks`}</span>
              {one.helped > 0 && <span>helped {one.helped}</span>}
              <span>
                {one.author.name}, <TimeText at={one.openedAt} zone={zone} />
              </span>
            </p>
          </div>
        </li>
      ))}
    </ol>
  );
}

function causeText({ at, failure, chip }: CaseLine["causes"][number]): string {
  return [at, chip?.name, FAILURE_WORDS[failure as Failure]].filter(Boolean).join(" ");
}
