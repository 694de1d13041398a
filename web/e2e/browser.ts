// A browser of two sizes, with nobody's profile, and a list of what went wrong on its pages.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

export const SIZES = {
  phone: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  desktop: { viewport: { width: 1440, height: 900 } },
} as const;
export type Size = keyof typeof SIZES;

const CHROMIUM = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
const QUIET = [
  "--no-sandbox",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export async function browser(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, headless: true, args: QUIET });
}

export interface Visit {
  page: Page;
  context: BrowserContext;
  /** Errors of the page's scripts, and what its security policy refused. */
  faults: string[];
}

export async function visit(
  browser: Browser,
  size: Size,
  address: string,
  options: { ignoreHTTPSErrors?: boolean; colorScheme?: "light" | "dark"; reducedMotion?: "reduce" } = {},
): Promise<Visit> {
  const context = await browser.newContext({ ...SIZES[size], ...options, acceptDownloads: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  await page.goto(address);
  return { page, context, faults };
}

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What the checker finds against WCAG 2.2 AA, one line each. */
export async function barriers(page: Page): Promise<string[]> {
  // Evaluated, not added as a script: the page's own policy forbids inline scripts.
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const axe = (
      globalThis as unknown as { axe: { run(options: object): Promise<{ violations: Barrier[] }> } }
    ).axe;
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    return (await axe.run({ runOnly: { type: "tag", values: tags } })).violations;
  });
  return found.flatMap((rule) =>
    rule.nodes.map((node) => `${rule.id}: ${node.target.join(" ")} (${rule.help})`),
  );
}
interface Barrier {
  id: string;
  help: string;
  nodes: { target: string[] }[];
}

/** Keeps a picture of the page outside the project, to be looked at. */
export async function picture(page: Page, name: string): Promise<void> {
  const folder = process.env["SEATCUT_PICTURES"] ?? join(tmpdir(), "seatcut-pictures");
  await page.screenshot({ path: join(folder, `${name}.png`) });
}
