import Link from "next/link";
import styles from "./marks.module.css";

export interface CodeProps {
  /** As printed on the package. */
  code: string;
  href?: string;
}

/** A part code as a mark, leading to its record when `href` is given. */
export function Code({ code, href }: CodeProps) {
  if (!href) return <span className={styles.code}>{code}</span>;
  return (
    <Link prefetch={false} className={styles.code} href={href}>
      {code}
    </Link>
  );
}
