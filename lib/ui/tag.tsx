import Link from "next/link";
import type { ReactNode } from "react";
import { classNames } from "./class-names.ts";
import styles from "./marks.module.css";

export interface TagProps {
  children: ReactNode;
  href?: string;
  /** A filter that is on. */
  chosen?: boolean;
}

/** A symptom, a kind, a filter. */
export function Tag({ children, href, chosen }: TagProps) {
  const className = classNames(styles.tag, chosen && styles.chosen);
  if (!href) return <span className={className}>{children}</span>;
  return (
    <Link prefetch={false} className={className} href={href} aria-current={chosen ? "true" : undefined}>
      {children}
    </Link>
  );
}

/** Tags in a row; each child becomes an item of a list. */
export function TagList({ children, label }: { children: readonly ReactNode[]; label?: string }) {
  return (
    <ul className={styles.tags} aria-label={label}>
      {children.map((child, index) => (
        // The tags of one list have no identity beyond their order.
        // oxlint-disable-next-line react/no-array-index-key
        <li key={index}>{child}</li>
      ))}
    </ul>
  );
}
