import Link from "next/link";
import styles from "./pager.module.css";

/** The way up from this page: each step a link; the page itself is not repeated. */
export function Breadcrumb({ steps }: { steps: readonly { text: string; href: string }[] }) {
  return (
    <nav aria-label="Where this page is">
      <ol className={styles.trail}>
        {steps.map(({ text, href }) => (
          <li key={href}>
            <Link prefetch={false} href={href}>
              {text}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
