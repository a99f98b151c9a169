import { fieldChanges, readHistory } from "#lib/services/history/index.ts";
import type { Commented } from "#lib/services/comments/schema.ts";
import { Breadcrumb } from "#lib/ui/breadcrumb.tsx";
import { EmptyState } from "#lib/ui/empty-state.tsx";
import { HistoryList } from "#lib/ui/history.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { clubZone, orNotFound } from "#lib/web/page.ts";

/** Entries shown at once; a case with 200 checks has some more. */
const MOST = 300;

/** Who changed a record, when, and what: the same page for every kind of record. */
export async function HistoryPage({ kind, id }: { kind: Commented; id: string }) {
  const ctx = await pageCtx();
  const { name, href, entries } = await orNotFound(() => readHistory(ctx, kind, id, MOST));
  const items = entries.map(({ id: entry, kind: part, did, at, by, before, snapshot }) => ({
    id: entry,
    // A cause that came with its case was named with it.
    did: part === "cause" && did === "case.create" ? "cause.record" : did,
    at,
    by,
    about: placeOf(snapshot),
    changes: fieldChanges(before, snapshot),
  }));
  return (
    <>
      <PageHead
        trail={<Breadcrumb steps={[{ text: name, href }]} />}
        title="History"
        lead="Every edit is kept: who, when, and each field before and after."
      />
      {items.length === 0 ? (
        <EmptyState title="Nothing was changed yet." />
      ) : (
        <HistoryList items={items} zone={await clubZone()} />
      )}
      {items.length === MOST && <p className="soft">The newest {MOST} entries are shown.</p>}
    </>
  );
}

function placeOf(snapshot: unknown): string {
  const at = typeof snapshot === "object" && snapshot !== null && "at" in snapshot ? snapshot.at : "";
  return typeof at === "string" ? at : "";
}
