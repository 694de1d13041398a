// For everyone: checked against WCAG 2.2 AA in every theme and size, and used by keys alone.

import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { SIZES, type Size } from "./browser";
import { house } from "./house";
import { example, jobText, kept, looker, openCard, openExample, openWall, toPlace } from "./steps";

const at = house();

/** Longest that an order of work or a cutting plan may take here, ms: on a loaded machine. */
const FOUND = 60_000;
const THEMES = ["light", "dark", "sun"] as const;

describe.each(Object.keys(SIZES) as Size[])("on a %s", (size) => {
  test.each(THEMES)("nothing bars the way in the %s theme", async (theme) => {
    const { page, context } = await at.device(size);
    await page.evaluate(
      (to) => localStorage.setItem("seatcut.settings", JSON.stringify({ theme: to })),
      theme,
    );
    await page.reload();
    const { look, found } = looker(page, theme, size);
    await example(page).waitFor();
    await look("shelf");
    for (const room of ["settings", "help", "new", "measure"]) {
      await page.evaluate((to) => (location.hash = `#/${to}`), room);
      await page.locator("main").waitFor();
      await page.waitForTimeout(500);
      await look(room);
    }
    await page.evaluate(() => (location.hash = "#/"));
    await openExample(page);
    await page.getByText("Rise to the ridge").waitFor();
    await look("shape");
    await openWall(page, "F");
    await look("wall");
    await toPlace(page, "Bench");
    await page.getByText("of 213 cut").first().waitFor();
    await look("pieces");
    await openCard(page, "Hip-1");
    await look("card");
    await page.locator("article .figures .ask").first().click();
    await page.getByText("Rule:").waitFor();
    await look("why");
    // Tests of their own look at these in the light theme, tab by tab.
    if (size === "phone" && theme !== "light") {
      await page.keyboard.press("Escape");
      await toPlace(page, "Putting up");
      await page.locator("main svg.picture").waitFor({ timeout: FOUND });
      await look("step");
      await toPlace(page, "Order");
      await page.getByRole("list", { name: "To buy" }).first().waitFor({ timeout: FOUND });
      await look("buy");
    }
    expect(found).toEqual([]);
    await context.close();
  });
});

/** Presses Tab until what has this name is in focus. */
async function tabTo(page: Page, name: RegExp, most = 60): Promise<void> {
  for (let k = 0; k < most; k += 1) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const here = document.activeElement;
      return here ? (here.getAttribute("aria-label") ?? here.textContent ?? "").trim() : "";
    });
    if (name.test(at)) return;
  }
  throw new Error(`no way by keys to ${name}`);
}

test("by keys alone a job is opened, a wall made a gable, a figure asked why", async () => {
  const { page, context } = await at.device("desktop");
  await example(page).waitFor();
  await tabTo(page, /Boathouse/);
  await page.keyboard.press("Enter");
  await kept(page);
  await page.getByText("Rise to the ridge").waitFor();
  await tabTo(page, /^Walls$/, 80);
  await page.keyboard.press("Enter");
  await tabTo(page, /^Wall L.*40°/, 40);
  await page.keyboard.press("Enter");
  await page.getByRole("radio", { name: "Hip" }).focus();
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => jobText(page)).toMatch(/L = \{[^}]*gable = true/);
  await page.keyboard.press("Control+z");
  await expect.poll(() => jobText(page)).not.toMatch(/L = \{[^}]*gable = true/);
  await openCard(page, "Hip-1");
  const step = page.getByRole("region", { name: /^Mark 1 of/ });
  await step.waitFor();
  await page.keyboard.press("ArrowRight");
  await page.getByRole("region", { name: /^Mark 2 of/ }).waitFor();
  await page.locator("article .figures button.ask").first().focus();
  await page.keyboard.press("Enter");
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await context.close();
});
