import "server-only";
import { Readable } from "node:stream";
import type { ServedFile } from "#lib/services/attachments/index.ts";

/**
 * A stored file as an answer. Photos were encoded by us and are shown; everything else is a download that no browser
 * runs: no sniffing, no script, no frame, no plug-in.
 */
export function fileResponse(request: Request, file: ServedFile, variant: string): Response {
  const tag = `"${file.hash.slice(0, 32)}-${variant}"`;
  const headers = new Headers({
    etag: tag,
    "cache-control": "private, max-age=0, must-revalidate",
    "x-content-type-options": "nosniff",
    "content-security-policy": "default-src 'none'; sandbox",
    "cross-origin-resource-policy": "same-origin",
  });
  if (request.headers.get("if-none-match") === tag) {
    file.stream.destroy();
    return new Response(null, { status: 304, headers });
  }
  headers.set("content-type", file.mediaType);
  headers.set("content-length", String(file.size));
  const name = encodeURIComponent(file.name).replaceAll("'", "%27");
  headers.set("content-disposition", `${file.isPhoto ? "inline" : "attachment"}; filename*=UTF-8''${name}`);
  return new Response(Readable.toWeb(file.stream) as ReadableStream, { headers });
}
