import "server-only";
import { Readable } from "node:stream";
import type { ReadableStream as WebStream } from "node:stream/web";
import { Busboy } from "@fastify/busboy";
import { ServiceError } from "#lib/services/errors.ts";
import { isKeepable } from "./plain-text.ts";

export interface UploadedFile {
  name: string;
  bytes: Uint8Array;
}
export interface Upload {
  fields: Record<string, string>;
  file: UploadedFile;
}

const FIELD_BYTES = 20_000;

/** Reads a form with one file, field name `file`. Counts bytes while they come and stops at the limit. */
export async function readUpload(request: Request, mostBytes: number): Promise<Upload> {
  const type = request.headers.get("content-type") ?? "";
  if (!/^multipart\/form-data\s*;/i.test(type)) {
    throw new ServiceError("unsupported", "Send the file as multipart/form-data.");
  }
  if (Number(request.headers.get("content-length") ?? 0) > mostBytes + 10 * FIELD_BYTES) throw tooLarge(mostBytes);
  if (!request.body) throw broken();
  return parsed(Readable.fromWeb(request.body as WebStream), type, mostBytes);
}

function parsed(source: Readable, type: string, mostBytes: number): Promise<Upload> {
  return new Promise((resolve, reject) => {
    let parser: InstanceType<typeof Busboy>;
    try {
      parser = new Busboy({
        headers: { "content-type": type },
        limits: { fileSize: mostBytes, files: 1, fields: 20, fieldSize: FIELD_BYTES, parts: 30, headerPairs: 50 },
      });
    } catch {
      reject(broken());
      return;
    }
    const fields: Record<string, string> = {};
    let file: UploadedFile | undefined;
    let refused: ServiceError | undefined;
    const fail = (error: ServiceError) => {
      source.unpipe(parser);
      source.resume();
      reject(error);
    };
    parser.on("file", (field, stream, name) => {
      const chunks: Buffer[] = [];
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      stream.on("limit", () => {
        refused = tooLarge(mostBytes);
        fail(refused);
      });
      stream.on("end", () => {
        if (field === "file" && !refused)
          file = { name: (name ?? "").replaceAll(/\p{C}/gu, "_").slice(-200), bytes: Buffer.concat(chunks) };
      });
    });
    parser.on("field", (name, value) => {
      fields[name] = value;
    });
    parser.on("error", () => fail(broken()));
    source.on("error", () => fail(broken()));
    parser.on("finish", () => {
      if (refused) return;
      if (!Object.values(fields).every(isKeepable)) reject(broken());
      else if (file) resolve({ fields, file });
      else
        reject(
          new ServiceError("invalid", "There is no file in the form.", {
            problems: [{ path: "file", message: "Choose a file." }],
          }),
        );
    });
    source.pipe(parser);
  });
}

function tooLarge(mostBytes: number): ServiceError {
  return new ServiceError("too-large", `The file is larger than ${Math.round(mostBytes / 1_000_000)} MB.`);
}

function broken(): ServiceError {
  return new ServiceError("invalid", "The form broke off or is not in the form that it says.", {
    problems: [{ path: "", message: "not a complete multipart form" }],
  });
}
