import type { Metadata, Viewport } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import { boardCautions } from "#lib/core/board/index.ts";
import { adviseCase } from "#lib/services/advice/index.ts";
import { listAttachments } from "#lib/services/attachments/index.ts";
import { readBoard } from "#lib/services/boards/index.ts";
import { readCase, tickedCautions } from "#lib/services/cases/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { OutcomeMark } from "#lib/ui/outcome-mark.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { caseNumber } from "#lib/web/case-number.ts";
import { runtime } from "#lib/web/runtime.ts";
import { Bench } from "./bench.client.tsx";

interface BenchPageProps {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: BenchPageProps): Promise<Metadata> {
  return { title: `Bench, case ${(await params).number}` };
}

// The keyboard of a phone makes the page shorter instead of covering the entry line.
export const viewport: Viewport = { interactiveWidget: "resizes-content" };

export default async function BenchPage({ params }: BenchPageProps) {
  const ctx = await pageCtx();
  const number = await found(async () => caseNumber((await params).number));
  if (ctx.actor.kind !== "member") redirect(`/cases/${number}`);
  const view = await found(() => readCase(ctx, number));
  const [ground, advice, ticked, photos] = await Promise.all([
    boardUnderTest(ctx, view.board),
    adviseCase(ctx, number),
    tickedCautions(ctx, number),
    listAttachments(ctx, "case", view.id),
  ]);
  const symptoms = view.symptoms.map((symptom) => symptom.label);
  return (
    <Bench
      caseNumber={number}
      caseId={view.id}
      member={ctx.actor.handle}
      facts={ground.facts}
      sheets={ground.sheets}
      cautions={ground.facts ? boardCautions(ground.facts) : []}
      ticked={ticked}
      checks={view.checks}
      advice={advice}
      photos={photos
        .filter((photo) => photo.kind === "photo")
        .map(({ id, url, thumb, name }) => ({ id, url, thumb, name }))}
      zone={(await runtime()).env.CLUB_TIME_ZONE}
    >
      <PageHead
        kind={
          <>
            <Link href={`/cases/${number}`}>Case {number}</Link>, at the bench
          </>
        }
        title={view.boardName ?? "A board without a record"}
        lead={[...symptoms, view.symptomText].filter(Boolean).join(". ")}
        meta={
          <>
            <OutcomeMark outcome={view.outcome} />
            {view.revision && <span>Revision {view.revision}</span>}
            {view.copy && <span>Tag {view.copy}</span>}
            {view.board && <Link href={`/boards/${view.board}`}>The board’s record</Link>}
            <Link href={`/cases/${number}/label`}>Label for the bag</Link>
          </>
        }
      />
    </Bench>
  );
}

/** The board's record, and on which sheet of the drawings each part is. */
async function boardUnderTest(ctx: Ctx, slug: string | null) {
  if (slug === null) return { facts: null, sheets: {} };
  const board = await readBoard(ctx, slug);
  const facts = await ctx.boards.get(board.id);
  const sheets = board.placements.filter((part) => part.sheet !== "").map((part) => [part.designator, part.sheet]);
  return { facts, sheets: Object.fromEntries(sheets) as Record<string, string> };
}

async function found<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") notFound();
    throw error;
  }
}
