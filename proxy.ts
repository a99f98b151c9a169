import { NextResponse, type NextRequest } from "next/server";
import { contentSecurityPolicy } from "#lib/web/content-security.ts";

/** Gives each page a nonce of its own. Next reads it from the policy in the request's headers, the root layout from `x-nonce`. */
export function proxy(request: NextRequest): NextResponse {
  // No record's name holds this character, and no database can look for it.
  if (/%00/.test(request.nextUrl.href)) return new NextResponse("This address cannot be read.", { status: 400 });
  const nonce = btoa(crypto.randomUUID());
  const policy = contentSecurityPolicy({
    nonce,
    development: process.env.NODE_ENV === "development",
    issuer: process.env.AUTH_OIDC_ISSUER,
  });
  const headers = new Headers(request.headers);
  headers.set("content-security-policy", policy);
  headers.set("x-nonce", nonce);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set("content-security-policy", policy);
  // Over plain http browsers ignore it, and complain.
  if (process.env.SITE_URL?.startsWith("https:")) response.headers.set("cross-origin-opener-policy", "same-origin");
  return response;
}

// The interface sets its own policy and takes bodies larger than a proxy passes on; the built files need none.
export const config = { matcher: [{ source: "/((?!api/|_next/static|_next/image|favicon.ico).*)" }] };
