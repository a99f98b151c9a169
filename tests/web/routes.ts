import { readdirSync } from "node:fs";
import path from "node:path";
import type { RouteRule } from "#lib/web/http.ts";

/** One exported handler of a route file. */
export interface RouteHandler {
  method: string;
  /** As the OpenAPI document writes it: `/cases/{number}`. */
  path: string;
  rule: RouteRule | undefined;
}

const ROOT = "app/api/v1";
const METHODS = ["GET", "HEAD", "OPTIONS", "POST", "PUT", "PATCH", "DELETE"];

/** Every handler under app/api/v1, read from the files themselves. */
export async function routeHandlers(): Promise<RouteHandler[]> {
  const files = readdirSync(ROOT, { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith("route.ts"));
  const handlers: RouteHandler[] = [];
  // What is no address at all is answered by one more file, which describes nothing.
  for (const file of files.filter((one) => !one.includes("[...")).toSorted()) {
    const exported = (await import(path.resolve(ROOT, file))) as Record<string, { rule?: RouteRule } | undefined>;
    for (const method of METHODS) {
      const handler = exported[method];
      if (handler) handlers.push({ method, path: addressOf(file), rule: handler.rule });
    }
  }
  return handlers;
}

function addressOf(file: string): string {
  return `/${path
    .dirname(file)
    .replaceAll(path.sep, "/")
    .replaceAll(/\[(\w+)\]/g, "{$1}")}`;
}
