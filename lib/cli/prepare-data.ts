// Brings the database up to date, loads the demo club into an empty one, and makes the first steward's sign-in.
// Safe to run again, and after it was killed half way: what is there already stays.
import fs from "node:fs";
import { loadDemoClub } from "#seed/load.ts";
import { dataDir } from "#lib/infra/db/data-dir.ts";
import { makeSignInLink, addMember } from "#lib/services/members/index.ts";
import type { Ctx } from "#lib/services/context.ts";
import { openClub } from "./club-context.ts";

const DEMO = "demo";
const FIRST_STEWARD = "steward";

try {
  await prepare();
  process.exit(0);
} catch (error) {
  process.stderr.write(`\n${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}

async function prepare(): Promise<void> {
  const { ctx, env, database, close } = await openClub();
  for (const name of database.migrated) say(`      migration ${name}`);
  if (env.CLUB_DEMO === "on") await demo(ctx);
  await firstSteward(ctx, env.SITE_URL);
  await close();
  fs.writeFileSync(dataDir("prepared"), fs.readdirSync("prisma/migrations").toSorted().join("\n"));
}

/** Loads the demo club into an empty database; goes on where an earlier load was interrupted. */
async function demo(ctx: Ctx): Promise<void> {
  let state = await demoState(ctx);
  if (state === null && (await isEmpty(ctx))) {
    await setDemoState(ctx, "loading");
    state = await demoState(ctx);
  }
  if (state?.value !== "loading") return;
  await loadDemoClub(ctx, state.at, progress);
  await setDemoState(ctx, "loaded");
}

async function isEmpty(ctx: Ctx): Promise<boolean> {
  const [members, boards] = await Promise.all([ctx.db.member.count(), ctx.db.board.count()]);
  return members === 0 && boards === 0;
}

async function demoState(ctx: Ctx): Promise<{ value: unknown; at: Date } | null> {
  return ctx.db.setting.findUnique({ where: { name: DEMO }, select: { value: true, at: true } });
}

async function setDemoState(ctx: Ctx, value: "loading" | "loaded"): Promise<void> {
  const at = ctx.now();
  await ctx.db.setting.upsert({
    where: { name: DEMO },
    create: { name: DEMO, value, at },
    update: { value, at },
    select: { name: true },
  });
}

/** A club without a steward who can sign in gets one, and a link that works once within a day. */
async function firstSteward(ctx: Ctx, site: string): Promise<void> {
  const ready = await ctx.db.member.count({
    where: { role: "steward", passwordHash: { not: null }, disabledAt: null },
  });
  if (ready > 0) return;
  await addMember(ctx, { handle: FIRST_STEWARD, name: "Steward", role: "steward" });
  const { token } = await makeSignInLink(ctx, FIRST_STEWARD);
  say("");
  say("      The first steward signs in here, once, within 24 hours (another: npm run club -- member link steward):");
  say(`      ${site.replace(/\/$/, "")}/link/${token}`);
  say("");
}

function progress(done: number, of: number, what: string): void {
  const share = Math.round((100 * done) / of);
  if (process.stdout.isTTY) {
    process.stdout.write(
      `\r      demo club: ${String(share).padStart(3)} %  ${what.padEnd(40)}${done === of ? "\n" : ""}`,
    );
  } else if (done === of || done % Math.ceil(of / 10) === 0) {
    say(`      demo club: ${share} %  ${what}`);
  }
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
