// What a user does in the app, by the names that the app gives things.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect } from "vitest";
import type { Page } from "playwright-core";
import { barriers, picture } from "./browser";
import { ROOT } from "./workshop";

/** Waits until the last edit is kept. */
export async function kept(page: Page): Promise<void> {
  await page.getByText("Kept here").waitFor();
}

/** The example of the shelf. */
export const example = (page: Page) => page.getByRole("link", { name: /Boathouse/ }).first();

/** Opens it. */
export async function openExample(page: Page): Promise<void> {
  await example(page).click();
  await kept(page);
}

/** Takes the file of an example in, and opens it. */
export async function takeIn(page: Page, example: string): Promise<void> {
  const buffer = readFileSync(join(ROOT, `examples/${example}.toml`));
  const file = { name: `${example}.toml`, mimeType: "application/toml", buffer };
  await page.locator("main").waitFor();
  await page.locator("input[type=file]").first().setInputFiles(file);
  await kept(page);
}

/** Looks at screens: keeps a picture of each, and gathers barriers and what is wider than the screen. */
export function looker(page: Page, room: string, size: string) {
  const found: string[] = [];
  const look = async (name: string) => {
    await picture(page, `${room}-${name}-${size}`);
    found.push(...(await barriers(page)).map((barrier) => `${name}: ${barrier}`));
    const [wide, screen] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    if (wide! > screen!) found.push(`${name}: wider than the screen by ${wide! - screen!} px`);
  };
  return { look, found };
}

/** Opens the panel of a wall in Shape. */
export async function openWall(page: Page, wall: string): Promise<void> {
  await page.getByRole("button", { name: "Walls", exact: true }).click();
  await page
    .getByRole("button", { name: new RegExp(`^Wall ${wall}\\b`) })
    .last()
    .click();
  await page.getByRole("radio", { name: "Hip" }).waitFor({ state: "attached" });
}

export async function toPlace(
  page: Page,
  place: "Measure" | "Shape" | "Order" | "Bench" | "Putting up",
): Promise<void> {
  await page.getByRole("navigation", { name: "Places" }).getByRole("link", { name: place }).click();
}

/** Goes to the card of a piece. */
export async function openCard(page: Page, mark: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = location.hash.replace(/^(#\/job\/[^/]+).*/, `$1/bench/${to}`);
  }, mark);
  await page.getByRole("heading", { name: mark, level: 2, exact: true }).waitFor();
}

/** The figure of the open card that has this label. */
export async function figure(page: Page, label: string): Promise<string> {
  const found = page.locator("article .figures .ask").filter({ hasText: label }).locator(".figure");
  return (await found.first().innerText()).trim();
}

/** The text of the open job, as its own page shows it. */
export async function jobText(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const open = indexedDB.open("seatcut");
    const database = await new Promise<IDBDatabase>((done) => (open.onsuccess = () => done(open.result)));
    const id = location.hash.split("/")[2] ?? "";
    const all = <T>(store: string): Promise<T[]> =>
      new Promise((done) => {
        const asked = database.transaction(store).objectStore(store).getAll();
        asked.onsuccess = () => done(asked.result as T[]);
      });
    const [job] = (await all<{ id: string; cursor: number }>("jobs")).filter((row) => row.id === id);
    const versions = await all<{ job: string; n: number; text: string }>("versions");
    database.close();
    return versions.find((version) => version.job === id && version.n === job?.cursor)?.text ?? "";
  });
}

/** Draws an oblong by its lengths, with no pointing, and makes the roof. */
export async function oblong(page: Page, title: string, length: string, width: string): Promise<void> {
  await page.getByRole("link", { name: "New job" }).click();
  await page.getByRole("link", { name: "Measure the plates" }).click();
  const add = page.getByText("Add a wall by its length");
  await add.waitFor();
  await add.click();
  const walls = [
    ["Straight on", length],
    ["To the left", width],
    ["To the left", length],
  ] as const;
  for (const [turn, tape] of walls) {
    await page.getByLabel("Length of the next wall").fill(tape);
    await page.getByRole("button", { name: turn, exact: true }).click();
    await expect.poll(() => page.getByLabel("Length of the next wall").inputValue()).toBe("");
  }
  await page.getByRole("button", { name: "Close the plan" }).click();
  await page.getByRole("button", { name: /^Wall D/ }).click();
  await page.keyboard.type(width);
  await page.keyboard.press("Enter");
  await page.getByText("The plates close.").waitFor();
  await page.getByLabel("What the job is called").fill(title);
  await page.getByLabel("Pitch of the roof").fill("42.5");
  await page.getByLabel("Pitch of the roof").blur();
  await page.getByRole("button", { name: "Make the roof" }).click();
  await page.getByRole("heading", { name: title, level: 1 }).waitFor();
  await kept(page);
}
