import { readFile } from "node:fs/promises";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, inject, test } from "vitest";
import { openBrowser, person, pictureOfFailure, type Watched } from "#tests/support/browser.ts";
import { needsDebianPackage } from "#tests/support/debian.ts";
import { firstStewardLink, startServer, type RunningServer } from "#tests/support/server.ts";
import { benchChecks, enter, invite, join, LINE, openCase, typeOwnWords } from "#tests/support/the-job.ts";

// One job after the other by the same two people, so a step that fails takes those after it along.

const PASSWORD = "solder and sealing wax";
const BOARD = "vetch-terminal-logic";
const RUN = "U7.11-18 diode 612 610 611 3 612 OL 608 610";

let server: RunningServer;
let browser: Browser;
let steward: Watched;
let second: Watched;
/** Number of the case that the steward works on. */
let number = 0;

beforeAll(async () => {
  server = await startServer({ copyOf: inject("demoClub"), env: { CLUB_DEMO: "on" } });
  browser = await openBrowser();
  steward = await person(browser, server.url);
  second = await person(browser, server.url);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});
afterEach(async (context) => {
  await pictureOfFailure(context, steward, second);
  const troubles = [...steward.troubles(), ...second.troubles(), ...steward.strangers(), ...second.strangers()];
  if (troubles.length > 0) throw new Error(`The pages had trouble:\n${troubles.join("\n")}`);
});

describe("coming in", () => {
  test("the first steward signs in by the link that the start printed, once, and sets a password", async () => {
    const { page } = steward;
    const link = firstStewardLink(inject("demoOutput"));
    await page.goto(link);
    await page.getByRole("button", { name: "Sign in" }).click();
    await page.waitForURL("**/account?welcome=1");
    await page.getByLabel("New password").fill(PASSWORD);
    await page.getByRole("button", { name: "Set the password" }).click();
    await page.getByText("Other sign-ins have ended").or(page.getByLabel("Present password")).first().waitFor();
    await second.page.goto(link);
    await second.page.getByRole("button", { name: "Sign in" }).click();
    await second.page.getByText("This link was used already").waitFor();
  });

  test("a second member joins by an invitation and is signed in", async () => {
    const link = await invite(steward.page);
    await join(second.page, link, {
      name: "Ada Lindqvist",
      handle: "ada",
      email: "ada@example.org",
      password: PASSWORD,
    });
    await second.page.locator("header summary", { hasText: "Ada Lindqvist" }).waitFor();
    const third = await person(browser, server.url);
    await third.page.goto(new URL(link).pathname);
    await third.page.getByText("This invitation does not open the door any more.").waitFor();
    await third.context.close();
  });
});

describe("finding", () => {
  test("anyone finds a case by its symptom, typing errors and all, while they type", async () => {
    const visitor = await person(browser, server.url);
    await visitor.page.goto("/");
    const box = visitor.page.getByRole("combobox", { name: /^Search/ }).last();
    await box.pressSequentially("no pictrue");
    await visitor.page
      .getByRole("option", { name: /picture/i })
      .first()
      .waitFor();
    await box.press("Enter");
    await visitor.page.waitForURL("**/search?**");
    await visitor.page
      .getByRole("link", { name: /picture/i })
      .first()
      .waitFor();
    expect(visitor.troubles()).toEqual([]);
    await visitor.context.close();
  });

  test.each(["SN74LS244N", "74ls244", "VQ4 0061", "VQ4-0061-03", "vq400 61"])(
    "a code written %s is found",
    async (q) => {
      const { page } = second;
      await page.goto(`/search?q=${encodeURIComponent(q)}`);
      const wanted = /^vq4/i.test(q) ? /VQ4.?0061/ : /74LS244/;
      await page.getByRole("main").getByRole("link", { name: wanted }).first().waitFor();
    },
  );

  test("a board shows how it is built and how it fails", async () => {
    const { page } = second;
    await page.goto(`/boards/${BOARD}`);
    for (const part of ["Rails", "Connectors", "Parts", "Self-test", "Cases"]) {
      await page
        .getByRole("heading", { name: new RegExp(part, "i") })
        .first()
        .waitFor();
    }
  });
});

