import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
  export interface ProvidedContext {
    /** Data folder of an empty club, prepared and stopped; copy it. */
    emptyClub: string;
    /** Data folder of the demo club, prepared and stopped; copy it. */
    demoClub: string;
    /** What preparing the demo club printed: the first steward's link is in it. */
    demoOutput: string;
  }
}

const KEPT = "node_modules/.cache/test-clubs";
/** What the content of a prepared club follows from. */
const SOURCES = ["lib", "seed", "prisma", "package-lock.json"];

/** Prepares the clubs that test files copy, once for all files and again only when their sources have changed. */
export default async function setup(project: TestProject): Promise<void> {
  const hash = sourceHash();
  const empty = await prepared(`empty-${hash}`, "off");
  const demo = await prepared(`demo-${hash}`, "on");
  project.provide("emptyClub", empty);
  project.provide("demoClub", demo);
  project.provide("demoOutput", fs.readFileSync(`${demo}/printed`, "utf8"));
}

/** The folder of the demo club for programs that are no tests: screens, bench. */
export function preparedDemo(): Promise<string> {
  return prepared(`demo-${sourceHash()}`, "on");
}

async function prepared(name: string, demo: "on" | "off"): Promise<string> {
  const folder = path.resolve(KEPT, name);
  if (fs.existsSync(`${folder}/printed`)) return folder;
  for (const old of fs.existsSync(KEPT) ? fs.readdirSync(KEPT) : []) {
    if (old.split("-")[0] === name.split("-")[0]) fs.rmSync(path.join(KEPT, old), { recursive: true, force: true });
  }
  const said = await prepare(folder, demo);
  fs.writeFileSync(`${folder}/printed`, said);
  return folder;
}

function prepare(folder: string, demo: "on" | "off"): Promise<string> {
  const child = spawn(process.execPath, ["--import", "tsx", "lib/cli/prepare-data.ts"], {
    env: { ...process.env, DATA_DIR: folder, CLUB_DEMO: demo, DATABASE_URL: "" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  child.stdout.on("data", (chunk: Buffer) => (said += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (said += chunk.toString()));
  return new Promise((resolve, reject) => {
    child.once("exit", (code) => {
      if (code === 0) resolve(said);
      else reject(new Error(`A club could not be prepared:\n${said}`));
    });
  });
}

function sourceHash(): string {
  const hash = createHash("sha256");
  for (const source of SOURCES) for (const file of filesUnder(source)) hash.update(file).update(fs.readFileSync(file));
  return hash.digest("hex").slice(0, 16);
}

function* filesUnder(place: string): Generator<string> {
  if (place.endsWith(path.join("db", "generated"))) return;
  if (fs.statSync(place).isFile()) yield place;
  else for (const name of fs.readdirSync(place).toSorted()) yield* filesUnder(path.join(place, name));
}
