import type { CaseOutcome, CureAction, Failure, ProofKind } from "#lib/core/shared/index.ts";
import type { Db, Prisma, Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";
import { visibleCases } from "../visible-cases.ts";
import { checkView, type CheckView } from "./check-view.ts";
import { storyForPeople } from "./story.ts";

const PERSON = { select: { handle: true, name: true } } as const;

const OWN = {
  id: true,
  number: true,
  title: true,
  state: true,
  outcome: true,
  lesson: true,
  symptomText: true,
  reproduced: true,
  story: true,
  asksHelp: true,
  openedAt: true,
  publishedAt: true,
  closedAt: true,
  updatedAt: true,
  version: true,
  author: PERSON,
  board: { select: { slug: true, name: true, kind: true } },
  revision: { select: { name: true } },
  copy: { select: { tag: true } },
  symptoms: { select: { symptom: { select: { slug: true, label: true } } }, orderBy: { position: "asc" } },
  openedFrom: { select: { number: true, title: true } },
} as const satisfies Prisma.FaultCaseSelect;
type OwnRow = Prisma.FaultCaseGetPayload<{ select: typeof OWN }>;

const WHOLE = {
  ...OWN,
  checks: { select: checkView.select, orderBy: { position: "asc" } },
  causes: {
    select: {
      id: true,
      at: true,
      failure: true,
      description: true,
      version: true,
      chip: { select: { slug: true, name: true } },
      code: { select: { id: true, code: true } },
      explains: { select: { checkId: true } },
      cure: {
        select: {
          action: true,
          description: true,
          fittedText: true,
          fromWhere: true,
          fitted: { select: { id: true, code: true } },
        },
      },
      proofs: {
        select: { id: true, kind: true, soakMinutes: true, note: true, provedAt: true, member: PERSON },
        orderBy: { provedAt: "asc" },
      },
    },
    orderBy: { position: "asc" },
  },
  confirmations: {
    select: {
      id: true,
      helped: true,
      note: true,
      createdAt: true,
      member: PERSON,
      linked: { select: { number: true, title: true, state: true } },
    },
    orderBy: { createdAt: "asc" },
  },
  followers: { select: { number: true, title: true, state: true, outcome: true } },
} as const satisfies Prisma.FaultCaseSelect;
type WholeRow = Prisma.FaultCaseGetPayload<{ select: typeof WHOLE }>;

export interface Person {
  handle: string;
  name: string;
}

/** A case's own fields: what its ETag covers. */
export interface CaseOwnFields {
  id: string;
  number: number;
  title: string;
  state: "draft" | "published" | "hidden";
  outcome: CaseOutcome;
  lesson: string;
  symptomText: string;
  reproduced: string;
  /** Markdown, with case numbers as people type them. */
  story: string;
  asksHelp: string;
  /** Slug; null: a board without a record. */
  board: string | null;
  boardName: string | null;
  boardKind: string | null;
  revision: string;
  copy: string;
  symptoms: { slug: string; label: string }[];
  author: Person;
  openedAt: string;
  publishedAt: string | null;
  closedAt: string | null;
  updatedAt: string;
  openedFrom: { number: number; title: string } | null;
  version: number;
}

export interface CauseView {
  id: string;
  at: string;
  failure: Failure;
  description: string;
  chip: { slug: string; name: string } | null;
  code: { id: string; code: string } | null;
  explains: string[];
  cure: {
    action: CureAction;
    description: string;
    /** As printed; empty: nothing was fitted. */
    fitted: string;
    fittedId: string | null;
    from: string;
  } | null;
  proofs: { id: string; kind: ProofKind; minutes: number | null; note: string; at: string; by: Person | null }[];
  version: number;
}

export interface CaseView extends CaseOwnFields {
  checks: CheckView[];
  causes: CauseView[];
  confirmations: {
    id: string;
    helped: boolean;
    note: string;
    at: string;
    by: Person;
    linked: { number: number; title: string } | null;
  }[];
  helped: number;
  didNotHelp: number;
  /** Cases opened because this one's cure did not help. */
  followers: { number: number; title: string; outcome: CaseOutcome }[];
}

/** A case whole, as its page and the interface show it. */
export async function readCase(ctx: Ctx, number: number): Promise<CaseView> {
  const row = await ctx.db.faultCase.findFirst({ where: { number, AND: [visibleCases(ctx.actor)] }, select: WHOLE });
  if (!row) throw notFound(`case ${number}`);
  return wholeView(ctx.db, row);
}

/** A case's own fields as they stand: what a second writer is shown. */
export async function caseOwnFields(db: Db | Tx, _ctx: Ctx, id: string): Promise<CaseOwnFields> {
  const row = await db.faultCase.findUniqueOrThrow({ where: { id }, select: OWN });
  return ownView(row, await storyForPeople(db, row.story));
}

function ownView(row: OwnRow, story: string): CaseOwnFields {
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    state: row.state as CaseOwnFields["state"],
    outcome: row.outcome as CaseOutcome,
    lesson: row.lesson,
    symptomText: row.symptomText,
    reproduced: row.reproduced,
    story,
    asksHelp: row.asksHelp,
    board: row.board?.slug ?? null,
    boardName: row.board?.name ?? null,
    boardKind: row.board?.kind ?? null,
    revision: row.revision?.name ?? "",
    copy: row.copy?.tag ?? "",
    symptoms: row.symptoms.map((one) => one.symptom),
    author: row.author,
    openedAt: row.openedAt.toISOString(),
    publishedAt: row.publishedAt?.toISOString() ?? null,
    closedAt: row.closedAt?.toISOString() ?? null,
    updatedAt: row.updatedAt.toISOString(),
    openedFrom: row.openedFrom,
    version: row.version,
  };
}

async function wholeView(db: Db | Tx, row: WholeRow): Promise<CaseView> {
  const isPublic = (one: { state: string }) => one.state === "published";
  return {
    ...ownView(row, await storyForPeople(db, row.story)),
    checks: row.checks.map(checkView.of),
    causes: row.causes.map(causeView),
    confirmations: row.confirmations.map((one) => ({
      id: one.id,
      helped: one.helped,
      note: one.note,
      at: one.createdAt.toISOString(),
      by: one.member,
      // A draft of the member who confirmed stays private.
      linked: one.linked && isPublic(one.linked) ? { number: one.linked.number, title: one.linked.title } : null,
    })),
    helped: row.confirmations.filter((one) => one.helped).length,
    didNotHelp: row.confirmations.filter((one) => !one.helped).length,
    followers: row.followers
      .filter(isPublic)
      .map((one) => ({ number: one.number, title: one.title, outcome: one.outcome as CaseOutcome })),
  };
}

function causeView(row: WholeRow["causes"][number]): CauseView {
  return {
    id: row.id,
    at: row.at,
    failure: row.failure as Failure,
    description: row.description,
    chip: row.chip,
    code: row.code,
    explains: row.explains.map((one) => one.checkId),
    cure: row.cure && {
      action: row.cure.action as CureAction,
      description: row.cure.description,
      fitted: row.cure.fittedText || (row.cure.fitted?.code ?? ""),
      fittedId: row.cure.fitted?.id ?? null,
      from: row.cure.fromWhere,
    },
    proofs: row.proofs.map((proof) => ({
      id: proof.id,
      kind: proof.kind as ProofKind,
      minutes: proof.soakMinutes,
      note: proof.note,
      at: proof.provedAt.toISOString(),
      by: proof.member,
    })),
    version: row.version,
  };
}
