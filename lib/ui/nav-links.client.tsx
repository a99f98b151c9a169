"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import styles from "./site-header.module.css";

/** The club's sections; the one that the page belongs to is marked. */
export function NavLinks({ links }: { links: readonly { href: string; text: string }[] }) {
  const path = usePathname();
  return (
    <ul className={styles.links}>
      {links.map(({ href, text }) => (
        <li key={href}>
          <Link
            prefetch={false}
            href={href}
            aria-current={path === href || path.startsWith(`${href}/`) ? "page" : undefined}
          >
            {text}
          </Link>
        </li>
      ))}
    </ul>
  );
}
