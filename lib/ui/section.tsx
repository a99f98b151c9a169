import type { ReactNode } from "react";
import styles from "./section.module.css";

export interface SectionProps {
  /** Also the anchor: `/boards/kestrel-2#rails`. */
  id: string;
  title: string;
  /** How many there are, after the title. */
  count?: number | string;
  /** A link or a button at the end of the heading's line. */
  aside?: ReactNode;
  level?: 2 | 3;
  children: ReactNode;
}

/** A part of a page with a heading that can be linked to. */
export function Section({ id, title, count, aside, level = 2, children }: SectionProps) {
  const Heading = level === 2 ? "h2" : "h3";
  return (
    <section className={styles.section} id={id} aria-labelledby={`${id}-title`}>
      <div className={styles.head}>
        <Heading id={`${id}-title`}>
          {title}
          {count !== undefined && <span className={styles.count}> {count}</span>}
          <a className={styles.anchor} href={`#${id}`} aria-label={`Link to “${title}”`}>
            #
          </a>
        </Heading>
        {aside}
      </div>
      {children}
    </section>
  );
}

export interface PageHeadProps {
  /** What kind of record: "Case 12", "Board", "Chip". */
  kind?: ReactNode;
  title: string;
  /** The title is a code or a designator. */
  mono?: boolean;
  /** The one line that answers the page's question. */
  lead?: ReactNode;
  /** Outcome, author, time: small facts in a row. Each is one child. */
  meta?: ReactNode;
  /** Above everything: a `Breadcrumb`. */
  trail?: ReactNode;
  /** Below: a `ButtonRow`. */
  children?: ReactNode;
}

/** The head of a page: its only `h1`. */
export function PageHead({ kind, title, mono, lead, meta, trail, children }: PageHeadProps) {
  return (
    <header className={styles.page}>
      {trail}
      {kind && <p className={styles.kind}>{kind}</p>}
      <h1 className={mono ? styles.monoTitle : undefined}>{title}</h1>
      {lead && <p className={styles.lead}>{lead}</p>}
      {meta && <div className={styles.meta}>{meta}</div>}
      {children}
    </header>
  );
}

/** A wide column and a narrow one; one below the other on a phone. */
export function Columns({ children }: { children: ReactNode }) {
  return <div className={styles.columns}>{children}</div>;
}
