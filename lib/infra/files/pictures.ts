import { fileTypeFromBuffer } from "file-type";
import sharp from "sharp";

/** What a photo may be. HEIC is refused with advice: the prebuilt decoder reads only AVIF. */
const READABLE = new Set(["image/jpeg", "image/png", "image/webp"]);
const SIZES = {
  /** Longest side kept, pixels. Enough to read a marking on a photo of a whole board. */
  full: 2400,
  /** Longest side of the picture in lists. */
  thumb: 480,
} as const;
/** Larger pictures are refused before decoding: a small file can claim gigabytes of pixels. */
const MOST_PIXELS = 50_000_000;

export interface Picture {
  bytes: Uint8Array;
  thumb: Uint8Array;
  width: number;
  height: number;
}
export type PictureRefusal = { refused: string };

export interface Pictures {
  /** The media type by content, never by name. */
  mediaTypeOf(bytes: Uint8Array): Promise<string | null>;
  /** Decodes and encodes anew as WebP: orientation applied, place and camera data gone. */
  reencode(bytes: Uint8Array): Promise<Picture | PictureRefusal>;
}

// One decoding at a time: each takes up to 200 MB.
let queue: Promise<unknown> = Promise.resolve();

export const pictures: Pictures = {
  async mediaTypeOf(bytes) {
    return (await fileTypeFromBuffer(bytes))?.mime ?? null;
  },
  reencode(bytes) {
    const turn = queue.then(() => reencode(bytes));
    queue = turn.catch(() => undefined);
    return turn;
  },
};

async function reencode(bytes: Uint8Array): Promise<Picture | PictureRefusal> {
  const type = (await fileTypeFromBuffer(bytes))?.mime;
  if (type === "image/heic" || type === "image/heif") {
    return {
      refused: "This is a HEIC photo. Set the phone to “most compatible” (JPEG), or share it as JPEG, and try again.",
    };
  }
  if (!type || !READABLE.has(type))
    return { refused: "This is not a JPEG, PNG or WebP picture, whatever its name says." };
  try {
    const open = () => sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: "error" }).rotate();
    const full = await open()
      .resize({ width: SIZES.full, height: SIZES.full, fit: "inside", withoutEnlargement: true })
      .webp({ quality: 82 })
      .toBuffer({ resolveWithObject: true });
    const thumb = await open()
      .resize({ width: SIZES.thumb, height: SIZES.thumb, fit: "inside", withoutEnlargement: true })
      .webp({ quality: 75 })
      .toBuffer();
    return { bytes: full.data, thumb, width: full.info.width, height: full.info.height };
  } catch (error) {
    const why = error instanceof Error ? error.message : "unknown";
    if (/pixel limit/i.test(why))
      return { refused: `This picture has more than ${MOST_PIXELS / 1_000_000} million pixels.` };
    return { refused: "This picture is damaged: it could not be decoded." };
  }
}
