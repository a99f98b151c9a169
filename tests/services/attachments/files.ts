import { crc32 } from "node:zlib";
import type { Readable } from "node:stream";
import sharp from "sharp";

/** A photo as a phone makes it: lying on its side (orientation 6), with place, camera and time inside. */
export async function phonePhoto(): Promise<Uint8Array> {
  const plain = await sharp({ create: { width: 600, height: 400, channels: 3, background: "#335577" } })
    // A red field at the left: after turning by 90 degrees it is at the top.
    .composite([
      {
        input: { create: { width: 100, height: 400, channels: 3, background: "#dd2211" } },
        left: 0,
        top: 0,
      },
    ])
    .withExif({
      IFD0: { Make: "Invented Optics", Model: "Bench 1", Software: "bench-camera" },
      IFD3: {
        GPSLatitudeRef: "N",
        GPSLatitude: "51/1 30/1 0/1",
        GPSLongitudeRef: "E",
        GPSLongitude: "12/1 20/1 0/1",
      },
    })
    .withIccProfile("p3")
    .jpeg()
    .toBuffer();
  return sharp(plain).keepMetadata().withMetadata({ orientation: 6 }).jpeg().toBuffer();
}

/** A picture in another format, of one colour. */
export function picture(format: "png" | "webp" | "jpeg" | "gif" | "avif", side = 40): Promise<Uint8Array> {
  return sharp({ create: { width: side, height: side, channels: 3, background: "#667788" } })
    .toFormat(format)
    .toBuffer();
}

/** A PNG of one pixel whose head claims another size; its head's check sum is right. */
export async function claimingPng(width: number, height: number): Promise<Uint8Array> {
  const bytes = Buffer.from(await picture("png", 1));
  // PNG specification: signature 8, chunk length 4, "IHDR" 4, width 4, height 4, five more, CRC-32 of type and data.
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  bytes.writeUInt32BE(crc32(bytes.subarray(12, 29)), 29);
  return bytes;
}

/** The first box of a HEIC file (ISO 23008-12: brand `heic`), with nothing behind it. */
export function heicHead(brand = "heic"): Uint8Array {
  const box = Buffer.alloc(64);
  box.writeUInt32BE(24, 0);
  box.write(`ftyp${brand}`, 4, "latin1");
  box.write("mif1heic", 16, "latin1");
  return box;
}

/** A PDF of one empty page (ISO 32000-1); padded, so that each test can have its own bytes. */
export function pdf(note = ""): Uint8Array {
  return Buffer.from(
    `%PDF-1.4\n%${note}\n1 0 obj<</Type/Catalog/Pages 2 0 R>>endobj\n2 0 obj<</Type/Pages/Kids[3 0 R]/Count 1>>endobj\n` +
      `3 0 obj<</Type/Page/Parent 2 0 R/MediaBox[0 0 99 99]>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF\n`,
    "latin1",
  );
}

export async function bytesOf(stream: Readable): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks);
}
