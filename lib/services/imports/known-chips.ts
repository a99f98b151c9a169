import type { PackageStyle, PinRole, PinType } from "#lib/core/shared/index.ts";
import type { Db, Tx } from "#lib/infra/db/index.ts";

export interface KnownPin {
  number: string;
  name: string;
  type: PinType;
  role: PinRole;
  activeLow: boolean;
}

/** A chip record as far as an import compares it. */
export interface KnownChip {
  id: string;
  slug: string;
  function: string;
  dataSheet: string;
  source: string;
  version: number;
  packages: { name: string; style: PackageStyle; pinCount: number; pins: KnownPin[] }[];
}

/**
 * The records that came from one of these sources or stand at one of these addresses, hidden ones too. The database
 * hands over each pin table as one value: thousands of pins as rows of their own would stall the server.
 */
export async function knownChips(db: Db | Tx, by: { sources: string[]; slugs: string[] }): Promise<KnownChip[]> {
  return db.$queryRaw<KnownChip[]>`
    select c."id", c."slug", c."function", c."dataSheet", c."source", c."version",
      (select coalesce(jsonb_agg(jsonb_build_object(
         'name', p."name", 'style', p."style", 'pinCount', p."pinCount",
         'pins', (
           select coalesce(jsonb_agg(jsonb_build_object(
             'number', n."number", 'name', n."name", 'type', n."type", 'role', n."role", 'activeLow', n."activeLow"
           ) order by n."position"), '[]')
           from "ChipPin" n where n."packageId" = p."id")
       ) order by p."position"), '[]')
       from "ChipPackage" p where p."chipId" = c."id") as "packages"
    from "Chip" c
    where c."source" = any(${by.sources}::text[]) or c."slug" = any(${by.slugs}::text[])
    order by c."id"`;
}
