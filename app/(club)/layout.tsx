import Link from "next/link";
import type { ReactNode } from "react";
import { SiteHeader } from "#lib/ui/site-header.tsx";
import { ThemeSwitch } from "#lib/ui/theme-switch.client.tsx";
import { currentActor } from "#lib/web/actor.ts";
import { appearance } from "#lib/web/appearance.ts";
import styles from "#lib/ui/site-header.module.css";

export default async function ClubLayout({ children }: { children: ReactNode }) {
  const [actor, { theme }] = [await currentActor(), await appearance()];
  const member =
    actor.kind === "member" ? { name: actor.name, handle: actor.handle, steward: actor.role === "steward" } : null;
  return (
    <>
      <SiteHeader member={member} />
      <main id="main" className={styles.main} tabIndex={-1}>
        {children}
      </main>
      <footer className={styles.footer}>
        <p>
          Benchlore, kept by the club on its own machine.{" "}
          <Link prefetch={false} href="/safety">
            Safety at the bench
          </Link>
        </p>
        <ThemeSwitch theme={theme} />
      </footer>
    </>
  );
}
