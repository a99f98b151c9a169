import type {
  ContentsKind,
  EvidenceKind,
  Failure,
  InterchangeGrade,
  PackageStyle,
  Technology,
} from "#lib/core/shared/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import { visibleCases } from "../cases/index.ts";
import type { Ctx } from "../context.ts";
import { notFound } from "../errors.ts";
import { theCode } from "./find.ts";
import type { ProvedElsewhere } from "./schema.ts";
import { evidenceSummary, type EvidenceSummary } from "./weigh.ts";

const PERSON = { select: { handle: true, name: true } } as const;
const CODE_NAME = {
  select: { id: true, code: true, hiddenAt: true, house: { select: { slug: true, name: true } } },
} as const;
const CASE_NAME = { select: { number: true, title: true, outcome: true } } as const;
const BOARD_NAME = { select: { slug: true, name: true, hiddenAt: true } } as const;

const CLAIM = {
  id: true,
  grade: true,
  bothWays: true,
  conditions: true,
  note: true,
  version: true,
  createdAt: true,
  from: CODE_NAME,
  to: CODE_NAME,
  createdBy: PERSON,
  evidence: {
    select: {
      id: true,
      kind: true,
      provedElsewhere: true,
      note: true,
      createdAt: true,
      retractedAt: true,
      member: PERSON,
      caseId: true,
    },
    orderBy: { createdAt: "asc" },
  },
} as const satisfies Prisma.ClaimSelect;
type ClaimRow = Prisma.ClaimGetPayload<{ select: typeof CLAIM }>;

const CODE = {
  id: true,
  code: true,
  normal: true,
  notes: true,
  version: true,
  createdById: true,
  createdAt: true,
  updatedAt: true,
  house: { select: { slug: true, name: true, notes: true } },
  chip: {
    select: {
      slug: true,
      name: true,
      function: true,
      technology: true,
      contents: true,
      contentsRef: true,
      hiddenAt: true,
      packages: { select: { name: true, style: true, pinCount: true }, orderBy: { position: "asc" } },
    },
  },
  sightings: {
    select: { id: true, at: true, dateCode: true, note: true, seenAt: true, board: BOARD_NAME, member: PERSON },
    orderBy: { seenAt: "desc" },
  },
  placements: {
    select: { designator: true, board: BOARD_NAME },
    orderBy: [{ board: { name: "asc" } }, { position: "asc" }],
  },
  claimsFrom: { select: CLAIM, orderBy: { createdAt: "asc" } },
  claimsTo: { select: CLAIM, orderBy: { createdAt: "asc" } },
} as const satisfies Prisma.PartCodeSelect;
type CodeRow = Prisma.PartCodeGetPayload<{ select: typeof CODE }>;

export interface PersonName {
  handle: string;
  name: string;
}
export interface CodeName {
  id: string;
  code: string;
  house: { slug: string; name: string } | null;
}
export interface CaseName {
  number: number;
  title: string;
  outcome: string;
}

export interface EvidenceView {
  id: string;
  kind: EvidenceKind;
  provedElsewhere: ProvedElsewhere | null;
  note: string;
  by: PersonName | null;
  /** None, or one that is not for the asker to see. */
  case: CaseName | null;
  at: string;
  retracted: boolean;
}

/** `to` can stand in for `from`. */
export interface ClaimView extends EvidenceSummary {
  id: string;
  from: CodeName;
  to: CodeName;
  grade: InterchangeGrade;
  bothWays: boolean;
  conditions: string[];
  note: string;
  by: PersonName | null;
  at: string;
  evidence: EvidenceView[];
  version: number;
}

/** A code whole, as its page and the interface show it. */
export interface CodeView {
  id: string;
  /** As printed. */
  code: string;
  normal: string;
  house: { slug: string; name: string; notes: string } | null;
  /** Null while nobody knows what it is. */
  chip: {
    slug: string;
    name: string;
    function: string;
    technology: Technology;
    contents: ContentsKind;
    contentsRef: string;
    packages: { name: string; style: PackageStyle; pinCount: number }[];
  } | null;
  notes: string;
  by: PersonName | null;
  at: string;
  updatedAt: string;
  sightings: {
    id: string;
    board: { slug: string; name: string } | null;
    at: string;
    dateCode: string;
    note: string;
    by: PersonName | null;
    seenAt: string;
  }[];
  /** What can stand in for this code. */
  standIns: ClaimView[];
  /** What this code can stand in for. */
  standsInFor: ClaimView[];
  /** Boards whose record has it fitted. */
  boards: { slug: string; name: string; designators: string[] }[];
  failedIn: (CaseName & { failure: Failure; at: string })[];
  fittedIn: (CaseName & { from: string })[];
  spares: {
    id: string;
    direction: "offer" | "want";
    quantity: number;
    condition: string;
    note: string;
    by: PersonName;
  }[];
  version: number;
}

