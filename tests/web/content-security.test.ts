import { describe, expect, test } from "vitest";
import { contentSecurityPolicy } from "#lib/web/content-security.ts";

/** A policy as its directives. */
function directives(policy: string): Record<string, string> {
  return Object.fromEntries(policy.split("; ").map((part) => [part.split(" ")[0], part.slice(part.indexOf(" ") + 1)]));
}

describe("the policy of a page", () => {
  const policy = directives(contentSecurityPolicy({ nonce: "abc", development: false }));

  test("lets scripts run by nonce only", () => {
    expect(policy["script-src"]).toBe("'self' 'nonce-abc' 'strict-dynamic'");
    expect(policy["style-src"]).toBe("'self' 'nonce-abc'");
  });

  test("asks no other server for anything", () => {
    expect(Object.values(policy).join(" ")).not.toMatch(/https?:|\*/);
  });

  test("lets the reader of PDF files work, and nobody put the page into a frame", () => {
    expect([policy["worker-src"], policy["frame-ancestors"], policy["object-src"]]).toEqual([
      "'self' blob:",
      "'none'",
      "'none'",
    ]);
  });

  test("lets a form lead to the club's identity provider, by its origin", () => {
    const issuer = "https://id.club.example/realms/club";
    expect(directives(contentSecurityPolicy({ nonce: "abc", development: false, issuer }))["form-action"]).toBe(
      "'self' https://id.club.example",
    );
  });

  test("is not widened by an issuer that is no address", () => {
    expect(
      directives(contentSecurityPolicy({ nonce: "abc", development: false, issuer: "*; script-src *" }))["form-action"],
    ).toBe("'self'");
  });
});
