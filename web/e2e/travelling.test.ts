// The app as one page, opened from a file, with no server at all.

import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { browser, picture, visit } from "./browser";
import { figure, openCard } from "./steps";
import { seatcut } from "./workshop";

let chromium: Browser;
beforeAll(async () => {
  chromium = await browser();
});
afterAll(async () => {
  await chromium?.close();
});

test("the page that the pack command writes holds the job, the core and the app", async () => {
  const folder = mkdtempSync(join(tmpdir(), "seatcut-e2e-"));
  const page_file = join(folder, "boathouse.html");
  seatcut("pack", "examples/boathouse.toml", "-o", join(folder, "pack.pdf"), "--html", page_file);
  const { page, context, faults } = await visit(chromium, "phone", `file://${page_file}`);
  await page.getByRole("heading", { name: "Boathouse at the old ferry", level: 1 }).waitFor();
  await openCard(page, "Hip-1");
  expect(await figure(page, "True length")).toBe("6084.5 mm");
  await picture(page, "one-page");
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.locator("article").getByRole("button", { name: "Save the pack" }).click(),
  ]);
  expect(file.suggestedFilename()).toMatch(/pack\.pdf$/);
  expect(faults).toEqual([]);
  await context.close();
});
