import type { ContentsKind, PackageStyle, Technology } from "#lib/core/shared/index.ts";
import type { Tx } from "#lib/infra/db/index.ts";
import type { PinView } from "../chips/index.ts";
import { memberId, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";

/** A chip that an import writes. */
export interface PlannedChip {
  id: string;
  slug: string;
  /** Version that the plan was made against; null: the chip is new. */
  version: number | null;
}

/** Rows of some hundred chips, ready to be written; each list goes to the database as one parameter. */
export interface Slice {
  chips: PlannedChip[];
  made: {
    id: string;
    slug: string;
    name: string;
    function: string;
    technology: Technology;
    contents: ContentsKind;
    dataSheet: string;
    source: string;
    keys: string[];
  }[];
  /** Chips that came from this library before: their words follow the file. */
  followed: { id: string; function: string; dataSheet: string }[];
  /** Packages that give way to those of the file. */
  replaced: string[];
  packages: { id: string; chipId: string; name: string; style: PackageStyle; pinCount: number; position: number }[];
  pins: (PinView & { id: string; packageId: string; position: number })[];
}

/** Locks the chips of a plan and checks that each stands as the plan has it. Throws `conflict`, naming those that do not. */
export async function lockPlanned(tx: Tx, chips: readonly PlannedChip[]): Promise<void> {
  const rows = await tx.$queryRaw<{ id: string; slug: string; version: number }[]>`
    select "id", "slug", "version" from "Chip" where "slug" = any(${chips.map((chip) => chip.slug)}::text[])
    order by "id" for update`;
  const there = new Map(rows.map((row) => [row.slug, row]));
  const changed = chips.filter(({ slug, version }) => (there.get(slug)?.version ?? null) !== version);
  if (changed.length === 0) return;
  const named = changed.slice(0, 5).map((chip) => chip.slug);
  const more = changed.length > named.length ? ` and ${changed.length - named.length} more` : "";
  throw new ServiceError(
    "conflict",
    `Changed since the dry run: ${named.join(", ")}${more}. Nothing was written. Upload the file again for a fresh dry run.`,
    { present: { changed: changed.map((chip) => chip.slug) } },
  );
}

export async function writeSlice(tx: Tx, slice: Slice, at: Date, by: string | null): Promise<void> {
  await writeChips(tx, slice, at, by);
  await tx.$executeRaw`
    delete from "ChipPackage" where "id" = any(${slice.replaced}::uuid[])`;
  await tx.$executeRaw`
    insert into "ChipPackage" ("id", "chipId", "name", "style", "pinCount", "position")
    select "id", "chipId", "name", "style", "pinCount", "position"
    from jsonb_to_recordset(${JSON.stringify(slice.packages)}::jsonb)
      as r("id" uuid, "chipId" uuid, "name" text, "style" text, "pinCount" int, "position" int)`;
  await tx.$executeRaw`
    insert into "ChipPin" ("id", "packageId", "number", "name", "type", "role", "activeLow", "supply", "unit", "position")
    select "id", "packageId", "number", "name", "type", "role", "activeLow", "supply", "unit", "position"
    from jsonb_to_recordset(${JSON.stringify(slice.pins)}::jsonb)
      as r("id" uuid, "packageId" uuid, "number" text, "name" text, "type" text, "role" text, "activeLow" boolean,
           "supply" float8, "unit" int, "position" int)`;
}

async function writeChips(tx: Tx, { made, followed, chips }: Slice, at: Date, by: string | null): Promise<void> {
  await tx.$executeRaw`
    insert into "Chip" ("id", "slug", "name", "function", "technology", "contents", "dataSheet", "source", "keys",
                        "createdById", "createdAt", "updatedAt")
    select "id", "slug", "name", "function", "technology", "contents", "dataSheet", "source", "keys",
           ${by}::uuid, ${at}, ${at}
    from jsonb_to_recordset(${JSON.stringify(made)}::jsonb)
      as r("id" uuid, "slug" text, "name" text, "function" text, "technology" text, "contents" text, "dataSheet" text,
           "source" text, "keys" text[])`;
  await tx.$executeRaw`
    update "Chip" set "function" = r."function", "dataSheet" = r."dataSheet"
    from jsonb_to_recordset(${JSON.stringify(followed)}::jsonb) as r("id" uuid, "function" text, "dataSheet" text)
    where "Chip"."id" = r."id"`;
  const changed = chips.filter((chip) => chip.version !== null).map((chip) => chip.id);
  await tx.$executeRaw`
    update "Chip" set "version" = "version" + 1, "updatedAt" = ${at} where "id" = any(${changed}::uuid[])`;
}

/** Chips whose history is written by one statement. Origin: 200 chips of 20 pins take 40 ms. */
const CHIPS_AT_ONCE = 200;

/**
 * A revision of every chip that an import wrote, in the shape that `touchedChip` gives a single one. Made by the
 * database from its own rows: sending every pin table there and back again would take longer than the import.
 */
export async function writeHistory(tx: Tx, ctx: Ctx, chips: readonly PlannedChip[], at: Date): Promise<void> {
  for (let from = 0; from < chips.length; from += CHIPS_AT_ONCE) {
    const pairs = chips.slice(from, from + CHIPS_AT_ONCE).map((chip) => ({ id: ctx.newId(), chipId: chip.id }));
    await tx.$executeRaw`
      insert into "RecordRevision" ("id", "recordKind", "recordId", "version", "did", "memberId", "at", "snapshot")
      select r."id", 'chip', c."id", c."version", 'chip.import', ${memberId(ctx.actor)}::uuid, ${at},
        jsonb_build_object(
          'id', c."id", 'slug', c."slug", 'name', c."name", 'function', c."function", 'technology', c."technology",
          'contents', c."contents", 'contentsRef', c."contentsRef", 'notes', c."notes", 'dataSheet', c."dataSheet",
          'source', c."source", 'version', c."version",
          'updatedAt', to_char(c."updatedAt" at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
          'packages', (
            select coalesce(jsonb_agg(jsonb_build_object(
              'name', p."name", 'style', p."style", 'pinCount', p."pinCount",
              'pins', (
                select coalesce(jsonb_agg(jsonb_build_object(
                  'number', n."number", 'name', n."name", 'type', n."type", 'role', n."role",
                  'activeLow', n."activeLow", 'supply', n."supply", 'unit', n."unit") order by n."position"), '[]')
                from "ChipPin" n where n."packageId" = p."id")) order by p."position"), '[]')
            from "ChipPackage" p where p."chipId" = c."id"))
      from jsonb_to_recordset(${JSON.stringify(pairs)}::jsonb) as r("id" uuid, "chipId" uuid)
      join "Chip" c on c."id" = r."chipId"`;
  }
}
