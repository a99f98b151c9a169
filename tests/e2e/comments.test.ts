import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { openBrowser, person, type Watched } from "#tests/support/browser.ts";
import { firstStewardLink, startServer, type RunningServer } from "#tests/support/server.ts";

let server: RunningServer;
let browser: Browser;
let steward: Watched;

beforeAll(async () => {
  server = await startServer({ copyOf: inject("demoClub") });
  browser = await openBrowser();
  steward = await person(browser, server.url);
  await steward.page.goto(firstStewardLink(inject("demoOutput")));
  await steward.page.getByRole("button", { name: "Sign in" }).click();
  await steward.page.waitForURL("**/account?welcome=1");
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

test.each(["/cases/104", "/boards/harrow-80", "/chips/74ls244", "/codes/VQ4-0907-01"])(
  "a comment under %s is added, changed and taken back",
  async (address) => {
    const { page } = steward;
    await page.goto(address);
    const talk = page.getByRole("region", { name: /^Comments/ });
    await talk.getByLabel("Your comment").fill("Same here, on the left one.");
    await talk.getByRole("button", { name: "Add the comment" }).click();
    const mine = talk.getByRole("listitem").filter({ hasText: "Steward" });
    await mine.getByText("Same here, on the left one.").waitFor();
    await mine.getByRole("button", { name: "Edit" }).click();
    await mine.getByLabel("Your comment").fill("Same here, on the right one.");
    await mine.getByRole("button", { name: "Save" }).click();
    // The text stands in the form too; that the page has it is said by "edited".
    await mine.getByText(", edited").waitFor();
    await mine.getByText("Same here, on the right one.").waitFor();
    await mine.getByRole("button", { name: "Take back" }).click();
    await mine.getByRole("button", { name: "Take it back" }).click();
    await mine.getByText("Taken back.").waitFor();
    expect(steward.troubles()).toEqual([]);
  },
);
