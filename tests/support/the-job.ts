import type { Locator, Page } from "playwright-core";

/** Steps of the main job as a person at a desk does them. Each waits for what the page then says. */

export const LINE = "Place and reading, for instance U7.14 4.87";

/** The number of the case whose page is open. */
export function caseNumber(page: Page): number {
  const number = /\/cases\/(\d+)/.exec(page.url())?.[1];
  if (!number) throw new Error(`${page.url()} is no page of a case`);
  return Number(number);
}

/** Makes an invitation at the steward's desk and answers its link. */
export async function invite(page: Page): Promise<string> {
  await page.goto("/desk");
  await page.getByRole("button", { name: "Make an invitation" }).click();
  return page.getByRole("textbox", { name: "Link of the invitation" }).inputValue();
}

export interface NewPerson {
  name: string;
  handle: string;
  email: string;
  password: string;
}

export async function join(page: Page, link: string, who: NewPerson): Promise<void> {
  await page.goto(new URL(link).pathname);
  await page.getByLabel("Your name").fill(who.name);
  await page.getByLabel("Short name").fill(who.handle);
  await page.getByLabel("Mail address").fill(who.email);
  await page.getByLabel("Password").fill(who.password);
  await page.getByRole("button", { name: "Join" }).click();
  await page.waitForURL("**/?welcome=1");
}

/** Types into a box that offers words, and takes what was typed. */
export async function typeOwnWords(box: Locator, words: string): Promise<void> {
  await box.click();
  await box.pressSequentially(words);
  await box.press("Enter");
}

/** Opens a case from a board's page, in one's own words. Answers its number; the bench is open then. */
export async function openCase(page: Page, board: string, symptom: string, words: string): Promise<number> {
  await page.goto(`/boards/${board}`);
  await page.getByRole("link", { name: "Open a case on this board" }).click();
  await typeOwnWords(page.getByRole("combobox", { name: "Symptoms" }), symptom);
  await page.getByLabel("In your own words").fill(words);
  await page.getByRole("button", { name: "Open the case" }).click();
  await page.waitForURL("**/bench");
  return caseNumber(page);
}

/** Types a line at the bench and records it. */
export async function enter(page: Page, line: string): Promise<void> {
  const box = page.getByLabel(LINE);
  await box.fill(line);
  await box.press("Enter");
}

/** The rows of the bench's list of checks, as text. */
export function benchChecks(page: Page): Locator {
  return page.getByRole("region", { name: /^Checks/ }).getByRole("listitem");
}
