import fs from "node:fs";
import path from "node:path";
import { commitImport, planImport } from "#lib/services/imports/index.ts";
import { debianPackage } from "#tests/support/debian.ts";
import { testClub } from "#tests/support/test-club.ts";

/** Plan and commit of a whole symbol library into an empty club on the embedded database. */
export async function benchImports(): Promise<{ symbols74xx: { symbols: number; ms: number } } | null> {
  const folder = await debianPackage("kicad-symbols");
  if (!folder) return null;
  const bytes = fs.readFileSync(path.join(folder, "usr/share/kicad/symbols/74xx.kicad_sym"));
  const club = await testClub();
  try {
    const ctx = club.ctx(await club.member("importer"));
    const began = performance.now();
    const plan = await planImport(ctx, { format: "symbols", fileName: "74xx.kicad_sym", bytes });
    await commitImport(ctx, plan.id);
    const ms = Math.round(performance.now() - began);
    return { symbols74xx: { symbols: await club.database.db.chip.count(), ms } };
  } finally {
    await club.close();
  }
}
