import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { boardCautions } from "#lib/core/board/index.ts";
import { readBoard } from "#lib/services/boards/index.ts";
import { readCase, symptomVocabulary } from "#lib/services/cases/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { ServiceError } from "#lib/services/errors.ts";
import { Notice } from "#lib/ui/notice.tsx";
import { PageHead } from "#lib/ui/section.tsx";
import { pageCtx } from "#lib/web/actor.ts";
import { NewCaseForm, type ChosenBoard } from "./new-case.client.tsx";

export const metadata: Metadata = { title: "Open a case" };

interface NewCasePageProps {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function NewCasePage({ searchParams }: NewCasePageProps) {
  const query = await searchParams;
  const ctx = await pageCtx();
  if (ctx.actor.kind !== "member") redirect(`/signin?next=${encodeURIComponent(addressOf(query))}`);
  const from = await earlierCase(ctx, first(query.openedFrom));
  const slug = first(query.board) || (from?.board ?? "");
  const [board, symptoms] = await Promise.all([chosenBoard(ctx, slug), symptomVocabulary(ctx)]);
  return (
    <>
      <PageHead title="Open a case" lead="Board and symptom are enough; everything else can come later at the bench." />
      {from && (
        <Notice
          kind="info"
          title={
            <>
              The cure of <Link href={`/cases/${from.number}`}>case {from.number}</Link> did not help here.
            </>
          }
        >
          <p>This case will be linked to it, so that others see both.</p>
        </Notice>
      )}
      {slug !== "" && board === null && (
        <Notice kind="warning" title={`There is no board “${slug}”.`}>
          <p>Choose one below, or open the case without a record of the board.</p>
        </Notice>
      )}
      <NewCaseForm
        board={board}
        symptoms={symptoms.map(({ slug: value, label, cases }) => ({
          value,
          label,
          hint: cases === 1 ? "1 case" : `${cases} cases`,
        }))}
        given={{
          symptoms: [...asked(query.symptom), ...(from?.symptoms.map((symptom) => symptom.label) ?? [])],
          openedFrom: from?.number ?? null,
        }}
      />
    </>
  );
}

/** Where to come back to after signing in. */
function addressOf(query: Record<string, string | string[] | undefined>): string {
  const pairs = Object.entries(query).flatMap(([name, value]) => [value ?? []].flat().map((one) => [name, one]));
  return pairs.length === 0 ? "/cases/new" : `/cases/new?${new URLSearchParams(pairs)}`;
}

function first(value: string | string[] | undefined): string {
  return (Array.isArray(value) ? value[0] : value)?.trim() ?? "";
}

function asked(value: string | string[] | undefined): string[] {
  return (Array.isArray(value) ? value : [value ?? ""]).map((one) => one.trim().slice(0, 80)).filter(Boolean);
}

/** The case whose cure did not help; none where there is no such case. */
async function earlierCase(ctx: Ctx, number: string) {
  return /^[1-9]\d{0,8}$/.test(number) ? orNull(() => readCase(ctx, Number(number))) : null;
}

async function chosenBoard(ctx: Ctx, slug: string): Promise<ChosenBoard | null> {
  const board = slug === "" ? null : await orNull(() => readBoard(ctx, slug));
  return (
    board && {
      slug: board.slug,
      name: board.name,
      revisions: board.revisions.map((revision) => revision.name),
      copies: board.copies.map((copy) => ({ value: copy.tag, label: copy.tag, hint: copy.owner?.name ?? "" })),
      cautions: boardCautions(board),
    }
  );
}

async function orNull<T>(read: () => Promise<T>): Promise<T | null> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof ServiceError && error.code === "not-found") return null;
    throw error;
  }
}
