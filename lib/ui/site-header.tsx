import Link from "next/link";
import { NavLinks } from "./nav-links.client.tsx";
import { SiteSearch } from "./site-search.client.tsx";
import styles from "./site-header.module.css";

const SECTIONS = [
  { href: "/cases", text: "Cases" },
  { href: "/boards", text: "Boards" },
  { href: "/chips", text: "Chips" },
  { href: "/codes", text: "Codes" },
  { href: "/spares", text: "Spares" },
  { href: "/members", text: "Members" },
] as const;

export interface SiteHeaderProps {
  /** The member who is signed in; null for a visitor. */
  member: { name: string; handle: string; steward: boolean } | null;
}

/** The head of every page: name, search, who is signed in, the sections. */
export function SiteHeader({ member }: SiteHeaderProps) {
  return (
    <header className={styles.header}>
      <div className={styles.inner}>
        <Link prefetch={false} className={styles.name} href="/">
          Benchlore
        </Link>
        <div className={styles.search}>
          <SiteSearch />
        </div>
        <div className={styles.account}>
          {member ? (
            <AccountMenu member={member} />
          ) : (
            <Link prefetch={false} href="/signin">
              Sign in
            </Link>
          )}
        </div>
        <nav className={styles.nav} aria-label="Sections">
          <NavLinks links={SECTIONS} />
        </nav>
      </div>
    </header>
  );
}

/** A disclosure and not a menu widget: it opens without script, and its links are links. */
function AccountMenu({ member }: { member: NonNullable<SiteHeaderProps["member"]> }) {
  return (
    <details>
      <summary>
        <span className={styles.who}>{member.name}</span>
      </summary>
      <ul className={styles.menu}>
        <li>
          <Link prefetch={false} href={`/members/${member.handle}`}>
            My page
          </Link>
        </li>
        <li>
          <Link prefetch={false} href="/account">
            Account and sign out
          </Link>
        </li>
        {member.steward && (
          <li>
            <Link prefetch={false} href="/desk">
              Steward’s desk
            </Link>
          </li>
        )}
      </ul>
    </details>
  );
}
