import styles from "./loading.module.css";

/** Shown while a page is fetched, and only when that takes long enough to be noticed. */
export function Loading() {
  return <output className={styles.loading}>Fetching …</output>;
}
