import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { COMMENTED, type Commented } from "#lib/services/comments/schema.ts";
import { orNotFound } from "#lib/web/page.ts";
import { recordId } from "#lib/web/record-id.ts";
import { HistoryPage } from "../../history-page.tsx";

export const metadata: Metadata = { title: "History" };

export default async function RecordHistoryPage({ params }: { params: Promise<{ kind: string; id: string }> }) {
  const { kind, id } = await params;
  const known = COMMENTED.find((one): one is Commented => one === kind);
  if (!known) notFound();
  return <HistoryPage kind={known} id={await orNotFound(async () => recordId(id, known))} />;
}
