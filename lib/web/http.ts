import "server-only";
import { z } from "zod";
import { log } from "#lib/infra/log.ts";
import { isDuplicate } from "#lib/services/change.ts";
import { demand, type Actor, type Ctx, type Scope } from "#lib/services/context.ts";
import { notFound, ServiceError, type FieldProblem, type ServiceErrorCode } from "#lib/services/errors.ts";
import { actorOfSession, actorOfToken } from "#lib/services/members/index.ts";
import { clubSettings } from "#lib/services/settings/index.ts";
import type { Role } from "#lib/core/shared/index.ts";
import { clientAddress } from "./address.ts";
import { sessionIdOf } from "./auth.ts";
import { demandKeepable, demandKeepableText, isKeepable } from "./plain-text.ts";
import { contextFor, runtime } from "./runtime.ts";

/** Larger JSON is refused before it is parsed. */
const MOST_JSON_BYTES = 1_000_000;

const STATUS: Record<ServiceErrorCode, { status: number; title: string }> = {
  "not-signed-in": { status: 401, title: "Not signed in" },
  forbidden: { status: 403, title: "Not allowed" },
  "not-found": { status: 404, title: "Not found" },
  stale: { status: 412, title: "Changed by someone else" },
  "version-missing": { status: 428, title: "If-Match is missing" },
  conflict: { status: 409, title: "Conflict" },
  invalid: { status: 422, title: "The input does not fit" },
  "too-large": { status: 413, title: "Too large" },
  unsupported: { status: 415, title: "Unsupported kind of content" },
  "too-many": { status: 429, title: "Too many tries" },
  unavailable: { status: 503, title: "Not available" },
};

/** An RFC 9457 problem document. */
export interface Problem {
  type: string;
  title: string;
  status: number;
  detail: string;
  errors?: FieldProblem[];
  present?: unknown;
}

export function problemOf(error: ServiceError): Problem {
  const { status, title } = STATUS[error.code];
  return {
    type: `/problems/${error.code}`,
    title,
    status,
    detail: error.message,
    ...(error.extra.problems && { errors: error.extra.problems }),
    ...(error.extra.present !== undefined && { present: error.extra.present }),
  };
}

/** Headers of every answer of the interface. */
const JSON_HEADERS = {
  "cache-control": "no-store",
  "x-content-type-options": "nosniff",
  "content-security-policy": "default-src 'none'; frame-ancestors 'none'",
};

export function json(value: unknown, init: { status?: number; headers?: Record<string, string> } = {}): Response {
  return Response.json(value, { status: init.status ?? 200, headers: { ...JSON_HEADERS, ...init.headers } });
}

function problemResponse(problem: Problem, retryAfter?: number): Response {
  return Response.json(problem, {
    status: problem.status,
    headers: {
      ...JSON_HEADERS,
      "content-type": "application/problem+json",
      ...(retryAfter && { "retry-after": String(retryAfter) }),
    },
  });
}

/** Errors become problem documents here and nowhere else; a bug reaches the log whole and the visitor not at all. */
export function errorResponse(error: unknown, request: Request): Response {
  if (error instanceof ServiceError) return problemResponse(problemOf(error), error.extra.retryAfter);
  if (error instanceof z.ZodError) return problemResponse(problemOf(schemaError(error)));
  if (isDuplicate(error)) return problemResponse(problemOf(duplicateError()));
  const reason = error instanceof Error ? { message: error.message, stack: error.stack } : { message: String(error) };
  log.error({ method: request.method, path: new URL(request.url).pathname, ...reason }, "a request failed");
  return problemResponse({
    type: "/problems/internal",
    title: "Something broke here",
    status: 500,
    detail: "This is a fault of the program. Nothing was half-written. The log has the details.",
  });
}

/** Two writers, or one who sends an id twice, meet in the database at the latest. */
export function duplicateError(): ServiceError {
  return new ServiceError("conflict", "Another record has this id or this name. Nothing was written.");
}

export function schemaError(error: z.ZodError): ServiceError {
  const problems = error.issues.map((issue) => ({ path: issue.path.join("."), message: issue.message }));
  return new ServiceError("invalid", "Some fields do not fit; each is named with what to do.", { problems });
}

export interface RouteRule {
  /** Who may ask; `anyone` includes visitors of a club that is open for reading. */
  role: Role | "anyone";
  scope: Scope;
  /** Answered even to visitors of a members-only club: health, signing in. */
  always?: boolean;
}

type Params = Record<string, string | string[]>;
interface RouteContext {
  /** Next hands over nothing where the address has no parameters. */
  params: Promise<Params | undefined>;
}
export interface Asked {
  ctx: Ctx;
  request: Request;
  params: Record<string, string>;
  query: URLSearchParams;
}
type Handler = ((request: Request, context: RouteContext) => Promise<Response>) & { rule: RouteRule };

