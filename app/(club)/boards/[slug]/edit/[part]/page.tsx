import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { readBoard, type BoardView } from "#lib/services/boards/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { orNotFound } from "#lib/web/page.ts";
import { LIST_FORMS, type Row } from "../../../edit-lists.ts";
import { NetsForm } from "../../../lines-form.client.tsx";
import { ListForm } from "../../../list-form.client.tsx";
import { PartsForm } from "../../../parts-form.client.tsx";
import { typedRows, typedText } from "../../../typed-rows.ts";
import { EditHead } from "../steps.tsx";

export const metadata: Metadata = { title: "Change a board" };

export default async function EditPartPage({ params }: { params: Promise<{ slug: string; part: string }> }) {
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect("/signin");
  const { slug, part } = await params;
  const board = await orNotFound(() => readBoard(ctx, slug));
  const of = { slug, version: board.version };
  const head = { slug, name: board.name, part };
  if (part === "parts") {
    return (
      <>
        <EditHead
          {...head}
          title="Parts"
          lead="What sits where. Nothing is saved before you have seen what would change."
        />
        <PartsForm {...of} text={typedText(board, "parts")} />
      </>
    );
  }
  if (part === "nets") {
    return (
      <>
        <EditHead {...head} title="Nets" lead="Netlists are the exception: the few nets that matter help most." />
        <NetsForm {...of} text={typedText(board, "nets")} />
      </>
    );
  }
  const form = LIST_FORMS[part];
  if (!form) notFound();
  return (
    <>
      <EditHead {...head} title={form.title} lead={form.lead} />
      <ListForm key={part} {...of} part={part} rows={typedRows(board, form.list)} offers={offersOf(board, part)} />
    </>
  );
}

/** Connectors that the parts list names and that have no pins yet. */
function offersOf(board: BoardView, part: string): Row[] {
  if (part !== "connectors") return [];
  const there = new Set(board.connectors.map((connector) => connector.designator));
  return board.placements.flatMap(({ kind, designator, value }) =>
    kind === "connector" && !there.has(designator) ? [{ designator, name: "", kind: value, pins: "" }] : [],
  );
}
