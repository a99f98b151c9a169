// npm run club -- <verb>: works on a stopped club, and says so where a running one stands in the way.
import { loadGeneratedCases } from "#seed/load.ts";
import { makeSignInLink, addMember, changeMember } from "#lib/services/members/index.ts";
import { openClub } from "./club-context.ts";

const USAGE = `usage: npm run club -- <verb>
  member add HANDLE NAME [ROLE]     adds a member (role: member, reviewer, steward)
  member link HANDLE                makes a sign-in link: one use, 24 hours
  member role HANDLE ROLE           changes a role
  member disable HANDLE             shuts an account and ends its sign-ins
  demo --cases N --seed S           fills a club that has the demo boards with N invented cases`;

try {
  await run(process.argv.slice(2));
  process.exit(0);
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
}

async function run(words: string[]): Promise<void> {
  const [noun, verb, ...rest] = words;
  if (noun === "member" && verb) return member(verb, rest);
  if (noun === "demo") return demo(words.slice(1));
  throw new Error(USAGE);
}

async function member(verb: string, [handle, ...rest]: string[]): Promise<void> {
  if (!handle) throw new Error(USAGE);
  const { ctx, env, close } = await openClub();
  try {
    switch (verb) {
      case "add": {
        const { made } = await addMember(ctx, { handle, name: rest[0] ?? handle, role: rest[1] ?? "member" });
        say(
          made
            ? `Added ${handle}. Next: npm run club -- member link ${handle}`
            : `There is a member "${handle}" already.`,
        );
        return;
      }
      case "link": {
        const { token, expiresAt } = await makeSignInLink(ctx, handle);
        say(`${env.SITE_URL.replace(/\/$/, "")}/link/${token}`);
        say(`Works once, until ${expiresAt.toISOString()}.`);
        return;
      }
      case "role":
        await changeMember(ctx, handle, { role: rest[0] });
        say(`${handle} is a ${rest[0]} now.`);
        return;
      case "disable":
        await changeMember(ctx, handle, { disabled: true });
        say(`The account of ${handle} is shut; its sign-ins have ended.`);
        return;
      default:
        throw new Error(USAGE);
    }
  } finally {
    await close();
  }
}

async function demo(words: string[]): Promise<void> {
  const count = numberAfter(words, "--cases");
  const seed = numberAfter(words, "--seed");
  const { ctx, close } = await openClub();
  try {
    await loadGeneratedCases(ctx, { count, seed }, (done, of) => {
      if (done === of || done % 100 === 0) say(`${done} of ${of}`);
    });
  } finally {
    await close();
  }
}

function numberAfter(words: string[], name: string): number {
  const value = Number(words[words.indexOf(name) + 1]);
  if (!words.includes(name) || !Number.isInteger(value) || value < 0) throw new Error(USAGE);
  return value;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
