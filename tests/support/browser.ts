import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Page } from "playwright-core";

/** Debian's chromium, without what it does on its own and what needs more than a test machine has. */
const ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
const PROGRAM = "/usr/bin/chromium";

/** How long a page may take on a busy machine before a test gives up on it. */
const PATIENCE_MS = 30_000;

/** A phone as members have them in the workshop. */
export const PHONE = { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true } as const;
export const DESKTOP = { viewport: { width: 1280, height: 900 } } as const;

export interface Watched {
  context: BrowserContext;
  page: Page;
  /** What went wrong in the page since the last time this was asked: errors of the console, of scripts, of requests. */
  troubles(): string[];
  /** Addresses of other servers that were asked for anything. */
  strangers(): string[];
}

export function openBrowser(more: string[] = []): Promise<Browser> {
  return chromium.launch({ executablePath: PROGRAM, args: [...ARGUMENTS, ...more] });
}

/** A person's browser: its own cookies and storage, and an ear on all that goes wrong. */
export async function person(browser: Browser, url: string, options: BrowserContextOptions = {}): Promise<Watched> {
  const context = await browser.newContext({ baseURL: url, ...DESKTOP, reducedMotion: "reduce", ...options });
  context.setDefaultTimeout(PATIENCE_MS);
  const heard: string[] = [];
  const strangers = new Set<string>();
  const host = new URL(url).host;
  context.on("page", (page) => listen(page, heard));
  context.on("request", (request) => {
    const { protocol, host: asked } = new URL(request.url());
    if (protocol.startsWith("http") && asked !== host) strangers.add(request.url());
  });
  context.on("requestfailed", (request) => {
    const why = request.failure()?.errorText ?? "unknown";
    // A page that is left drops what it was still loading.
    if (why !== "net::ERR_ABORTED") heard.push(`${request.method()} ${request.url()} failed: ${why}`);
  });
  context.on("response", (response) => {
    if (response.status() >= 500) heard.push(`${response.request().method()} ${response.url()} ${response.status()}`);
  });
  const page = await context.newPage();
  return { context, page, troubles: () => heard.splice(0), strangers: () => [...strangers] };
}

function listen(page: Page, heard: string[]): void {
  page.on("console", (message) => {
    if (message.type() !== "error") return;
    // The browser tells of every refused request this way; a refusal that a form shows is no trouble.
    if (/^Failed to load resource: the server responded with a status of 4\d\d/.test(message.text())) return;
    heard.push(`console: ${message.text()} (${page.url()})`);
  });
  page.on("pageerror", (error) => heard.push(`script: ${error.message} (${page.url()})`));
}

/** A session cookie as a browser keeps it. */
export async function signIn(context: BrowserContext, url: string, cookie: string): Promise<void> {
  const at = cookie.indexOf("=");
  await context.addCookies([
    { name: cookie.slice(0, at), value: cookie.slice(at + 1), url, httpOnly: true, sameSite: "Lax" },
  ]);
}

/** By how many pixels a page is wider than its window. */
export function widerThanWindow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

const FAILURES = "node_modules/.cache/browser-failures";

/** Where a test failed, what its pages looked like: one picture for each, named in the output. */
export async function pictureOfFailure(
  context: { task: { name: string; result?: { state?: string } | undefined } },
  ...people: Watched[]
): Promise<void> {
  if (context.task.result?.state !== "fail") return;
  const name = context.task.name.replaceAll(/\W+/g, "-").slice(0, 80);
  for (const [index, { page }] of people.entries()) {
    const path = `${FAILURES}/${name}-${index + 1}.png`;
    await page.screenshot({ path, fullPage: true });
    process.stdout.write(`${page.url()} looked like ${path}\n`);
  }
}
