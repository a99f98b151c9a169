import type { Metadata } from "next";
import { boardChanges, readBoard } from "#lib/services/boards/index.ts";
import { readHistory } from "#lib/services/history/index.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { HistoryList } from "#lib/ui/history.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";

export const metadata: Metadata = { title: "History of a board" };

/** Edits shown; each is read with the whole record before and after it. */
const MOST = 100;

export default async function BoardHistoryPage({ params }: { params: Promise<{ slug: string }> }) {
  const { slug } = await params;
  const ctx = await pageCtx();
  const { id, name } = await orNotFound(() => readBoard(ctx, slug));
  const { entries } = await orNotFound(() => readHistory(ctx, "board", id, MOST));
  const items = entries.map(({ id: entry, did, at, by, before, snapshot }) => ({
    id: entry,
    did,
    at,
    by,
    changes: boardChanges(before, snapshot),
  }));
  return (
    <>
      <PageHead
        trail={
          <Breadcrumb
            steps={[
              { text: "Boards", href: "/boards" },
              { text: name, href: `/boards/${slug}` },
            ]}
          />
        }
        title="History"
        lead="Every edit is kept: who, when, and each line before and after."
      />
      <HistoryList items={items} zone={await clubZone()} />
      {items.length === MOST && <p className="soft">The newest {MOST} edits are shown.</p>}
    </>
  );
}
