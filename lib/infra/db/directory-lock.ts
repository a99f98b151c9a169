import fs from "node:fs";
import net from "node:net";

const path = process.getBuiltinModule("node:path");

/**
 * An exclusive lock on a directory, held by an open listening socket, so that the operating system drops it when the
 * process dies (SIGKILL, power cut) and there is no process number to guess about. Returns what releases it.
 */
export async function lockDirectory(directory: string): Promise<() => Promise<void>> {
  fs.mkdirSync(directory, { recursive: true, mode: 0o700 });
  const socket = socketPath(directory);
  for (let attempt = 0; attempt < 3; attempt++) {
    const server = net.createServer((connection) => connection.end(`${process.pid}\n`));
    if (await listens(server, socket)) {
      server.unref();
      return () => new Promise((released) => server.close(() => released()));
    }
    const holder = await holderOf(socket);
    if (holder !== null) {
      throw new Error(
        `${directory} is already open in process ${holder}. Stop that one first: two processes on one data folder would corrupt it.`,
      );
    }
    fs.rmSync(socket, { force: true }); // left over from a crash
  }
  throw new Error(`${directory} could not be locked.`);
}

function socketPath(directory: string): string {
  const real = fs.realpathSync(directory);
  if (process.platform === "win32") return `\\\\.\\pipe\\${Buffer.from(real).toString("base64url")}`;
  // A socket's address holds about 100 bytes, so a deep folder is named relative to where we stand.
  const absolute = path.join(real, ".lock.sock");
  const relative = path.relative(process.cwd(), absolute);
  return relative.length < absolute.length ? relative : absolute;
}

function listens(server: net.Server, socket: string): Promise<boolean> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      if (error.code === "EADDRINUSE") resolve(false);
      else reject(error);
    });
    server.listen(socket, () => resolve(true));
  });
}

/** The process number that the holder of the lock tells; null where nobody listens. */
function holderOf(socket: string): Promise<string | null> {
  return new Promise((resolve) => {
    let said = "";
    const connection = net.connect(socket);
    connection.setTimeout(2000, () => {
      connection.destroy();
      resolve(said || "?");
    });
    connection.on("data", (data) => (said += data.toString()));
    connection.on("end", () => resolve(said.trim()));
    connection.on("error", () => resolve(null));
  });
}
