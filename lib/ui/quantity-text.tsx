import { classNames } from "./class-names.ts";
import styles from "./marks.module.css";

export interface QuantityTextProps {
  /** A quantity or reading as text: `4.87 V`, `noise`. */
  text: string;
  strong?: boolean;
}

/** A reading or a quantity: monospaced, on one line. */
export function QuantityText({ text, strong }: QuantityTextProps) {
  return <span className={classNames(styles.quantity, strong && styles.strong)}>{text}</span>;
}