describe("at the bench", () => {
  test("a case is opened from the board's page", async () => {
    number = await openCase(steward.page, BOARD, "no picture", "The beep comes, the cursor does not.");
    await steward.page.getByText("The beep comes, the cursor does not.").waitFor();
  });

  test("a reading is judged while it is typed, against the board's record", async () => {
    const { page } = steward;
    await page.getByLabel(LINE).fill("+5V 0.8");
    const entry = page.getByRole("region", { name: "Enter a check" });
    await entry.getByText("out of spec").waitFor();
    await entry.getByText("5 V ±5 %").first().waitFor();
    await page.getByLabel(LINE).press("Enter");
    await benchChecks(page).filter({ hasText: "0.8 V" }).filter({ hasText: "out of spec" }).waitFor();
  });

  test("a run of pins is one line", async () => {
    const { page } = steward;
    await enter(page, RUN);
    await page.getByText("Recorded 8 checks.").waitFor();
    const rows = benchChecks(page);
    await rows.nth(8).waitFor();
    expect(await rows.count()).toBe(9);
    // On a diode check a bare number is in millivolts.
    await rows.filter({ hasText: "U7.14" }).filter({ hasText: "3 mV" }).waitFor();
  });

  test("a lost connection shows a count and loses nothing, not even with the page", async () => {
    const { page, context } = steward;
    await page.getByText(/waits? for the server/).waitFor({ state: "detached" });
    await context.setOffline(true);
    await enter(page, "U7.18 0.4");
    await enter(page, "U7.9 0.01");
    await page.getByText("2 readings wait for the server").waitFor();
    await context.setOffline(false);
    await page.reload();
    await benchChecks(page).filter({ hasText: "U7.18" }).filter({ hasText: "0.4" }).waitFor();
    await page.getByText(/readings? waits? for the server/).waitFor({ state: "detached" });
    await page.reload();
    const rows = benchChecks(page);
    await rows.nth(10).waitFor();
    expect(await rows.count()).toBe(11);
    // The requests that found no way out are what this test is about.
    steward.troubles();
  });

  test("what cannot be read is kept as typed and says why", async () => {
    const { page } = steward;
    await enter(page, "U7.1 about five-ish V");
    await benchChecks(page).filter({ hasText: "about five-ish" }).waitFor();
  });

  test("past cases that failed alike stand beside, with what matched, cause and cure", async () => {
    const beside = steward.page.getByRole("region", { name: /Who had this/ });
    await beside.getByRole("link").first().waitFor();
    await beside.getByText("Alike:").first().waitFor();
    await beside.getByText("Cause:").first().waitFor();
    await steward.page.getByRole("region", { name: /What it may be/ }).waitFor();
  });

  test("a label prints for the bag", async () => {
    const { page } = steward;
    await page.goto(`/cases/${number}/label`);
    await page.getByRole("img", { name: /case/i }).first().waitFor();
    await page.getByText(String(number)).first().waitFor();
  });
});

describe("the end of the repair", () => {
  test("a cause is named with the checks that it explains and its cure", async () => {
    const { page } = steward;
    await page.goto(`/cases/${number}/close`);
    const where = page.getByRole("combobox", { name: /^Where/ });
    await where.click();
    await where.pressSequentially("U7");
    await where.press("Tab");
    await page.getByLabel("What was wrong with it").selectOption({ label: "short inside" });
    await page.getByLabel("What cured it").selectOption({ label: "replaced" });
    await page.getByLabel("What was done").fill("Cut it out, fitted a socket.");
    await page.getByRole("button", { name: "Name this cause" }).click();
    await page.getByRole("heading", { name: "Measure again what failed" }).waitFor();
  });

  test("it counts as cured only when the failed checks are in spec again", async () => {
    const { page } = steward;
    const again = page.getByLabel(/^Now at/);
    await again.first().fill("5.02");
    await page.getByRole("button", { name: "Record the readings" }).click();
    // One of two failed checks is in spec again: that is half a proof.
    await page.getByText("The cure is not proved yet").waitFor();
    await again.last().fill("4.98");
    await page.getByRole("button", { name: "Record the readings" }).click();
    await page.getByText("Prove it once more").waitFor();
    await page.goto(`/cases/${number}`);
    await page.getByText("cured", { exact: true }).first().waitFor();
    await page.getByText("Measured again:").waitFor();
  });

  test("the story is written with links to records, and a colon is no command", async () => {
    const { page } = steward;
    await page.goto(`/cases/${number}/write`);
    await page
      .getByRole("textbox", { name: "The story" })
      .fill("At 12:30 the :chip[74LS244] was 3:1 cold, U7:14 low, see :case[1]; :sparkle[this] stays.");
    await page.getByRole("region", { name: "How the page will read" }).getByRole("link", { name: "74LS244" }).waitFor();
    await page.getByRole("button", { name: "Save and read it" }).click();
    await page.waitForURL(`**/cases/${number}`);
    const main = page.getByRole("main");
    await main.getByRole("link", { name: "74LS244" }).first().waitFor();
    await main.getByText("12:30").waitFor();
    const text = (await main.textContent()) ?? "";
    for (const words of ["At 12:30", "3:1 cold", "U7:14 low", ":sparkle[this] stays"]) expect(text).toContain(words);
  });

  test("nobody else sees it until it is published", async () => {
    const before = await second.page.goto(`/cases/${number}`);
    expect(before?.status()).toBe(404);
    await steward.page.goto(`/cases/${number}`);
    await steward.page.getByRole("button", { name: "Publish to the club" }).click();
    await steward.page.getByRole("button", { name: "Take back to a draft" }).waitFor();
    const after = await second.page.goto(`/cases/${number}`);
    expect(after?.status()).toBe(200);
  });
});

