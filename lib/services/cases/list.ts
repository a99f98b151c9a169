import type { z } from "zod";
import type { CaseOutcome } from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { visibleCases } from "../visible-cases.ts";
import { ListCases } from "./schema.ts";

const LINE = {
  number: true,
  title: true,
  state: true,
  outcome: true,
  lesson: true,
  symptomText: true,
  openedAt: true,
  author: { select: { handle: true, name: true } },
  board: { select: { slug: true, name: true } },
  symptoms: { select: { symptom: { select: { slug: true, label: true } } }, orderBy: { position: "asc" } },
  causes: {
    select: { at: true, failure: true, chip: { select: { slug: true, name: true } } },
    orderBy: { position: "asc" },
  },
  _count: { select: { checks: true, confirmations: { where: { helped: true } } } },
} as const satisfies Prisma.FaultCaseSelect;
type LineRow = Prisma.FaultCaseGetPayload<{ select: typeof LINE }>;

/** A case as one line of a list. */
export interface CaseLine {
  number: number;
  title: string;
  state: string;
  outcome: CaseOutcome;
  lesson: string;
  symptom: string;
  symptoms: { slug: string; label: string }[];
  openedAt: string;
  author: { handle: string; name: string };
  board: { slug: string; name: string } | null;
  causes: { at: string; failure: string; chip: { slug: string; name: string } | null }[];
  checks: number;
  helped: number;
}

/** Cases, newest number first. `total` counts all that fit. */
export async function listCases(
  ctx: Ctx,
  raw: unknown,
): Promise<{ cases: CaseLine[]; total: number; next: number | null }> {
  const query = ListCases.parse(raw);
  const where = { AND: [visibleCases(ctx.actor), narrowed(query)] };
  const [rows, total] = await Promise.all([
    ctx.db.faultCase.findMany({
      where: { AND: [where, query.cursor ? { number: { lt: query.cursor } } : {}] },
      select: LINE,
      orderBy: { number: "desc" },
      take: query.limit + 1,
    }),
    ctx.db.faultCase.count({ where }),
  ]);
  const page = rows.slice(0, query.limit);
  const more = rows.length > query.limit;
  return { cases: page.map(caseLine), total, next: more ? (page.at(-1)?.number ?? null) : null };
}

function narrowed(query: z.infer<typeof ListCases>): Prisma.FaultCaseWhereInput {
  return {
    ...(query.board && { board: { slug: query.board } }),
    ...(query.boardKind && { board: { kind: query.boardKind } }),
    ...(query.chip && { causes: { some: { chip: { slug: query.chip } } } }),
    ...(query.code && { causes: { some: { OR: [{ codeId: query.code }, { cure: { fittedId: query.code } }] } } }),
    ...(query.author && { author: { handle: query.author } }),
    ...(query.symptom && { symptoms: { some: { symptom: { slug: query.symptom } } } }),
    ...(query.outcome && { outcome: query.outcome }),
    ...(query.asksHelp && { asksHelp: { not: "" } }),
    ...(query.drafts !== undefined && { state: query.drafts ? "draft" : "published" }),
  };
}

function caseLine(row: LineRow): CaseLine {
  const { _count, symptoms, symptomText, openedAt, ...rest } = row;
  return {
    ...rest,
    outcome: row.outcome as CaseOutcome,
    symptoms: symptoms.map((one) => one.symptom),
    symptom: symptoms[0]?.symptom.label ?? symptomText.slice(0, 120),
    openedAt: openedAt.toISOString(),
    checks: _count.checks,
    helped: _count.confirmations,
  };
}
