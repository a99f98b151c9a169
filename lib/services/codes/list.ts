import { codeKeys, normalForm } from "#lib/core/marking/index.ts";
import type { Prisma } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { ListCodes } from "./schema.ts";

const LINE = {
  id: true,
  code: true,
  notes: true,
  createdAt: true,
  house: { select: { slug: true, name: true } },
  chip: { select: { slug: true, name: true, function: true, hiddenAt: true } },
  sightings: {
    select: { at: true, dateCode: true, seenAt: true, board: { select: { slug: true, name: true, hiddenAt: true } } },
    orderBy: { seenAt: "desc" },
    take: 1,
  },
  _count: { select: { sightings: true, claimsFrom: true, claimsTo: true } },
} as const satisfies Prisma.PartCodeSelect;
type LineRow = Prisma.PartCodeGetPayload<{ select: typeof LINE }>;

/** A code as one line of a list. */
export interface CodeLine {
  id: string;
  code: string;
  house: { slug: string; name: string } | null;
  chip: { slug: string; name: string; function: string } | null;
  notes: string;
  sightings: number;
  claims: number;
  /** Where it was seen last. */
  lastSeen: { board: { slug: string; name: string } | null; at: string; dateCode: string; when: string } | null;
  at: string;
}

/** Codes in the order of their print. `total` counts all that fit; `next` is the cursor of the next page. */
export async function listCodes(
  ctx: Ctx,
  raw: unknown,
): Promise<{ codes: CodeLine[]; total: number; next: string | null }> {
  const query = ListCodes.parse(raw);
  const where = narrowed(query);
  const [rows, total] = await Promise.all([
    ctx.db.partCode.findMany({
      where,
      select: LINE,
      orderBy: [{ normal: "asc" }, { id: "asc" }],
      take: query.limit + 1,
      ...(query.cursor && { cursor: { id: query.cursor }, skip: 1 }),
    }),
    ctx.db.partCode.count({ where }),
  ]);
  const page = rows.slice(0, query.limit);
  return { codes: page.map(codeLine), total, next: rows.length > query.limit ? (page.at(-1)?.id ?? null) : null };
}

function narrowed(query: ListCodes): Prisma.PartCodeWhereInput {
  return {
    hiddenAt: null,
    ...(query.house && { house: { slug: query.house } }),
    ...(query.chip && { chip: { slug: query.chip } }),
    ...(query.unknown !== undefined && { chipId: query.unknown ? null : { not: null } }),
    ...(query.q !== "" && { OR: written(query.q) }),
  };
}

/** By any way of writing it, by its beginning while it is being typed, or by the name of its house. */
function written(q: string): Prisma.PartCodeWhereInput[] {
  const normal = normalForm(q);
  return [
    { house: { name: { contains: q, mode: "insensitive" } } },
    ...(normal === "" ? [] : [{ normal: { contains: normal } }, { keys: { hasSome: codeKeys(q) } }]),
  ];
}

function codeLine({ _count, sightings, chip, createdAt, ...row }: LineRow): CodeLine {
  const [last] = sightings;
  return {
    ...row,
    chip: chip && !chip.hiddenAt ? { slug: chip.slug, name: chip.name, function: chip.function } : null,
    sightings: _count.sightings,
    claims: _count.claimsFrom + _count.claimsTo,
    lastSeen: last
      ? {
          board: last.board && !last.board.hiddenAt ? { slug: last.board.slug, name: last.board.name } : null,
          at: last.at,
          dateCode: last.dateCode,
          when: last.seenAt.toISOString(),
        }
      : null,
    at: createdAt.toISOString(),
  };
}
