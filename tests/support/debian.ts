import { execFile } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdir, mkdtemp, readdir, rename, rm } from "node:fs/promises";
import path from "node:path";
import { promisify } from "node:util";

const run = promisify(execFile);
const cache = path.resolve("node_modules/.cache/debian");
const asked = new Map<string, Promise<string | null>>();

/**
 * The folder into which a Debian package is unpacked (`<folder>/usr/share/…`), fetched once and kept; null where it
 * cannot be had. Its files stay out of the repository, because their licences are not ours.
 */
export function debianPackage(name: string): Promise<string | null> {
  const known = asked.get(name);
  if (known !== undefined) return known;
  const folder = unpacked(name);
  asked.set(name, folder);
  return folder;
}

async function unpacked(name: string): Promise<string | null> {
  const folder = path.join(cache, name);
  if (existsSync(folder)) return folder;
  await mkdir(cache, { recursive: true });
  // Two test processes may want the same package, so each works in a folder of its own and the first rename wins.
  const work = await mkdtemp(path.join(cache, "unpacking-"));
  try {
    await run("apt-get", ["download", "-q", name], { cwd: work });
    const archive = (await readdir(work)).find((file) => file.endsWith(".deb"));
    if (archive === undefined) return null;
    await run("dpkg", ["-x", archive, "root"], { cwd: work });
    await rename(path.join(work, "root"), folder).catch((error: unknown) => {
      if (!existsSync(folder)) throw error;
    });
    return folder;
  } catch {
    return existsSync(folder) ? folder : null;
  } finally {
    await rm(work, { recursive: true, force: true });
  }
}

/**
 * The package's folder, or the test ends here: skipped and counted as skipped, or failed where `TEST_NEEDS` names
 * `part`, so that a machine that must have it cannot pass without.
 */
export async function needsDebianPackage(
  ctx: { skip: (note?: string) => never },
  name: string,
  part: string,
): Promise<string> {
  const folder = await debianPackage(name);
  if (folder !== null) return folder;
  if ((process.env["TEST_NEEDS"] ?? "").split(",").includes(part))
    throw new Error(`TEST_NEEDS names ${part}, and the Debian package ${name} could not be fetched`);
  return ctx.skip(`needs ${name}`);
}
