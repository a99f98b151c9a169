// npm run screens: every page as a picture, for looking at: desktop and 360 px, light and dark, in screens/.
import fs from "node:fs";
import path from "node:path";
import { DESKTOP, openBrowser, person, PHONE } from "#tests/support/browser.ts";
import { PAGES } from "#tests/support/pages.ts";
import { preparedDemo } from "#tests/support/prepared-clubs.ts";
import { firstStewardLink, startServer } from "#tests/support/server.ts";

const FOLDER = "screens";

fs.rmSync(FOLDER, { recursive: true, force: true });
fs.mkdirSync(FOLDER);
const dataDir = await preparedDemo();
const server = await startServer({ copyOf: dataDir });
const browser = await openBrowser();
try {
  const first = await person(browser, server.url, DESKTOP);
  await first.page.goto(server.url + firstStewardLink(fs.readFileSync(path.join(dataDir, "printed"), "utf8")));
  await first.page.click("main button[type=submit]");
  await first.page.waitForURL(/account/);
  const storageState = await first.page.context().storageState();
  for (const [size, shape] of Object.entries({ desktop: DESKTOP, phone: PHONE })) {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page } = await person(browser, server.url, { ...shape, colorScheme, storageState });
      for (const address of PAGES) {
        await page.goto(server.url + address, { waitUntil: "load" });
        await page.waitForTimeout(500);
        const name = address.replace(/[^a-z0-9]+/gi, "-").replace(/^-|-$/g, "") || "first";
        await page.screenshot({ path: path.join(FOLDER, `${name}.${size}.${colorScheme}.png`), fullPage: true });
      }
      await page.context().close();
    }
  }
  process.stdout.write(`${fs.readdirSync(FOLDER).length} pictures in ${FOLDER}/\n`);
} finally {
  await browser.close();
  await server.stop();
}
process.exit(0);
