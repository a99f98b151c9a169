import { createHash } from "node:crypto";
import fs from "node:fs";
import fsp from "node:fs/promises";
import type { Readable } from "node:stream";
import { newId } from "../id.ts";

const path = process.getBuiltinModule("node:path");

/** Bytes by content hash. `variant` names a derived picture (a thumbnail); it is always a file of its own. */
export interface FileStore {
  put(bytes: Uint8Array): Promise<{ hash: string }>;
  putVariant(hash: string, variant: string, bytes: Uint8Array): Promise<void>;
  open(hash: string, variant?: string): Promise<{ stream: Readable; size: number } | null>;
  read(hash: string): Promise<Uint8Array | null>;
  health(): Promise<void>;
}

/** A file store in a folder: `ab/abcdef…`, written under another name and renamed, so that no reader sees half a file. */
export function folderStore(folder: string): FileStore {
  const placeOf = (hash: string, variant = "") => {
    if (!/^[0-9a-f]{64}$/.test(hash) || !/^[a-z0-9]*$/.test(variant)) throw new Error("not a file's hash");
    return path.join(folder, hash.slice(0, 2), variant ? `${hash}.${variant}` : hash);
  };
  const write = async (place: string, bytes: Uint8Array) => {
    if (fs.existsSync(place)) return;
    await fsp.mkdir(path.dirname(place), { recursive: true, mode: 0o700 });
    const half = `${place}.${newId()}.part`;
    const file = await fsp.open(half, "wx", 0o600);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await fsp.rename(half, place);
  };
  return {
    async put(bytes) {
      const hash = createHash("sha256").update(bytes).digest("hex");
      await write(placeOf(hash), bytes);
      return { hash };
    },
    putVariant: (hash, variant, bytes) => write(placeOf(hash, variant), bytes),
    async open(hash, variant) {
      const place = placeOf(hash, variant);
      const size = await fsp.stat(place).then(
        (stat) => stat.size,
        () => null,
      );
      return size === null ? null : { stream: fs.createReadStream(place), size };
    },
    read: (hash) => fsp.readFile(placeOf(hash)).catch(() => null),
    async health() {
      await fsp.mkdir(folder, { recursive: true, mode: 0o700 });
      await fsp.access(folder, fs.constants.W_OK);
    },
  };
}
