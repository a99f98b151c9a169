import type { ReactNode } from "react";
import styles from "./empty-state.module.css";

export interface EmptyStateProps {
  /** What is not there: "No case on this board yet." */
  title: string;
  /** What to do about it: a sentence, a link, a button. */
  children?: ReactNode;
}

/** An empty list that says what to do. */
export function EmptyState({ title, children }: EmptyStateProps) {
  return (
    <div className={styles.empty}>
      <p className={styles.title}>{title}</p>
      {children}
    </div>
  );
}
