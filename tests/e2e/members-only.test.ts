import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { OPERATIONS } from "#lib/web/openapi.ts";
import { apiWorld, SECRET, type ApiWorld } from "#tests/support/api-world.ts";

let world: ApiWorld;
beforeAll(async () => {
  world = await apiWorld({}, { membersOnly: true });
});
afterAll(() => world.stop());

/** A word of the published case: what a visitor must not read here. */
const WORDS = ["Dark screen", "Widgeon mainboard", SECRET];

describe("a club for members only", () => {
  test("tells a visitor nothing through the interface but that it is alive", async () => {
    const { records } = world;
    const open: string[] = [];
    for (const { method, path } of OPERATIONS.filter((one) => one.method === "get" || one.role === "anyone")) {
      const address = path
        .replace("{number}", String(records.published))
        .replace("{slug}", records.board)
        .replace("{code}", records.code)
        .replace("{id}", path.startsWith("/attachments") ? records.attachment : records.claim);
      const { status } = await world.call(method.toUpperCase(), address, method === "get" ? {} : { body: {} });
      if (status !== 401) open.push(`${method.toUpperCase()} ${path}`);
    }
    expect(open).toEqual(["GET /healthz", "GET /readyz"]);
  });

  test("sends a visitor of any page to sign in, and shows no word of a record", async () => {
    const { records } = world;
    const pages = [
      "/",
      "/search?q=dark",
      "/cases",
      `/cases/${records.published}`,
      `/cases/${records.published}/history`,
      `/cases/${records.published}/label`,
      "/boards",
      `/boards/${records.board}`,
      `/boards/${records.board}/history`,
      "/chips",
      `/chips/${records.chip}`,
      "/codes",
      `/codes/${records.code}`,
      "/spares",
      "/members",
      "/members/author",
      "/imports",
      "/desk",
      "/account",
    ];
    const answers: unknown[] = [];
    for (const page of pages) {
      const { text, headers, status } = await world.page(page);
      const to = headers.get("location") ?? "";
      const isSent = (status === 307 && to.includes("/signin")) || text.includes("NEXT_REDIRECT;replace;/signin");
      answers.push([page, isSent, WORDS.filter((word) => text.includes(word))]);
    }
    expect(answers).toEqual(pages.map((page) => [page, true, []]));
  });

  test("lets them sign in, use a link and join", async () => {
    for (const page of ["/signin", "/link/nothing", "/join/nothing"]) {
      expect([page, (await world.page(page)).status]).toEqual([page, 200]);
    }
  });

  test("is open to its members", async () => {
    expect((await world.call("GET", "/cases", { as: "other" })).status).toBe(200);
    expect((await world.page("/cases", "other")).text).toContain("Dark screen");
  });
});
