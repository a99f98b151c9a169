import fs from "node:fs";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { DESKTOP, openBrowser, person, PHONE, widerThanWindow } from "#tests/support/browser.ts";
import { PAGES } from "#tests/support/pages.ts";
import { firstStewardLink, startServer, type RunningServer } from "#tests/support/server.ts";

// axe-core 4.14.1 finds what a program can find of WCAG 2.2 A and AA; the rest is gone through by hand.
const AXE = fs.readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

interface Violation {
  id: string;
  impact: string | null;
  nodes: { html: string }[];
}

let server: RunningServer;
let browser: Browser;
let storageState: Awaited<ReturnType<Awaited<ReturnType<typeof person>>["context"]["storageState"]>>;

beforeAll(async () => {
  server = await startServer({ copyOf: inject("demoClub") });
  browser = await openBrowser();
  const { page, context } = await person(browser, server.url);
  await page.goto(firstStewardLink(inject("demoOutput")));
  await page.click("main button[type=submit]");
  await page.waitForURL(/account/);
  storageState = await context.storageState();
  await context.close();
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(async (tags) => {
    const { axe } = window as unknown as {
      axe: { run(root: Document, options: object): Promise<{ violations: Violation[] }> };
    };
    return (await axe.run(document, { runOnly: tags })).violations;
  }, TAGS);
  return found
    .filter((one) => one.impact === "serious" || one.impact === "critical")
    .map((one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 160)).join(" | ")}`);
}

const VIEWS = [
  { name: "desktop, light", options: { ...DESKTOP, colorScheme: "light" as const } },
  { name: "phone, dark", options: { ...PHONE, colorScheme: "dark" as const } },
];

describe.each(VIEWS)("$name", ({ options }) => {
  test("no page has a serious violation, is wider than its window, or makes a console error", async () => {
    const steward = await person(browser, server.url, { ...options, storageState, bypassCSP: true });
    const { page, context } = steward;
    const found: Record<string, string[]> = {};
    for (const address of PAGES) {
      await page.goto(address, { waitUntil: "load" });
      const wider = await widerThanWindow(page);
      const all = [
        ...(await violations(page)),
        ...(wider > 0 ? [`${wider} px wider than the window`] : []),
        ...steward.troubles(),
      ];
      if (all.length > 0) found[address] = all;
    }
    expect(found).toEqual({});
    expect(steward.strangers()).toEqual([]);
    await context.close();
  });
});

test("the first page ships at most 225 KB of script, compressed", async () => {
  const { page, context } = await person(browser, server.url);
  const sizes = new Map<string, Promise<number>>();
  page.on("response", (response) => {
    if (response.request().resourceType() !== "script") return;
    sizes.set(
      response.url(),
      response
        .request()
        .sizes()
        .then((size) => size.responseBodySize),
    );
  });
  await page.goto("/", { waitUntil: "networkidle" });
  const total = (await Promise.all(sizes.values())).reduce((sum, size) => sum + size, 0);
  expect(sizes.size).toBeGreaterThan(0);
  expect(total).toBeLessThanOrEqual(225_000);
  await context.close();
});
