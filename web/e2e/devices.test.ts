// Two devices and one workshop: what one does reaches the other, and no edit is lost.

import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { visit } from "./browser";
import { house } from "./house";
import { example, jobText, kept, openExample, openWall } from "./steps";
import { workshop } from "./workshop";

const at = house();

async function pitch(page: Page, wall: string, typed: string): Promise<void> {
  await openWall(page, wall);
  await page.getByLabel(/Pitch as typed/).fill(typed);
  await page.getByRole("button", { name: "Set", exact: true }).click();
  await expect.poll(() => page.getByLabel(/Pitch as typed/).inputValue()).toBe("");
  await kept(page);
}
const sent = (page: Page) => page.getByText("workshop has it").waitFor();

test("edits made out of reach are merged where they touch different figures, and shown side by side where not", async () => {
  const laptop = await at.device("desktop");
  await openExample(laptop.page);
  await sent(laptop.page);
  const phone = await at.device("phone");
  await openExample(phone.page);
  await sent(phone.page);
  expect(new URL(phone.page.url()).hash.split("/")[2]).toBe(new URL(laptop.page.url()).hash.split("/")[2]);

  // Different walls: both stay.
  await phone.context.setOffline(true);
  await pitch(phone.page, "L", "47");
  await pitch(laptop.page, "F", "50");
  await sent(laptop.page);
  await phone.context.setOffline(false);
  const both = (text: string) => /F = \{[^}]*pitch = 50/.test(text) && /L = \{[^}]*pitch = 47/.test(text);
  await expect.poll(async () => both(await jobText(phone.page)), { timeout: 40_000 }).toBe(true);
  await expect.poll(async () => both(await jobText(laptop.page)), { timeout: 40_000 }).toBe(true);

  // The same wall: asked.
  await phone.context.setOffline(true);
  await pitch(phone.page, "F", "33");
  await pitch(laptop.page, "F", "55");
  await sent(laptop.page);
  await phone.context.setOffline(false);
  await phone.page.getByText("Another device changed the same figures.").waitFor({ timeout: 40_000 });
  await phone.page.getByText("Look at both").click();
  const mine = phone.page.getByText("33", { exact: true });
  await mine.waitFor();
  await phone.page.getByText("55", { exact: true }).waitFor();
  await mine.click();
  await phone.page.getByRole("button", { name: "Take what is chosen" }).click();
  const chosen = (text: string) => /F = \{[^}]*pitch = 33/.test(text) && /L = \{[^}]*pitch = 47/.test(text);
  await expect.poll(async () => chosen(await jobText(laptop.page)), { timeout: 40_000 }).toBe(true);
  await Promise.all([phone.context.close(), laptop.context.close()]);
}, 180_000);

test("on the network a wrong code pairs nobody, and the right one does", async () => {
  const net = await workshop({ args: ["--network", "127.0.0.2"] });
  const secure = `https://127.0.0.2:${net.port}/`;
  await expect.poll(() => net.said()).toMatch(/Code for the next device: \d{4} \d{4}/);
  const { page, context } = await visit(at.chromium, "phone", secure, { ignoreHTTPSErrors: true });
  const refused = await page.evaluate(async () => (await fetch("/api/1/jobs")).status);
  expect(refused).toBe(401);
  await page.getByRole("textbox", { name: "Code" }).fill("00000000");
  await page.getByRole("button", { name: /Pair/ }).click();
  await page.getByText("The code is wrong").waitFor();
  expect(await page.evaluate(async () => (await fetch("/api/1/jobs")).status)).toBe(401);
  // Who tries codes has to wait; then the code that is shown last is right.
  const paired = async () => {
    const shown = [...net.said().matchAll(/Code for the next device: (\d{4}) (\d{4})/g)].at(-1);
    await page.getByRole("textbox", { name: "Code" }).fill(`${shown?.[1]}${shown?.[2]}`);
    await page.getByRole("button", { name: /Pair/ }).click();
    await page.waitForTimeout(1_000);
    return page.evaluate(async () => (await fetch("/api/1/jobs")).status);
  };
  await expect.poll(paired, { timeout: 75_000, interval: 5_000 }).toBe(200);
  await page.goto(secure);
  await example(page).waitFor();
  await context.close();
  await net.clear();
}, 150_000);
