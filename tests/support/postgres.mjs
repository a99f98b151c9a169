// A PostgreSQL server of the tests' own, on 127.0.0.1, with an ICU locale and a zone other than UTC, so that code which
// leans on a default is found. `start` prints its address as JSON, or ends with 3 where none is installed.
import { spawnSync } from "node:child_process";
import fs from "node:fs";
import net from "node:net";
import os from "node:os";
import path from "node:path";

const [verb, given] = process.argv.slice(2);
const binaries = newestBinaries();
if (!binaries) process.exit(3);
if (verb === "start") await start();
else if (verb === "stop" && given) stop(given);
else process.exit(2);

function newestBinaries() {
  const root = "/usr/lib/postgresql";
  if (!fs.existsSync(root)) return null;
  const versions = fs.readdirSync(root).filter((version) => fs.existsSync(`${root}/${version}/bin/initdb`));
  const newest = versions.sort((a, b) => Number(b) - Number(a))[0];
  return newest ? `${root}/${newest}/bin` : null;
}

/** PostgreSQL refuses to run as root, so there it runs as the user that its package made. */
function run(program, args) {
  const isRoot = process.getuid?.() === 0;
  const command = isRoot
    ? ["runuser", "-u", "postgres", "--", `${binaries}/${program}`, ...args]
    : [`${binaries}/${program}`, ...args];
  const ended = spawnSync(command[0], command.slice(1), {
    encoding: "utf8",
    cwd: os.tmpdir(),
    stdio: ["ignore", "pipe", "pipe"],
  });
  if (ended.status !== 0) {
    process.stderr.write(`${program}: ${ended.stdout}${ended.stderr}`);
    process.exit(1);
  }
}

async function start() {
  const directory = fs.mkdtempSync(path.join(os.tmpdir(), "benchlore-pg-"));
  fs.chmodSync(directory, 0o777);
  const data = path.join(directory, "data");
  const port = await freePort();
  run("initdb", [
    "-D",
    data,
    "-A",
    "trust",
    "-U",
    "postgres",
    "--encoding=UTF8",
    "--locale-provider=icu",
    "--icu-locale=de-AT",
    "--locale=C.UTF-8",
  ]);
  const settings = `-c listen_addresses=127.0.0.1 -p ${port} -k ${directory} -c TimeZone=America/St_Johns -c fsync=off -c max_connections=200`;
  run("pg_ctl", ["-D", data, "-o", settings, "-l", path.join(directory, "log"), "-w", "start"]);
  process.stdout.write(JSON.stringify({ url: `postgres://postgres@127.0.0.1:${port}/postgres`, directory }));
}

function stop(directory) {
  run("pg_ctl", ["-D", path.join(directory, "data"), "-m", "immediate", "-w", "stop"]);
  fs.rmSync(directory, { recursive: true, force: true });
}

function freePort() {
  return new Promise((resolve) => {
    const server = net.createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });
}
