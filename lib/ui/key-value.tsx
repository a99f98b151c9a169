import type { ReactNode } from "react";
import styles from "./key-value.module.css";

export interface KeyValueItem {
  name: string;
  value: ReactNode;
}

/** Facts about one record, name and value. An item whose value is null, undefined or "" is left out. */
export function KeyValue({ items }: { items: readonly KeyValueItem[] }) {
  const shown = items.filter(({ value }) => value !== null && value !== undefined && value !== "");
  if (shown.length === 0) return null;
  return (
    <dl className={styles.list}>
      {shown.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
