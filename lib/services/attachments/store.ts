import type { Tx } from "#lib/infra/db/index.ts";
import { memberId, type Ctx } from "../context.ts";
import { ServiceError } from "../errors.ts";
import { MOST_FILE_BYTES, MOST_PHOTO_BYTES } from "./schema.ts";

export interface GivenFile {
  name: string;
  bytes: Uint8Array;
}

export interface StoredFile {
  hash: string;
  mediaType: string;
  name: string;
  byteSize: number;
  kind: "photo" | "file";
  width: number | null;
  height: number | null;
}

const PICTURE = /\.(jpe?g|png|webp|heic|heif|gif|avif|bmp|tiff?)$/i;

/**
 * Puts a file's bytes into the store: pictures re-encoded (orientation applied, place and camera data gone) with a
 * thumbnail, everything else as it is. Refuses, with the reason, what is too large or not what its name says.
 */
export async function storeFile(ctx: Ctx, given: GivenFile): Promise<StoredFile> {
  const name = plainName(given.name);
  if (given.bytes.byteLength === 0) throw refused("The file is empty.");
  const type = await ctx.pictures.mediaTypeOf(given.bytes);
  if (type?.startsWith("image/") || PICTURE.test(name)) return storePhoto(ctx, name, given.bytes);
  if (given.bytes.byteLength > MOST_FILE_BYTES)
    throw new ServiceError("too-large", `The file is larger than ${MOST_FILE_BYTES / 1e6} MB.`);
  if (/\.pdf$/i.test(name) && type !== "application/pdf") throw refused("This is not a PDF, whatever its name says.");
  const { hash } = await ctx.files.put(given.bytes);
  const mediaType = type ?? (/\.(csv|txt|vcd|log|net)$/i.test(name) ? "text/plain" : "application/octet-stream");
  return { hash, mediaType, name, byteSize: given.bytes.byteLength, kind: "file", width: null, height: null };
}

async function storePhoto(ctx: Ctx, name: string, bytes: Uint8Array): Promise<StoredFile> {
  if (bytes.byteLength > MOST_PHOTO_BYTES) {
    throw new ServiceError(
      "too-large",
      `The photo is larger than ${MOST_PHOTO_BYTES / 1e6} MB. Most phones can send a smaller one.`,
    );
  }
  const picture = await ctx.pictures.reencode(bytes);
  if ("refused" in picture) throw refused(picture.refused);
  const { hash } = await ctx.files.put(picture.bytes);
  await ctx.files.putVariant(hash, "thumb", picture.thumb);
  return {
    hash,
    mediaType: "image/webp",
    name: name.replace(/\.[^.]*$/, "") + ".webp",
    byteSize: picture.bytes.byteLength,
    kind: "photo",
    width: picture.width,
    height: picture.height,
  };
}

/** The record of a stored file. */
export async function recordFile(tx: Tx, ctx: Ctx, stored: StoredFile): Promise<string> {
  const made = await tx.attachment.create({
    data: { id: ctx.newId(), ...stored, uploadedById: memberId(ctx.actor), createdAt: ctx.now() },
    select: { id: true },
  });
  return made.id;
}

function refused(message: string): ServiceError {
  return new ServiceError("unsupported", message, { problems: [{ path: "file", message }] });
}

/** A name without a path and without characters that a header or a file system could take for something else. */
function plainName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? "";
  const plain = last
    .replace(/[\p{C}"<>|:*?]/gu, "_")
    .trim()
    .slice(-120);
  return plain === "" || /^\.+$/.test(plain) ? "file" : plain;
}