describe("the next member", () => {
  test.each([
    ["its symptom", "cursor does not"],
    ["its chip's code", "U7 no picture"],
  ])("finds it by %s", async (_by, q) => {
    const { page } = second;
    await page.goto(`/search?kind=case&q=${encodeURIComponent(q)}`);
    await page.locator(`main a[href="/cases/${number}"]`).first().waitFor();
  });

  test("finds it by the failed checks of a board on the bench, first of all", async () => {
    const { page } = second;
    await openCase(page, BOARD, "stripes", "Only stripes.");
    await enter(page, "+5V 0.8");
    await benchChecks(page).first().waitFor();
    await page
      .getByRole("region", { name: /Who had this/ })
      .locator(`a[href="/cases/${number}"]`)
      .waitFor();
  });

  test("says that it cured theirs, and the count shows", async () => {
    const { page } = second;
    await page.goto(`/cases/${number}`);
    await page.getByRole("button", { name: "This cured mine" }).click();
    await page.getByRole("button", { name: "It cured mine (said)" }).waitFor();
    await steward.page.goto(`/cases/${number}`);
    await steward.page.getByText(/1\s*cured by this/).waitFor();
  });

  test("says that another did not help, which opens a case linked to it", async () => {
    const { page } = second;
    await page.goto("/cases/110");
    await page.getByText("Did not help mine").click();
    await page.getByLabel("What was different with yours?").fill("The crystal is fine.");
    await page.getByRole("button", { name: "Note it and open a case for mine" }).click();
    await page.waitForURL("**/cases/new?**");
    await page.getByRole("button", { name: "Open the case" }).click();
    await page.waitForURL("**/bench");
    await page.goto(page.url().replace("/bench", ""));
    await page.locator('main a[href="/cases/110"]').first().waitFor();
  });
});

describe("records", () => {
  test("a symbol library is tried first, then written", async (ctx) => {
    const folder = await needsDebianPackage(ctx, "kicad-symbols", "kicad");
    const { page } = second;
    await page.goto("/imports");
    const buffer = await readFile(`${folder}/usr/share/kicad/symbols/74xx.kicad_sym`);
    await page
      .locator('input[type="file"]')
      .setInputFiles({ name: "74xx.kicad_sym", mimeType: "application/octet-stream", buffer });
    await page.getByRole("button", { name: "Read it" }).click();
    await page.waitForURL(/\/imports\/[0-9a-f-]{36}/);
    const write = page.getByRole("button", { name: /^Write \d+ chips/ });
    await write.waitFor();
    await write.click();
    await write.waitFor({ state: "detached" });
    await page.goto("/search?kind=chip&q=74LS145");
    await page
      .getByRole("main")
      .getByRole("link", { name: /74LS145/ })
      .first()
      .waitFor();
  });

  test("a finished repair is recorded in four lines, and counts as cured", async () => {
    const { page } = second;
    await page.goto("/cases/quick");
    const board = page.getByRole("combobox", { name: /^Board/ });
    await board.pressSequentially("Vetch 220 logic");
    await page
      .getByRole("option", { name: /Vetch 220 logic/ })
      .first()
      .click();
    await typeOwnWords(page.getByRole("combobox", { name: /^Symptom/ }), "keys dead");
    await page.getByLabel("What was wrong").fill("Keyboard socket cracked off.");
    await page.getByRole("textbox", { name: "What cured it" }).fill("Soldered it back.");
    await page.getByLabel("How it was proved").fill("Typed on it all evening.");
    await page.getByRole("button", { name: "Record and publish" }).click();
    await page.waitForURL(/\/cases\/\d+$/);
    await page.getByText("cured", { exact: true }).first().waitFor();
  });
});
