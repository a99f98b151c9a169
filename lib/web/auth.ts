import "server-only";
import { Auth, createActionURL, raw, skipCSRFCheck, type AuthConfig } from "@auth/core";
import { CredentialsSignin } from "@auth/core/errors";
import { getToken } from "@auth/core/jwt";
import Credentials from "@auth/core/providers/credentials";
import { cookies, headers } from "next/headers";
import {
  actorOfSession,
  SESSION_DAYS,
  signInByLink,
  signInByPassword,
  type SignedIn,
} from "#lib/services/members/index.ts";
import { clientAddress } from "./address.ts";
import { contextFor, runtime } from "./runtime.ts";

const BASE = "/api/auth";

/** Answers of a sign-in; a refusal that is not about the password (too many tries) comes as the thrown ServiceError. */
export type SignInAnswer = { ok: true } | { ok: false };

function asUser(signedIn: SignedIn | null) {
  return signedIn && { id: signedIn.memberId, name: signedIn.name, sessionId: signedIn.sessionId };
}

function text(value: unknown): string {
  return typeof value === "string" ? value : "";
}

async function authConfig(): Promise<AuthConfig> {
  const from = await runtime();
  const secure = from.env.SITE_URL.startsWith("https:");
  const visitor = (request: Request) => contextFor(from, { kind: "visitor" }, clientAddress(request.headers));
  const device = (request: Request) => request.headers.get("user-agent") ?? "unknown";
  return {
    basePath: BASE,
    trustHost: true,
    secret: from.secret,
    useSecureCookies: secure,
    session: { strategy: "jwt", maxAge: SESSION_DAYS * 86_400 },
    pages: { signIn: "/signin", error: "/signin", signOut: "/account" },
    providers: [
      Credentials({
        id: "password",
        credentials: { email: {}, password: {} },
        authorize: async ({ email, password }, request) =>
          asUser(
            await signInByPassword(visitor(request), {
              email: text(email),
              password: text(password),
              device: device(request),
            }),
          ),
      }),
      Credentials({
        id: "link",
        credentials: { token: {} },
        authorize: async ({ token }, request) =>
          asUser(await signInByLink(visitor(request), { token: text(token), device: device(request) })),
      }),
    ],
    callbacks: {
      async jwt({ token, user }) {
        if (user) return { sub: user.id ?? "", sid: text((user as { sessionId?: unknown }).sessionId) };
        const actor = await actorOfSession(visitor(new Request(from.env.SITE_URL)), text(token.sid));
        return actor.kind === "visitor" ? null : token; // null clears the cookie
      },
      session: ({ session, token }) => ({ expires: session.expires, user: { id: token.sub ?? "" } }),
    },
    logger: { error: () => undefined, warn: () => undefined, debug: () => undefined },
  };
}

async function actionRequest(path: string, body?: Record<string, string>): Promise<Request> {
  const given = await headers();
  const url = createActionURL(path as never, "http", given, {}, { basePath: BASE });
  const head = new Headers({ cookie: given.get("cookie") ?? "", "user-agent": given.get("user-agent") ?? "" });
  const address = given.get("x-benchlore-address");
  if (address) head.set("x-benchlore-address", address);
  if (body) head.set("content-type", "application/x-www-form-urlencoded");
  return new Request(url, {
    method: body ? "POST" : "GET",
    headers: head,
    ...(body && { body: new URLSearchParams(body) }),
  });
}

/** Runs one of Auth's actions for a server action, whose origin Next has checked already (hence `skipCSRFCheck`). */
async function run(path: string, body: Record<string, string>): Promise<void> {
  const response = await Auth(await actionRequest(path, body), { ...(await authConfig()), raw, skipCSRFCheck });
  const jar = await cookies();
  for (const cookie of response.cookies ?? []) jar.set(cookie.name, cookie.value, cookie.options as never);
}

export async function signIn(provider: "password" | "link", input: Record<string, string>): Promise<SignInAnswer> {
  try {
    await run(`callback/${provider}`, input);
    return { ok: true };
  } catch (error) {
    if (error instanceof CredentialsSignin) return { ok: false };
    throw causeOf(error);
  }
}

/** Auth wraps what an authorize function throws; the refusal inside is what the person should read. */
function causeOf(error: unknown): unknown {
  const cause = (error as { cause?: { err?: unknown } }).cause?.err;
  return cause ?? error;
}

export async function signOut(): Promise<void> {
  await run("signout", {});
}

/** The id of the session that the request's cookie names, if its signature holds. */
export async function sessionIdOf(requestHeaders: Headers): Promise<string | null> {
  const from = await runtime();
  const token = await getToken({
    req: { headers: requestHeaders },
    secret: from.secret,
    secureCookie: from.env.SITE_URL.startsWith("https:"),
  });
  return typeof token?.sid === "string" && token.sid !== "" ? token.sid : null;
}

/** Auth's own routes: its CSRF check stays on. */
export async function handleAuth(request: Request): Promise<Response> {
  const action = new URL(request.url).pathname.slice(BASE.length + 1);
  // The request carries the server's own address, not the one that the browser asked for.
  const url = createActionURL(action as never, "http", request.headers, {}, { basePath: BASE });
  url.search = new URL(request.url).search;
  return Auth(new Request(url, request), await authConfig());
}
