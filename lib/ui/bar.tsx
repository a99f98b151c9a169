import styles from "./bar.module.css";

export interface BarProps {
  /** 0 to 1. */
  value: number;
  /** The word that goes with it: "likely". */
  word?: string;
}

/** Words for a probability; the bounds are common usage, no source. */
export function probabilityWord(value: number): string {
  if (value >= 0.9) return "almost certain";
  if (value >= 0.6) return "likely";
  if (value >= 0.3) return "possible";
  if (value >= 0.1) return "less likely";
  return "unlikely";
}

/** A probability as a bar, a word and a number. */
export function Bar({ value, word = probabilityWord(value) }: BarProps) {
  const share = Math.min(1, Math.max(0, value));
  return (
    <span className={styles.bar}>
      <svg className={styles.track} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect className={styles.value} width={share * 100} height="10" />
        <rect className={styles.frame} width="100" height="10" vectorEffect="non-scaling-stroke" />
      </svg>
      <span>
        <span className={styles.number}>{Math.round(share * 100)} %</span> {word}
      </span>
    </span>
  );
}