/** Wraps a route handler: who asks, may they, and errors as problem documents. Denied unless the rule allows. */
export function route(rule: RouteRule, handle: (asked: Asked) => Promise<Response>): Handler {
  const handler = async (request: Request, context: RouteContext): Promise<Response> => {
    try {
      const from = await runtime();
      const actor = await actorOf(request);
      const ctx = contextFor(from, actor, clientAddress(request.headers));
      await allow(ctx, rule);
      const params = Object.fromEntries(
        Object.entries((await context.params) ?? {}).map(([name, value]) => [
          name,
          Array.isArray(value) ? value.join("/") : value,
        ]),
      );
      const query = new URL(request.url).searchParams;
      demandReadable(params, query);
      return await handle({ ctx, request, params, query });
    } catch (error) {
      return errorResponse(error, request);
    }
  };
  return Object.assign(handler, { rule });
}

/** What no text can hold names no record, and is no value to search by. */
function demandReadable(params: Record<string, string>, query: URLSearchParams): void {
  if (!Object.values(params).every(isKeepable)) throw notFound("record with this address");
  for (const [name, value] of query) demandKeepableText(value, name);
}

async function allow(ctx: Ctx, rule: RouteRule): Promise<void> {
  if (rule.always) return;
  if (rule.role !== "anyone") return demand(ctx.actor, rule.role, rule.scope);
  if (ctx.actor.kind === "member") return demand(ctx.actor, "member", rule.scope);
  if ((await clubSettings(ctx)).membersOnly) {
    throw new ServiceError("not-signed-in", "This club shows its records to members only. Sign in, or send a token.");
  }
}

async function actorOf(request: Request): Promise<Actor> {
  const from = await runtime();
  const visitor = contextFor(from, { kind: "visitor" });
  const bearer = /^Bearer\s+(\S+)$/i.exec(request.headers.get("authorization") ?? "")?.[1];
  if (bearer) {
    const actor = await actorOfToken(visitor, bearer);
    if (!actor) throw new ServiceError("not-signed-in", "This token is unknown, expired or revoked.");
    return actor;
  }
  const sessionId = await sessionIdOf(request.headers);
  if (!sessionId) return { kind: "visitor" };
  if (request.method !== "GET" && request.method !== "HEAD") refuseForeignOrigin(request);
  return actorOfSession(visitor, sessionId);
}

/** A cookie rides along from any page, so a writing request must come from one of ours. */
function refuseForeignOrigin(request: Request): void {
  const origin = request.headers.get("origin");
  const host = request.headers.get("host");
  if (origin && host && URL.canParse(origin) && new URL(origin).host === host) return;
  throw new ServiceError(
    "forbidden",
    "This request did not come from a page of this club. Use a token from elsewhere.",
  );
}

/** The request's JSON, checked. Refuses what is too large before parsing it. */
export async function body<T>(request: Request, schema: z.ZodType<T>): Promise<T> {
  return schema.parse(await rawJson(request));
}

export async function rawJson(request: Request): Promise<unknown> {
  const type = request.headers.get("content-type") ?? "";
  if (!/^application\/([a-z0-9.+-]+\+)?json\b/i.test(type)) {
    throw new ServiceError("unsupported", "Send the body as application/json.");
  }
  const value = parsedJson(await limitedText(request));
  demandKeepable(value);
  return value;
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new ServiceError(
      "invalid",
      `The body is not JSON: ${error instanceof Error ? error.message : "unreadable"}`,
      {
        problems: [{ path: "", message: "not JSON" }],
      },
    );
  }
}

async function limitedText(request: Request): Promise<string> {
  const tooLarge = () => new ServiceError("too-large", `The body is larger than ${MOST_JSON_BYTES / 1_000_000} MB.`);
  if (Number(request.headers.get("content-length") ?? 0) > MOST_JSON_BYTES) throw tooLarge();
  const reader = request.body?.getReader();
  if (!reader) return "";
  const decoder = new TextDecoder();
  let size = 0;
  let text = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return text + decoder.decode();
    size += value.byteLength;
    if (size > MOST_JSON_BYTES) {
      await reader.cancel();
      throw tooLarge();
    }
    text += decoder.decode(value, { stream: true });
  }
}

/** A record's version as an entity tag. */
export function etag(version: number): string {
  return `"${version}"`;
}

/** The version that a writer read. Throws `version-missing` (428) or `invalid`. */
export function ifMatch(request: Request): number {
  const given = request.headers.get("if-match");
  if (!given) {
    throw new ServiceError(
      "version-missing",
      "Send If-Match with the ETag that you read, so that nobody's words are overwritten.",
    );
  }
  const version = /^(?:W\/)?"(\d{1,9})"$/.exec(given.trim())?.[1];
  if (!version)
    throw new ServiceError("invalid", 'If-Match must be the ETag as read, such as "3".', {
      problems: [{ path: "If-Match", message: "not an ETag of ours" }],
    });
  return Number(version);
}
