import type { Tx } from "#lib/infra/db/index.ts";
import { slugOfText } from "../slug.ts";
import { memberId, type Ctx } from "../context.ts";
import { visibleCases } from "../visible-cases.ts";

/** Ids of symptoms by slug or label; what the vocabulary lacks is added to it. */
export async function symptomIds(tx: Tx, ctx: Ctx, named: readonly string[]): Promise<string[]> {
  const bySlug = new Map<string, string>();
  for (const label of named) {
    const slug = slugOfText(label);
    if (slug !== "" && !bySlug.has(slug)) bySlug.set(slug, label.trim());
  }
  const known = await tx.symptom.findMany({
    where: { slug: { in: [...bySlug.keys()] } },
    select: { id: true, slug: true },
  });
  const ids = new Map(known.map((symptom) => [symptom.slug, symptom.id]));
  const missing = [...bySlug].filter(([slug]) => !ids.has(slug));
  if (missing.length > 0) {
    const rows = missing.map(([slug, label]) => ({
      id: ctx.newId(),
      slug,
      label,
      synonyms: [],
      createdById: memberId(ctx.actor),
      createdAt: ctx.now(),
    }));
    // Another member may add the same word at this moment: theirs counts.
    await tx.symptom.createMany({ data: rows, skipDuplicates: true });
    const made = await tx.symptom.findMany({
      where: { slug: { in: rows.map((row) => row.slug) } },
      select: { id: true, slug: true },
    });
    for (const symptom of made) ids.set(symptom.slug, symptom.id);
  }
  return [...bySlug.keys()].flatMap((slug) => ids.get(slug) ?? []);
}

export async function setSymptoms(tx: Tx, ctx: Ctx, caseId: string, named: readonly string[]): Promise<void> {
  const ids = await symptomIds(tx, ctx, named);
  await tx.caseSymptom.deleteMany({ where: { caseId } });
  await tx.caseSymptom.createMany({ data: ids.map((symptomId, position) => ({ caseId, symptomId, position })) });
}

/** The vocabulary, most used first: the words of cases that the actor may read, since a draft's are its author's own. */
export async function symptomVocabulary(
  ctx: Pick<Ctx, "db" | "actor">,
): Promise<{ slug: string; label: string; cases: number }[]> {
  const visible = { case: visibleCases(ctx.actor) };
  const rows = await ctx.db.symptom.findMany({
    where: { cases: { some: visible } },
    select: { slug: true, label: true, _count: { select: { cases: { where: visible } } } },
  });
  return rows
    .map((row) => ({ slug: row.slug, label: row.label, cases: row._count.cases }))
    .toSorted((a, b) => b.cases - a.cases || (a.slug < b.slug ? -1 : 1));
}
