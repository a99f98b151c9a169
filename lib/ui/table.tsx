import type { ComponentProps, ReactNode } from "react";
import { classNames } from "./class-names.ts";
import styles from "./table.module.css";

export interface Column {
  head: ReactNode;
  /** Head of a column of numbers: stands over their right edge. */
  number?: boolean;
  /** No wider than its content. */
  narrow?: boolean;
  /** The head is for screen readers only: a column of buttons, of signs. */
  hidden?: boolean;
  key?: string;
}

export interface TableProps {
  /** Names the table for those who do not see it, and the region that scrolls on a phone. */
  label: string;
  caption?: ReactNode;
  columns: readonly (Column | string)[];
  /**
   * What answers the question stands in the first three columns (a phone shows no more without scrolling). Rows:
   * `<tr><th scope="row">…</th><td>…</td><NumberCell>…</NumberCell></tr>`.
   */
  children: ReactNode;
}

/** A table that scrolls sideways by itself where it is too wide. */
export function Table({ label, caption, columns, children }: TableProps) {
  return (
    // A region that scrolls must be reached by keyboard.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex
    <section className={styles.region} aria-label={label} tabIndex={0}>
      <table className={styles.table} aria-label={label}>
        {caption && <caption className={styles.caption}>{caption}</caption>}
        <thead>
          <tr>
            {columns.map((given, index) => {
              const column: Column = typeof given === "string" ? { head: given } : given;
              const { head, number, narrow, hidden, key = typeof head === "string" ? head : index } = column;
              return (
                <th key={key} scope="col" className={classNames(number && styles.end, narrow && styles.narrow)}>
                  {hidden ? <span className="visually-hidden">{head}</span> : head}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </section>
  );
}

/** A cell with a number: monospaced, set to the right, on one line. */
export function NumberCell(props: Omit<ComponentProps<"td">, "className">) {
  return <td {...props} className={styles.number} />;
}
