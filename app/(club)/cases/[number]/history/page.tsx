import type { Metadata } from "next";
import { readCase } from "#lib/services/cases/index.ts";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { orNotFound } from "#lib/web/page.ts";
import { HistoryPage } from "../../../history/history-page.tsx";

export const metadata: Metadata = { title: "History of a case" };

export default async function CaseHistoryPage({ params }: { params: Promise<{ number: string }> }) {
  const { number } = await params;
  const ctx = await pageCtx();
  const { id } = await orNotFound(() => readCase(ctx, caseNumber(number)));
  return <HistoryPage kind="case" id={id} />;
}
