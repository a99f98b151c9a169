import { ButtonLink } from "./button.tsx";
import styles from "./pager.module.css";

export interface PagerProps {
  /** Names what is paged: "Cases". */
  label: string;
  previous?: string | undefined;
  next?: string | undefined;
  /** "1 to 20 of 153". */
  text?: string;
}

/** Steps through a long list; nothing when there is nowhere to go. */
export function Pager({ label, previous, next, text }: PagerProps) {
  if (!previous && !next) return null;
  return (
    <nav className={styles.pager} aria-label={`${label}: pages`}>
      {previous && (
        <ButtonLink href={previous} rel="prev">
          ← Back
        </ButtonLink>
      )}
      {text && <span className="soft">{text}</span>}
      {next && (
        <ButtonLink href={next} rel="next">
          More →
        </ButtonLink>
      )}
    </nav>
  );
}
