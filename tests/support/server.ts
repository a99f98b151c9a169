import { spawn, type ChildProcess } from "node:child_process";
import fs from "node:fs";
import net from "node:net";
import os from "node:os";
import path from "node:path";

/** The built program in a process of its own, as `npm start` runs it. */
export interface RunningServer {
  url: string;
  port: number;
  dataDir: string;
  pid: number;
  /** All that it wrote to its output so far. */
  output(): string;
  /** Ends it as a service manager would, and waits until it has closed its database. */
  stop(): Promise<void>;
  /** Ends it as a power cut would. */
  kill(): Promise<void>;
}

export interface ServerOptions {
  /** A data folder of the caller's, which stays; left out: a temporary one, gone with the server. */
  dataDir?: string;
  /** A prepared data folder that is copied first, so that the test may write. */
  copyOf?: string;
  env?: Record<string, string>;
  /** The host name in the address that a browser uses; the server listens on 127.0.0.1 all the same. */
  host?: string;
  port?: number;
}

/** How long a start may take before a test gives up on it; the slowest is a first start that makes the database. */
const START_MS = 180_000;
const STOP_MS = 30_000;

// A test process that ends early takes its servers with it.
const running = new Set<ChildProcess>();
process.on("exit", () => {
  for (const child of running) signalGroup(child, "SIGKILL");
});

/** Starts the program on a free port and waits until it is ready. Throws with its whole output where it is not. */
export async function startServer(options: ServerOptions = {}): Promise<RunningServer> {
  const dataDir = options.dataDir ?? temporaryFolder("benchlore-data-");
  if (options.copyOf) copyFolder(options.copyOf, dataDir);
  const port = options.port ?? (await freePort());
  const url = `http://${options.host ?? "127.0.0.1"}:${port}`;
  const child = spawn(process.execPath, ["lib/cli/start.mjs"], {
    env: {
      ...withoutTestSettings(process.env),
      DATA_DIR: dataDir,
      PORT: String(port),
      LISTEN: "127.0.0.1",
      SITE_URL: url,
      CLUB_DEMO: "off",
      NODE_ENV: "production",
      ...options.env,
    },
    stdio: ["ignore", "pipe", "pipe"],
    // The program starts others while it prepares; with a group of its own they all end together.
    detached: true,
  });
  running.add(child);
  let said = "";
  child.stdout.on("data", (chunk: Buffer) => (said += chunk.toString()));
  child.stderr.on("data", (chunk: Buffer) => (said += chunk.toString()));
  const gone = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  void gone.then(() => running.delete(child));
  const tidy = () => {
    if (!options.dataDir) fs.rmSync(dataDir, { recursive: true, force: true, maxRetries: 5 });
  };
  const kill = async () => {
    signalGroup(child, "SIGKILL");
    await gone;
    tidy();
  };
  try {
    await untilReady(`http://127.0.0.1:${port}`, child, () => said);
  } catch (error) {
    await kill();
    throw error;
  }
  return {
    url,
    port,
    dataDir,
    pid: child.pid ?? 0,
    output: () => said,
    kill,
    stop: async () => {
      child.kill("SIGTERM");
      const late = setTimeout(() => signalGroup(child, "SIGKILL"), STOP_MS);
      await gone;
      clearTimeout(late);
      tidy();
    },
  };
}

/** The link that signs the first steward in, as the start printed it. */
export function firstStewardLink(output: string): string {
  const link = /\/link\/([\w-]+)/.exec(output)?.[1];
  if (!link) throw new Error(`The start printed no link for the first steward:\n${output}`);
  return `/link/${link}`;
}

export function temporaryFolder(prefix: string): string {
  return fs.mkdtempSync(path.join(os.tmpdir(), prefix));
}

/** Copies a data folder of a stopped club. Its lock is a socket, which is no part of it. */
export function copyFolder(from: string, to: string): void {
  fs.cpSync(from, to, { recursive: true, filter: (source) => !source.endsWith(".sock") });
}

/** A port that nobody listens on now. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = net.createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      const port = typeof address === "object" && address ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

/** What vitest sets for its own processes would change how the program runs. */
function withoutTestSettings(env: NodeJS.ProcessEnv): Record<string, string> {
  const plain = Object.entries(env).filter(
    (entry): entry is [string, string] => entry[1] !== undefined && !/^(VITEST|NODE_ENV|NODE_OPTIONS$)/.test(entry[0]),
  );
  return Object.fromEntries(plain);
}

async function untilReady(url: string, child: ChildProcess, said: () => string): Promise<void> {
  const until = Date.now() + START_MS;
  while (Date.now() < until) {
    if (child.exitCode !== null || child.signalCode !== null) throw new Error(`The program ended:\n${said()}`);
    if (await answersReady(url)) return;
    await new Promise((resume) => setTimeout(resume, 100));
  }
  throw new Error(`The program was not ready within ${START_MS / 1000} s:\n${said()}`);
}

async function answersReady(url: string): Promise<boolean> {
  try {
    const response = await fetch(`${url}/api/v1/readyz`);
    await response.text();
    return response.status === 200;
  } catch {
    return false; // nobody listens yet
  }
}

function signalGroup(child: ChildProcess, signal: NodeJS.Signals): void {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, signal);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
  }
}
