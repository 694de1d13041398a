// Nothing is lost: a tab that is killed, no network, a half-finished plan, files that are no jobs.

import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { visit } from "./browser";
import { house } from "./house";
import { figure, jobText, kept, openCard, openExample, openWall } from "./steps";
import { workshop } from "./workshop";

const at = house();

/** Ends the page as a phone does that needs the memory: no handler runs. */
async function killed(page: Page): Promise<Page> {
  const context = page.context();
  const { hash } = new URL(page.url());
  const cdp = await context.newCDPSession(page);
  // The page is gone before it could answer.
  const crashed = page.waitForEvent("crash");
  cdp.send("Page.crash").catch(() => undefined);
  await crashed;
  const again = await context.newPage();
  await again.goto(at.workshop.address + hash);
  return again;
}

test("a tab that is killed right after an edit keeps it, and undo with it", async () => {
  const visited = await at.device("phone");
  let { page } = visited;
  await openExample(page);
  const before = await jobText(page);
  await openWall(page, "L");
  await page.getByRole("button", { name: "Half a degree more" }).click();
  await expect.poll(() => jobText(page)).not.toBe(before);
  const after = await jobText(page);
  page = await killed(page);
  await kept(page);
  expect(await jobText(page)).toBe(after);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(() => jobText(page)).toBe(before);
  await visited.context.close();
});

test("a tab that is killed in the middle of edits comes back to a whole job", async () => {
  const visited = await at.device("phone");
  let { page } = visited;
  await openExample(page);
  for (let round = 0; round < 5; round += 1) {
    await openWall(page, "L");
    const more = page.getByRole("button", { name: "Half a degree more" });
    await more.waitFor();
    // Pressed and not waited for.
    await page.evaluate((times) => {
      const button = document.querySelector<HTMLButtonElement>('button[aria-label="Half a degree more"]');
      for (let k = 0; k < times; k += 1) button?.click();
    }, 4);
    page = await killed(page);
    await kept(page);
    await page.getByText("Rise to the ridge").waitFor();
    expect(await jobText(page)).toContain('title = "Boathouse at the old ferry"');
  }
  await visited.context.close();
});

test("with no network and no server the app starts, solves, and draws the sheets", async () => {
  const own = await workshop();
  const { page, context } = await visit(at.chromium, "phone", own.address);
  // The order and the papers follow when the browser has time.
  const laterKept = () =>
    page.evaluate(async () => {
      await navigator.serviceWorker.ready;
      const later = await caches.open("later");
      const bytes: number[] = [];
      for (const key of await later.keys()) {
        const found =
          /web_(side|papers).*\.wasm/.test(key.url) && (await later.match(key, { ignoreVary: true }));
        if (found) bytes.push((await found.arrayBuffer()).byteLength);
      }
      return navigator.serviceWorker.controller ? bytes.filter((size) => size > 0).length : 0;
    });
  await expect.poll(laterKept, { timeout: 45_000 }).toBe(2);
  await own.stop("SIGKILL");
  await context.setOffline(true);
  await page.reload();
  await openExample(page);
  await openCard(page, "Hip-1");
  expect(await figure(page, "True length")).toBe("6084.5 mm");
  await page.locator("article").getByRole("heading", { name: "On paper" }).scrollIntoViewIfNeeded();
  const [file] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    page.locator("article").getByRole("button", { name: "Save the pack" }).click(),
  ]);
  expect(file.suggestedFilename()).toBe("boathouse-at-the-old-ferry-pack.pdf");
  await context.close();
  await own.clear();
});

test("a half-finished plan is there again after the tab was killed", async () => {
  const visited = await at.device("desktop");
  let { page } = visited;
  await page.getByRole("link", { name: "New job" }).click();
  await page.getByRole("link", { name: "Measure the plates" }).click();
  await page.getByText("Add a wall by its length").click();
  for (const [turn, tape] of [
    ["Straight on", "9000"],
    ["To the left", "4321"],
  ] as const) {
    await page.getByLabel("Length of the next wall").fill(tape);
    await page.getByRole("button", { name: turn, exact: true }).click();
    await expect.poll(() => page.getByLabel("Length of the next wall").inputValue()).toBe("");
  }
  await page.getByRole("button", { name: /^Wall B.*4321 mm/ }).waitFor();
  page = await killed(page);
  await page.getByRole("button", { name: /^Wall A.*9000 mm/ }).waitFor();
  await page.getByRole("button", { name: /^Wall B.*4321 mm/ }).waitFor();
  await visited.context.close();
});

test("files that are no good jobs are told with their line, and the shelf stays as it was", async () => {
  const folder = mkdtempSync(join(tmpdir(), "seatcut-e2e-"));
  const file = (name: string, bytes: string | Buffer) => {
    writeFileSync(join(folder, name), bytes);
    return join(folder, name);
  };
  const { page, context } = await at.device("phone");
  const jobs = page.getByRole("article");
  await jobs.first().waitFor();
  const before = await jobs.count();
  const bring = (path: string) => page.locator('input[type="file"]').setInputFiles(path);

  await bring(file("picture.toml", Buffer.from([0, 1, 2, 0xff, 0xfe, 0])));
  await page.getByText("is not a text, so it is no job file").waitFor();

  await bring(file("torn.toml", 'format = 1\ntitle = "Torn"\n[plan]\ncorners = [[0, 0], [84'));
  await page.getByText("Line 4").first().waitFor();
  await page
    .getByRole("button", { name: "Put it away" })
    .or(page.getByRole("link", { name: "Put it away" }))
    .click();
  await jobs.first().waitFor();
  expect(await jobs.count()).toBe(before);
  await context.close();
});
