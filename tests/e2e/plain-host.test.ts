import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import {
  openBrowser,
  person,
  PHONE,
  pictureOfFailure,
  signIn,
  widerThanWindow,
  type Watched,
} from "#tests/support/browser.ts";
import { smallPhoto } from "#tests/support/pictures.ts";
import { onDisk } from "#tests/support/served-club.ts";
import { copyFolder, freePort, startServer, temporaryFolder, type RunningServer } from "#tests/support/server.ts";
import { benchChecks, openCase, typeOwnWords } from "#tests/support/the-job.ts";

// A phone on the club's network reaches the club by a plain http name: no secure context, so no clipboard, no
// crypto.randomUUID, no service worker.

const HOST = "bench.example";
const BOARD = "vetch-terminal-logic";

let server: RunningServer;
let browser: Browser;
let phone: Watched;
let cookie = "";
let number = 0;

beforeAll(async () => {
  const dataDir = temporaryFolder("benchlore-phone-");
  copyFolder(inject("demoClub"), dataDir);
  cookie = await onDisk(dataDir, async (club) => club.cookie(await club.member("phone")));
  server = await startServer({ dataDir, host: HOST, port: await freePort(), env: { CLUB_DEMO: "on" } });
  browser = await openBrowser([`--host-resolver-rules=MAP ${HOST} 127.0.0.1`]);
  phone = await person(browser, server.url, PHONE);
  await signIn(phone.context, server.url, cookie);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});
beforeEach(() => {
  phone.troubles();
});
afterEach((context) => pictureOfFailure(context, phone));

/** No trouble, and nothing beyond the window's edge. */
async function isFine(): Promise<void> {
  const wider = await widerThanWindow(phone.page);
  expect({ troubles: phone.troubles(), strangers: phone.strangers(), wider }).toEqual({
    troubles: [],
    strangers: [],
    wider: 0,
  });
}

describe(`a phone at http://${HOST}`, () => {
  test("is no secure context, which is what this file is about", async () => {
    await phone.page.goto("/");
    expect(await phone.page.evaluate(() => [window.isSecureContext, "randomUUID" in crypto])).toEqual([false, false]);
    await isFine();
  });

  test("finds a case while it types", async () => {
    const { page } = phone;
    const box = page.getByRole("combobox", { name: /^Search/ }).last();
    await box.pressSequentially("no pictrue");
    await page.getByRole("option").first().waitFor();
    await box.press("Enter");
    await page.waitForURL("**/search?**");
    await page
      .getByRole("main")
      .getByRole("link", { name: /picture/i })
      .first()
      .waitFor();
    await isFine();
  });

  test("opens a case", async () => {
    number = await openCase(phone.page, BOARD, "no picture", "Seen on the phone.");
    await isFine();
  });

  test("enters readings pin by pin on the large pad", async () => {
    const { page } = phone;
    await page.getByRole("button", { name: "Pad", exact: true }).click();
    await typeOwnWords(page.getByRole("combobox", { name: "Place" }), "U7.18");
    for (const key of ["4", "point", "9"]) await page.getByRole("button", { name: key, exact: true }).click();
    await page
      .getByRole("button", { name: /^(Save|Record)/ })
      .first()
      .click();
    await benchChecks(page).filter({ hasText: "U7.18" }).filter({ hasText: "4.9" }).waitFor();
    await isFine();
  });

  test("keeps what it cannot send, over a reload too", async () => {
    const { page, context } = phone;
    await context.setOffline(true);
    await page.getByRole("button", { name: "Line", exact: true }).click();
    const line = page.getByLabel(/^Place and reading/);
    await line.fill("U7.9 0.01");
    await line.press("Enter");
    await page.getByText("1 reading waits for the server").waitFor();
    await context.setOffline(false);
    await page.reload();
    await benchChecks(page).filter({ hasText: "U7.9" }).waitFor();
    await page.getByText(/waits for the server/).waitFor({ state: "detached" });
    phone.troubles(); // the requests that found no way out
    await isFine();
  });

  test("adds a photo", async () => {
    const { page } = phone;
    const photo = { name: "IMG_1.jpg", mimeType: "image/jpeg", buffer: await smallPhoto("rgb(30, 60, 90)") };
    await page.locator('input[type="file"]').first().setInputFiles(photo);
    await page
      .getByRole("img", { name: /IMG_1|photo/i })
      .first()
      .waitFor();
    await isFine();
  });

  test("names the cause, proves the cure by a soak, publishes", async () => {
    const { page } = phone;
    await page.goto(`/cases/${number}/close`);
    await page.getByLabel("What was wrong with it").selectOption({ label: "cold joint" });
    await page.getByLabel("What cured it").selectOption({ label: "resoldered" });
    await page.getByRole("button", { name: "Name this cause" }).click();
    const soak = page.getByText(/soak test$/);
    await soak.first().waitFor();
    if (!(await page.getByLabel("It ran without the fault for").isVisible())) await soak.first().click();
    await page.getByLabel("It ran without the fault for").fill("3");
    await page.getByRole("button", { name: "Record the soak" }).click();
    await page.getByText("Prove it once more").waitFor();
    await page.goto(`/cases/${number}`);
    await page.getByRole("button", { name: "Publish to the club" }).click();
    await page.getByRole("button", { name: "Take back to a draft" }).waitFor();
    await isFine();
  });
});
