import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject, test } from "vitest";
import { openBrowser, person, pictureOfFailure, signIn, type Watched } from "#tests/support/browser.ts";
import { onDisk } from "#tests/support/served-club.ts";
import { copyFolder, startServer, temporaryFolder, type RunningServer } from "#tests/support/server.ts";
import { benchChecks } from "#tests/support/the-job.ts";

// The core of the job with the keyboard alone: this file never points, clicks or fills. A control is reached by Tab, and
// it must be seen to have the focus.

let server: RunningServer;
let browser: Browser;
let member: Watched;

beforeAll(async () => {
  const dataDir = temporaryFolder("benchlore-keyboard-");
  copyFolder(inject("demoClub"), dataDir);
  const cookie = await onDisk(dataDir, async (club) => club.cookie(await club.member("keys")));
  server = await startServer({ dataDir, env: { CLUB_DEMO: "on" } });
  browser = await openBrowser();
  member = await person(browser, server.url);
  await signIn(member.context, server.url, cookie);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});
afterEach(async (context) => {
  await pictureOfFailure(context, member);
  const troubles = member.troubles();
  if (troubles.length > 0) throw new Error(`The pages had trouble:\n${troubles.join("\n")}`);
});

/** Longest way to a control that a person would still go. */
const MOST_TABS = 150;

/** Presses Tab until the control has the focus, and checks that this can be seen. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  await control.first().waitFor();
  for (let tabs = 0; tabs < MOST_TABS; tabs++) {
    if (await control.first().evaluate((element) => element === document.activeElement)) {
      if (await focusShows(page)) return;
      throw new Error(`The focus on ${String(control)} cannot be seen`);
    }
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab does not reach ${String(control)}`);
}

/** Whether the element with the focus, or what stands around it, is drawn with a ring. */
function focusShows(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    for (let element = document.activeElement; element && element !== document.body; element = element.parentElement) {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
      if ((outlineStyle !== "none" && parseFloat(outlineWidth) > 0) || boxShadow !== "none") return true;
    }
    return false;
  });
}

test("the first stop of a page leads to its content", async () => {
  const { page } = member;
  await page.goto("/boards");
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Skip to the content");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  expect(await page.evaluate(() => Boolean(document.activeElement?.closest("main")))).toBe(true);
});

test("a case is found by typing and taken with the arrow keys", async () => {
  const { page } = member;
  await page.goto("/");
  await tabTo(page, page.getByRole("combobox", { name: /^Search/ }).last());
  await page.keyboard.type("no pictrue");
  await page.getByRole("option").first().waitFor();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await page.waitForURL((url) => url.pathname !== "/");
});

test("a case is opened from the board's page", async () => {
  const { page } = member;
  await page.goto("/boards/vetch-terminal-logic");
  await tabTo(page, page.getByRole("link", { name: "Open a case on this board" }));
  await page.keyboard.press("Enter");
  await tabTo(page, page.getByRole("combobox", { name: "Symptoms" }));
  await page.keyboard.type("no picture");
  await page.keyboard.press("Enter");
  await page.getByRole("list", { name: "Symptoms: chosen" }).waitFor();
  await tabTo(page, page.getByRole("button", { name: "Open the case" }));
  await page.keyboard.press("Enter");
  await page.waitForURL("**/bench");
});

test("checks are typed at the bench without looking for the line", async () => {
  const { page } = member;
  // The line has the focus when the page opens, and `/` brings it back from anywhere.
  await page.getByRole("region", { name: "Enter a check" }).waitFor();
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("/");
  await page.keyboard.type("+5V 0.8");
  await page.keyboard.press("Enter");
  await benchChecks(page).filter({ hasText: "out of spec" }).waitFor();
  await page.keyboard.type("U7.11-18 diode 612 610 611 3 612 OL 608 610");
  await page.keyboard.press("Enter");
  await benchChecks(page).nth(8).waitFor();
});

test("the cause is named and the cure proved", async () => {
  const { page } = member;
  await page.goto(page.url().replace("/bench", "/close"));
  await tabTo(page, page.getByRole("combobox", { name: /^Where/ }));
  await page.keyboard.type("U7");
  await tabTo(page, page.getByLabel("What was wrong with it"));
  await page.keyboard.type("short i");
  await tabTo(page, page.getByLabel("What cured it"));
  await page.keyboard.type("repl");
  await tabTo(page, page.getByRole("button", { name: "Name this cause" }));
  await page.keyboard.press("Enter");
  await tabTo(page, page.getByLabel(/^Now at/));
  await page.keyboard.type("5.02");
  await page.keyboard.press("Enter");
  await page.getByText("Prove it once more").waitFor();
});

test("the case is published, and a second thought asks before it takes it back", async () => {
  const { page } = member;
  await page.goto(page.url().replace("/close", ""));
  await tabTo(page, page.getByRole("button", { name: "Publish to the club" }));
  await page.keyboard.press("Enter");
  const back = page.getByRole("button", { name: "Take back to a draft" });
  await tabTo(page, back);
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Keep it" }).waitFor();
  await page.keyboard.press("Escape");
  await back.waitFor();
  expect(await back.evaluate((element) => element === document.activeElement)).toBe(true);
});
