import { inject } from "vitest";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { LIMITS } from "#lib/infra/limits.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

/**
 * Tries wrong passwords, each for an account that nobody has, so that only the limit by address counts. Answers how many
 * were heard before the address had to wait.
 */
async function heard(server: RunningServer, forwarded: (attempt: number) => string, tries: number): Promise<number> {
  const { csrfToken, cookie } = await csrf(server);
  for (let attempt = 0; attempt < tries; attempt++) {
    const response = await fetch(`${server.url}/api/auth/callback/password`, {
      method: "POST",
      redirect: "manual",
      headers: {
        "content-type": "application/x-www-form-urlencoded",
        cookie,
        origin: server.url,
        "x-forwarded-for": forwarded(attempt),
        forwarded: `for=${forwarded(attempt)}`,
        "x-real-ip": forwarded(attempt),
        "x-benchlore-address": forwarded(attempt),
      },
      body: new URLSearchParams({ csrfToken, email: `nobody-${attempt}@example.org`, password: "wrong password" }),
    });
    const to = `${response.headers.get("location") ?? ""} ${await response.text()}`;
    if (!to.includes("CredentialsSignin")) return attempt;
  }
  return tries;
}

async function csrf(server: RunningServer): Promise<{ csrfToken: string; cookie: string }> {
  const response = await fetch(`${server.url}/api/auth/csrf`);
  const { csrfToken } = (await response.json()) as { csrfToken: string };
  const cookie = response.headers
    .getSetCookie()
    .map((one) => one.split(";")[0] ?? "")
    .join("; ");
  return { csrfToken, cookie };
}

const other = (attempt: number) => `203.0.113.${attempt % 250}`;
const { points } = LIMITS.signInAddress;

describe("with no proxy in front", () => {
  let server: RunningServer;
  beforeAll(async () => {
    server = await startServer({ copyOf: inject("emptyClub") });
  });
  afterAll(() => server.stop());

  test("an address that a visitor makes up counts for nothing", async () => {
    expect(await heard(server, other, points + 5)).toBe(points);
  });
});

describe("behind one proxy", () => {
  let server: RunningServer;
  beforeAll(async () => {
    server = await startServer({ copyOf: inject("emptyClub"), env: { TRUST_PROXY: "1" } });
  });
  afterAll(() => server.stop());

  test("what the visitor wrote stands left of what the proxy added, and only the latter counts", async () => {
    expect(await heard(server, (attempt) => `${other(attempt)}, 198.51.100.7`, points + 5)).toBe(points);
  });

  test("two visitors of the proxy are two", async () => {
    expect(await heard(server, (attempt) => `198.51.100.${8 + (attempt % 2)}`, points + 5)).toBe(points + 5);
  });
});
