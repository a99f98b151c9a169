import { z } from "zod";
import { change } from "../change.ts";
import type { Ctx } from "../context.ts";
import { ClubSettings, DEFAULT_SETTINGS } from "./schema.ts";

const NAME = "club";

/** The club's settings; the defaults where none were saved. */
export async function clubSettings(ctx: Pick<Ctx, "db">): Promise<ClubSettings> {
  const row = await ctx.db.setting.findUnique({ where: { name: NAME }, select: { value: true } });
  // A setting that a newer version added is not in a row that an older one saved.
  const saved = z.record(z.string(), z.unknown()).safeParse(row?.value);
  const read = ClubSettings.safeParse({ ...DEFAULT_SETTINGS, ...(saved.success ? saved.data : {}) });
  return read.success ? read.data : DEFAULT_SETTINGS;
}

export async function saveClubSettings(ctx: Ctx, raw: unknown): Promise<ClubSettings> {
  const settings = ClubSettings.parse(raw);
  return change(ctx, "steward", async (tx) => {
    const at = ctx.now();
    await tx.setting.upsert({
      where: { name: NAME },
      create: { name: NAME, value: settings, at },
      update: { value: settings, at },
      select: { name: true },
    });
    return { value: settings, did: "club.settings", touched: [], detail: { membersOnly: settings.membersOnly } };
  });
}
