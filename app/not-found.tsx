import type { Metadata } from "next";
import { ButtonLink, ButtonRow } from "#lib/ui/button.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { SearchBox } from "#lib/ui/search-box.client.tsx";
import styles from "#lib/ui/site-header.module.css";

export const metadata: Metadata = { title: "Not found" };

export default function NotFound() {
  return (
    <main id="main" className={styles.main} tabIndex={-1}>
      <PageHead
        kind="Benchlore"
        title="There is no such page here"
        lead="The address may be mistyped, or the record may be a draft that only its author sees."
      />
      <SearchBox />
      <ButtonRow>
        <ButtonLink href="/">To the first page</ButtonLink>
        <ButtonLink href="/cases">All cases</ButtonLink>
        <ButtonLink href="/signin">Sign in</ButtonLink>
      </ButtonRow>
    </main>
  );
}
