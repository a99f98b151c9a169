import { normalForm } from "#lib/core/marking/index.ts";
import type { LinkTable, RecordDirective, RecordLink } from "#lib/infra/markdown/index.ts";
import { visibleCases } from "../visible-cases.ts";
import type { Ctx } from "../context.ts";

const MENTION = /:(code|chip|board|case)\[([^\]\n]{1,160})\]/g;
/** A text that names more records than this is a list made by a machine; the rest stays as marked words. */
const MOST_MENTIONS = 500;

type Mention = { kind: RecordDirective; name: string };

function mentionsIn(texts: readonly string[]): Mention[] {
  const found = new Map<string, Mention>();
  for (const text of texts) {
    for (const [, kind, label] of text.matchAll(MENTION)) {
      const name = label?.trim() ?? "";
      if (name === "" || found.size >= MOST_MENTIONS) continue;
      found.set(keyOf(kind as RecordDirective, name), { kind: kind as RecordDirective, name });
    }
  }
  return [...found.values()];
}

/** As `mentionKey` of lib/infra/markdown spells it. */
function keyOf(kind: RecordDirective, name: string): string {
  return `${kind}:${name}`;
}

/** The records that the texts mention and the actor may see: one query for each kind that occurs, however many texts. */
export async function mentionedRecords(ctx: Ctx, texts: readonly string[]): Promise<LinkTable> {
  const mentions = mentionsIn(texts);
  const names = (kind: RecordDirective) => mentions.flatMap((one) => (one.kind === kind ? [one.name] : []));
  const found = await Promise.all([
    codeLinks(ctx, names("code")),
    chipLinks(ctx, names("chip")),
    boardLinks(ctx, names("board")),
    caseLinks(ctx, names("case")),
  ]);
  return new Map(found.flat());
}

type Found = [key: string, link: RecordLink];

async function codeLinks(ctx: Ctx, names: readonly string[]): Promise<Found[]> {
  const wanted = [...new Set(names.map(normalForm))].filter((normal) => normal !== "");
  if (wanted.length === 0) return [];
  const rows = await ctx.db.partCode.findMany({
    where: { normal: { in: wanted }, hiddenAt: null },
    select: { id: true, normal: true, house: { select: { name: true } }, chip: { select: { name: true } } },
    orderBy: { id: "asc" },
  });
  return names.flatMap((name): Found[] => {
    const same = rows.filter((row) => row.normal === normalForm(name));
    const [first] = same;
    if (!first) return [];
    // Where several makers print it, the page of the code asks which is meant.
    if (same.length > 1)
      return [[keyOf("code", name), { href: `/codes/${encodeURIComponent(first.normal)}`, text: name }]];
    const title = [first.house?.name, first.chip?.name].filter(Boolean).join(", ");
    return [[keyOf("code", name), { href: `/codes/${first.id}`, text: name, ...(title && { title }) }]];
  });
}

async function chipLinks(ctx: Ctx, names: readonly string[]): Promise<Found[]> {
  if (names.length === 0) return [];
  const rows = await ctx.db.chip.findMany({
    where: { hiddenAt: null, OR: bySlugOrName(names) },
    select: { slug: true, name: true, function: true },
    orderBy: { slug: "asc" },
  });
  return names.flatMap((name): Found[] => {
    const row = rows.find((one) => isNamed(one, name));
    if (!row) return [];
    return [
      [
        keyOf("chip", name),
        { href: `/chips/${row.slug}`, text: row.name, ...(row.function && { title: row.function }) },
      ],
    ];
  });
}

async function boardLinks(ctx: Ctx, names: readonly string[]): Promise<Found[]> {
  if (names.length === 0) return [];
  const rows = await ctx.db.board.findMany({
    where: { hiddenAt: null, OR: bySlugOrName(names) },
    select: { slug: true, name: true },
    orderBy: { slug: "asc" },
  });
  return names.flatMap((name): Found[] => {
    const row = rows.find((one) => isNamed(one, name));
    return row ? [[keyOf("board", name), { href: `/boards/${row.slug}`, text: row.name }]] : [];
  });
}

function bySlugOrName(names: readonly string[]) {
  return [
    { slug: { in: names.map((name) => name.toLowerCase()) } },
    { name: { in: [...names], mode: "insensitive" as const } },
  ];
}

function isNamed(row: { slug: string; name: string }, name: string): boolean {
  return row.slug === name.toLowerCase() || row.name.toLowerCase() === name.toLowerCase();
}

async function caseLinks(ctx: Ctx, names: readonly string[]): Promise<Found[]> {
  const numbers = names.filter((name) => /^[1-9]\d{0,8}$/.test(name)).map(Number);
  if (numbers.length === 0) return [];
  const rows = await ctx.db.faultCase.findMany({
    where: { number: { in: numbers }, AND: [visibleCases(ctx.actor)] },
    select: { number: true, title: true },
  });
  return rows.map(({ number, title }) => [
    keyOf("case", String(number)),
    { href: `/cases/${number}`, text: `case ${number}`, title },
  ]);
}
