import Link from "next/link";
import { CASE_OUTCOMES, type CaseOutcome } from "#lib/core/shared/index.ts";
import type { SearchPage } from "#lib/services/search/index.ts";
import { Highlighted } from "#lib/ui/highlighted.tsx";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import styles from "./search.module.css";

type Hit = SearchPage["groups"][number]["hits"][number];

/** Matches that are neither in the title nor in the snippet, at most this many of each sort: enough to see why. */
const SHOWN = 4;

/** Hits of one kind: what it is called, what it says about this, and what else of it matched. */
export function Hits({ hits }: { hits: readonly Hit[] }) {
  return (
    <ul className={styles.hits}>
      {hits.map((hit) => (
        <li key={hit.id}>
          <p className={styles.title}>
            <Link prefetch={false} href={hit.url} className={isMono(hit) ? "mono" : undefined}>
              <Highlighted text={hit.highlights.title} />
            </Link>
          </p>
          {hit.snippet && (
            <p className={styles.snippet}>
              <Highlighted text={hit.highlights.snippet} />
            </p>
          )}
          <p className={styles.facts}>
            {isOutcome(hit.outcome) && <OutcomeMark outcome={hit.outcome} />}
            {hit.board && hit.kind !== "board" && <span>{hit.board.name}</span>}
            <Matches name="symptom" texts={hit.highlights.symptoms} />
            <Matches name="place" texts={hit.highlights.refs} mono />
            <Matches name="code" texts={hit.highlights.codes} mono />
            <Matches name="signal" texts={hit.highlights.signals} mono />
          </p>
        </li>
      ))}
    </ul>
  );
}

function Matches({ name, texts, mono }: { name: string; texts: readonly string[]; mono?: boolean }) {
  if (texts.length === 0) return null;
  return (
    <span>
      {name}{" "}
      {texts.slice(0, SHOWN).map((text, index) => (
        <span key={text}>
          {index > 0 && ", "}
          <span className={mono ? "mono" : undefined}>
            <Highlighted text={text} />
          </span>
        </span>
      ))}
      {texts.length > SHOWN && ` and ${texts.length - SHOWN} more`}
    </span>
  );
}

function isMono({ kind }: Hit): boolean {
  return kind === "chip" || kind === "code";
}

function isOutcome(text: string | undefined): text is CaseOutcome {
  return CASE_OUTCOMES.some((outcome) => outcome === text);
}
