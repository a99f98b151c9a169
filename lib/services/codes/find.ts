import { normalForm } from "#lib/core/marking/index.ts";
import type { Db, Prisma, Tx } from "#lib/infra/db/index.ts";
import type { Ctx } from "../context.ts";
import { invalid, notFound, ServiceError } from "../errors.ts";

const CHOICE = {
  id: true,
  code: true,
  house: { select: { slug: true, name: true } },
  chip: { select: { slug: true, name: true } },
} as const satisfies Prisma.PartCodeSelect;

/** One of several records that a text may mean. */
export type CodeChoice = Prisma.PartCodeGetPayload<{ select: typeof CHOICE }>;
export type FoundCode = { kind: "one"; id: string; code: string } | { kind: "choices"; choices: CodeChoice[] };

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
/** More records of one form than this are not listed. No house prints one number in twenty spellings. */
const MOST_CHOICES = 20;

/**
 * The record of a code, by its id or by its text however it is written. One record of exactly this print is meant,
 * though others share its letters and digits; where several remain, all are answered. Throws `not-found`.
 */
export async function findCode(ctx: Ctx, text: string): Promise<FoundCode> {
  const found = await codesOf(ctx.db, text);
  const [first] = found;
  if (!first) throw notFound(`code "${text.trim().slice(0, 120)}"`);
  if (found.length > 1) return { kind: "choices", choices: found };
  return { kind: "one", id: first.id, code: first.code };
}

/** The one record that a text means. Throws `not-found`, or `conflict` where it means several. */
export async function theCode(db: Db | Tx, text: string): Promise<CodeChoice> {
  const found = await codesOf(db, text);
  const [first] = found;
  if (!first) throw notFound(`code "${text.trim().slice(0, 120)}"`);
  if (found.length > 1) throw new ServiceError("conflict", severalMeant(found), { present: { choices: found } });
  return first;
}

/** The one record that a field names; throws with the field's path where there is none or more than one. */
export async function codeOfField(db: Db | Tx, text: string, path: string): Promise<CodeChoice> {
  const found = await codesOf(db, text);
  const [first] = found;
  if (!first) throw invalid(path, `There is no record of the code "${text}". Record it first.`);
  if (found.length > 1) throw invalid(path, severalMeant(found));
  return first;
}

async function codesOf(db: Db | Tx, text: string): Promise<CodeChoice[]> {
  const typed = text.trim();
  const visible = { hiddenAt: null };
  if (UUID.test(typed)) {
    const byId = await db.partCode.findFirst({ where: { id: typed, ...visible }, select: CHOICE });
    if (byId) return [byId];
  }
  const normal = normalForm(typed);
  if (normal === "") return [];
  const alike = await db.partCode.findMany({
    where: { normal, ...visible },
    select: CHOICE,
    orderBy: [{ code: "asc" }, { id: "asc" }],
    take: MOST_CHOICES,
  });
  const exact = alike.filter((one) => one.code.toUpperCase() === typed.toUpperCase());
  return exact.length === 1 ? exact : alike;
}

function severalMeant(choices: readonly CodeChoice[]): string {
  const named = choices.map((one) => (one.house ? `${one.code} (${one.house.name})` : one.code));
  return `Several records are written so: ${named.join(", ")}. Open the one you mean and use its address.`;
}