/** What is known of a code, by whom, on what evidence. Throws `not-found`, or `conflict` where several are written so. */
export async function readCodeView(ctx: Ctx, text: string): Promise<CodeView> {
  const { id } = await theCode(ctx.db, text);
  const row = await ctx.db.partCode.findUniqueOrThrow({ where: { id }, select: CODE });
  const [cases, failedIn, fittedIn, spares, by] = await Promise.all([
    evidenceCases(ctx, [...row.claimsFrom, ...row.claimsTo]),
    failures(ctx, id),
    fittings(ctx, id),
    sparesOf(ctx, id),
    row.createdById ? ctx.db.member.findUnique({ where: { id: row.createdById }, ...PERSON }) : null,
  ]);
  const isVisible = (claim: ClaimRow) => !claim.from.hiddenAt && !claim.to.hiddenAt;
  const claims = (rows: readonly ClaimRow[]) => rows.filter(isVisible).map((claim) => claimView(claim, cases));
  return {
    id: row.id,
    code: row.code,
    normal: row.normal,
    house: row.house,
    chip: chipOf(row),
    notes: row.notes,
    by,
    at: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    sightings: row.sightings.map(sightingView),
    standIns: claims(row.claimsFrom),
    standsInFor: claims(row.claimsTo),
    boards: boardsOf(row.placements),
    failedIn,
    fittedIn,
    spares,
    version: row.version,
  };
}

/** One claim with its evidence. */
export async function readClaim(ctx: Ctx, id: string): Promise<ClaimView> {
  const where = { id, from: { hiddenAt: null }, to: { hiddenAt: null } };
  const row = await ctx.db.claim.findFirst({ where, select: CLAIM });
  if (!row) throw notFound("claim with this id");
  return claimView(row, await evidenceCases(ctx, [row]));
}

function chipOf(row: CodeRow): CodeView["chip"] {
  if (!row.chip || row.chip.hiddenAt) return null;
  const { hiddenAt: _hidden, packages, ...chip } = row.chip;
  return {
    ...chip,
    technology: chip.technology as Technology,
    contents: chip.contents as ContentsKind,
    packages: packages.map((one) => ({ ...one, style: one.style as PackageStyle })),
  };
}

function sightingView({ member, board, seenAt, ...row }: CodeRow["sightings"][number]): CodeView["sightings"][number] {
  return {
    ...row,
    board: board && !board.hiddenAt ? { slug: board.slug, name: board.name } : null,
    by: member,
    seenAt: seenAt.toISOString(),
  };
}

function boardsOf(placements: CodeRow["placements"]): CodeView["boards"] {
  const boards = new Map<string, CodeView["boards"][number]>();
  for (const { designator, board } of placements) {
    if (board.hiddenAt) continue;
    const known = boards.get(board.slug);
    if (known) known.designators.push(designator);
    else boards.set(board.slug, { slug: board.slug, name: board.name, designators: [designator] });
  }
  return [...boards.values()];
}

function claimView(row: ClaimRow, cases: ReadonlyMap<string, CaseName>): ClaimView {
  const grade = row.grade as InterchangeGrade;
  const evidence = row.evidence.map((one) => ({
    id: one.id,
    kind: one.kind as EvidenceKind,
    provedElsewhere: one.provedElsewhere as ProvedElsewhere | null,
    note: one.note,
    by: one.member,
    case: (one.caseId && cases.get(one.caseId)) || null,
    at: one.createdAt.toISOString(),
    retracted: one.retractedAt !== null,
  }));
  return {
    id: row.id,
    from: codeName(row.from),
    to: codeName(row.to),
    grade,
    bothWays: row.bothWays,
    conditions: row.conditions,
    note: row.note,
    by: row.createdBy,
    at: row.createdAt.toISOString(),
    evidence,
    ...evidenceSummary(grade, evidence),
    version: row.version,
  };
}

function codeName({ id, code, house }: ClaimRow["from"]): CodeName {
  return { id, code, house };
}

/** The cases that the evidence rests on, those that the asker may read. */
async function evidenceCases(ctx: Ctx, claims: readonly ClaimRow[]): Promise<Map<string, CaseName>> {
  const ids = claims.flatMap((claim) => claim.evidence.flatMap((one) => one.caseId ?? []));
  if (ids.length === 0) return new Map();
  const found = await ctx.db.faultCase.findMany({
    where: { id: { in: ids }, AND: [visibleCases(ctx.actor)] },
    select: { id: true, ...CASE_NAME.select },
  });
  return new Map(found.map(({ id, ...one }) => [id, one]));
}

async function failures(ctx: Ctx, codeId: string): Promise<CodeView["failedIn"]> {
  const rows = await ctx.db.cause.findMany({
    where: { codeId, case: visibleCases(ctx.actor) },
    select: { at: true, failure: true, case: CASE_NAME },
    orderBy: { case: { number: "desc" } },
  });
  return rows.map((row) => ({ ...row.case, failure: row.failure as Failure, at: row.at }));
}

async function fittings(ctx: Ctx, codeId: string): Promise<CodeView["fittedIn"]> {
  const rows = await ctx.db.cure.findMany({
    where: { fittedId: codeId, cause: { case: visibleCases(ctx.actor) } },
    select: { fromWhere: true, cause: { select: { case: CASE_NAME } } },
    orderBy: { cause: { case: { number: "desc" } } },
  });
  return rows.map((row) => ({ ...row.cause.case, from: row.fromWhere }));
}

async function sparesOf(ctx: Ctx, codeId: string): Promise<CodeView["spares"]> {
  const rows = await ctx.db.spare.findMany({
    where: { codeId, doneAt: null, ...(ctx.actor.kind === "visitor" && { visibility: "public" }) },
    select: { id: true, direction: true, quantity: true, condition: true, note: true, member: PERSON },
    orderBy: { createdAt: "asc" },
  });
  return rows.map(({ member, direction, ...row }) => ({
    ...row,
    direction: direction === "want" ? "want" : "offer",
    by: member,
  }));
}
