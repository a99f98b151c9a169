import { codeKeys, readMarking, type MarkingReading } from "#lib/core/marking/index.ts";
import type { Ctx } from "../context.ts";
import { invalid } from "../errors.ts";

/** A record of the club that a marking may mean. */
export interface MarkingRecord {
  kind: "code" | "chip";
  id: string;
  title: string;
  url: string;
  /** Of a code: what it is known to be. */
  chip: { slug: string; name: string } | null;
  house: { slug: string; name: string } | null;
}

export interface MarkingAnswer {
  input: string;
  key: string;
  readings: MarkingReading[];
  records: MarkingRecord[];
}

/** Longest marking that is read: four lines of print on a large package. */
const LONGEST = 200;
const MOST_RECORDS = 20;

/** What a marking says: by the rules of numbering, and by the records of the club. */
export async function readMarkingText(ctx: Ctx, text: string): Promise<MarkingAnswer> {
  if (text.length > LONGEST) throw invalid("text", `A marking has at most ${LONGEST} characters.`);
  const { input, key, readings } = readMarking(text);
  const wanted = [...new Set([key, ...codeKeys(text), ...codeKeys(key)])].filter((one) => one !== "");
  return { input, key, readings, records: wanted.length === 0 ? [] : await recordsOf(ctx, key, wanted) };
}

async function recordsOf(ctx: Ctx, key: string, keys: string[]): Promise<MarkingRecord[]> {
  const where = { hiddenAt: null, keys: { hasSome: keys } };
  const house = { select: { slug: true, name: true } } as const;
  const [codes, chips] = await Promise.all([
    ctx.db.partCode.findMany({
      where,
      select: { id: true, code: true, normal: true, house, chip: { select: { slug: true, name: true } } },
      orderBy: [{ normal: "asc" }, { id: "asc" }],
      take: MOST_RECORDS,
    }),
    ctx.db.chip.findMany({
      where,
      select: { id: true, slug: true, name: true },
      orderBy: [{ name: "asc" }, { id: "asc" }],
      take: MOST_RECORDS,
    }),
  ]);
  const codeRecords = codes
    .toSorted((a, b) => Number(b.normal === key) - Number(a.normal === key))
    .map((one) => ({
      kind: "code" as const,
      id: one.id,
      title: one.code,
      url: `/codes/${one.id}`,
      chip: one.chip,
      house: one.house,
    }));
  const chipRecords = chips.map((one) => ({
    kind: "chip" as const,
    id: one.id,
    title: one.name,
    url: `/chips/${one.slug}`,
    chip: null,
    house: null,
  }));
  return [...codeRecords, ...chipRecords].slice(0, MOST_RECORDS);
}
