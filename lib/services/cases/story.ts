import type { Db, Tx } from "#lib/infra/db/index.ts";

const TYPED = /:case\[(\d{1,9})\]/g;
const STORED = /:case\[([0-9a-f]{8}-[0-9a-f-]{27})\]/g;

/** `:case[12]` as typed becomes `:case[<id>]`: numbers are a club's own, ids survive an exchange between clubs. */
export async function storyForStorage(tx: Tx, typed: string): Promise<string> {
  const numbers = [...new Set([...typed.matchAll(TYPED)].map((match) => Number(match[1])))].filter((n) => n < 2 ** 31);
  if (numbers.length === 0) return typed;
  const cases = await tx.faultCase.findMany({ where: { number: { in: numbers } }, select: { id: true, number: true } });
  const ids = new Map(cases.map((one) => [String(one.number), one.id]));
  return typed.replaceAll(TYPED, (whole, number: string) => (ids.has(number) ? `:case[${ids.get(number)}]` : whole));
}

/** The other way, for an editor and for the page: ids become the club's numbers. */
export async function storyForPeople(db: Db | Tx, stored: string): Promise<string> {
  const ids = [...new Set([...stored.matchAll(STORED)].flatMap((match) => match[1] ?? []))];
  if (ids.length === 0) return stored;
  const cases = await db.faultCase.findMany({ where: { id: { in: ids } }, select: { id: true, number: true } });
  const numbers = new Map(cases.map((one) => [one.id, one.number]));
  return stored.replaceAll(STORED, (whole, id: string) => (numbers.has(id) ? `:case[${numbers.get(id)}]` : whole));
}
