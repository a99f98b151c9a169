import { v7 } from "uuid";
import { inject } from "vitest";
import { createCase } from "#lib/services/cases/index.ts";
import { asked } from "./api-world.ts";
import { seeded } from "./mutated-bodies.ts";
import { onDisk } from "./served-club.ts";
import { copyFolder, freePort, startServer, temporaryFolder, type RunningServer } from "./server.ts";

const CLIENTS = 20;
/** Cases that the checks go to: fewer than clients, so that clients meet on the same row. */
const CASES = 6;
/** Acknowledged writes before the kill; the number varies so that the kill meets every step of a commit. */
const WRITES = { atLeast: 30, more: 90 } as const;

export interface KillReport {
  acknowledged: number;
  /** Checks that were acknowledged and are not there. */
  lostChecks: string[];
  /** Cases that were acknowledged and are not there. */
  lostCases: string[];
  /** Words for which search and the database disagree. */
  disagreeing: string[];
}

interface Written {
  checks: { id: string; case: number }[];
  cases: { word: string; number: number }[];
  /** Words of all cases that were sent, acknowledged or not. */
  tried: string[];
}

/** Kills a server while clients write, `rounds` times on the same data, and looks after each restart for what is lost. */
export async function killWhileWriting(rounds: number, seed: number): Promise<KillReport> {
  const dataDir = temporaryFolder("benchlore-kill-");
  copyFolder(inject("emptyClub"), dataDir);
  const { token, numbers } = await prepare(dataDir);
  const random = seeded(seed);
  const report: KillReport = { acknowledged: 0, lostChecks: [], lostCases: [], disagreeing: [] };
  const written: Written = { checks: [], cases: [], tried: [] };
  const port = await freePort();
  let server = await startServer({ dataDir, port });
  for (let round = 0; round < rounds; round++) {
    await writeUntilKilled(server, token, numbers, written, WRITES.atLeast + random() * WRITES.more);
    server = await startServer({ dataDir, port });
    await lookForLosses(server, token, numbers, written, report);
  }
  report.acknowledged = written.checks.length + written.cases.length;
  await server.stop();
  return report;
}

async function prepare(dataDir: string): Promise<{ token: string; numbers: number[] }> {
  return onDisk(dataDir, async (club) => {
    const author = await club.member("author");
    const numbers: number[] = [];
    for (let made = 0; made < CASES; made++) {
      const { number } = await createCase(club.as(author), { symptomText: "Under test.", publish: true });
      numbers.push(number);
    }
    return { token: await club.token(author, ["read", "write"]), numbers };
  });
}

async function writeUntilKilled(
  server: RunningServer,
  token: string,
  numbers: number[],
  written: Written,
  writes: number,
): Promise<void> {
  const authorization = `Bearer ${token}`;
  const enough = written.checks.length + written.cases.length + writes;
  let over = false;
  const client = async (index: number) => {
    for (let turn = 0; !over; turn++) {
      if (turn % 5 === 4) await writeCase(server, authorization, written);
      else await writeCheck(server, authorization, numbers[(index + turn) % numbers.length] ?? 1, written);
    }
  };
  const clients = Array.from({ length: CLIENTS }, (_, index) =>
    client(index).catch((error: unknown) => {
      // A connection that breaks is what the kill is for; anything before it is not.
      if (!over) throw error;
    }),
  );
  const all = Promise.all(clients);
  while (written.checks.length + written.cases.length < enough) {
    await Promise.race([all, new Promise((resume) => setTimeout(resume, 5))]);
  }
  over = true;
  await server.kill();
  await all;
}

async function writeCheck(server: RunningServer, authorization: string, number: number, written: Written) {
  const id = v7();
  const { status, text } = await asked(`${server.url}/api/v1/cases/${number}/checks`, "POST", {
    headers: { authorization },
    body: { id, kind: "dc-voltage", at: "U7.14", measured: "4.9 V" },
  });
  if (status !== 201) throw new Error(`a check was answered with ${status}: ${text}`);
  written.checks.push({ id, case: number });
}

async function writeCase(server: RunningServer, authorization: string, written: Written) {
  const word = `zq${v7()
    .replaceAll(/[^a-z0-9]/g, "")
    .slice(-14)}`;
  written.tried.push(word);
  const { status, text, json } = await asked(`${server.url}/api/v1/cases`, "POST", {
    headers: { authorization },
    body: { symptomText: `It hums ${word}.`, title: word, publish: true },
  });
  if (status !== 201) throw new Error(`a case was answered with ${status}: ${text}`);
  written.cases.push({ word, number: (json as { number: number }).number });
}

async function lookForLosses(
  server: RunningServer,
  token: string,
  numbers: number[],
  written: Written,
  report: KillReport,
): Promise<void> {
  const headers = { authorization: `Bearer ${token}` };
  const read = async (path: string) => (await asked(`${server.url}/api/v1${path}`, "GET", { headers })).json;
  const checks = new Set<string>();
  for (const number of numbers) {
    const found = (await read(`/cases/${number}`)) as { checks: { id: string }[] };
    for (const check of found.checks) checks.add(check.id);
  }
  report.lostChecks.push(...written.checks.filter(({ id }) => !checks.has(id)).map(({ id }) => id));
  const titles = await titlesInDatabase(read);
  report.lostCases.push(...written.cases.filter(({ word }) => !titles.has(word)).map(({ word }) => word));
  for (const word of written.tried) {
    const { hits } = (await read(`/search?kind=case&q=${word}`)) as { hits: { title: string }[] };
    if (hits.some((hit) => hit.title.endsWith(word)) !== titles.has(word)) report.disagreeing.push(word);
  }
}

type Read = (path: string) => Promise<unknown>;

async function titlesInDatabase(read: Read): Promise<Set<string>> {
  const titles = new Set<string>();
  let next: number | null = null;
  do {
    const page = (await read(`/cases?limit=100${next ? `&cursor=${next}` : ""}`)) as {
      cases: { title: string }[];
      next: number | null;
    };
    for (const one of page.cases) titles.add(one.title);
    next = page.next;
  } while (next !== null);
  return titles;
}
