// Strength: asked for with five figures, shown with the most used timber and its working, taken back.

import { expect, test } from "vitest";
import { visit } from "./browser";
import { house } from "./house";
import { kept, openCard, openExample } from "./steps";
import { workshop } from "./workshop";

const at = house();

for (const size of ["phone", "desktop"] as const)
  test(`the strength of a roof is asked for, shown, and asked why, on a ${size}`, async () => {
    // Of its own, or the other screen would find the figures written already.
    const own = await workshop();
    const { page, context } = await visit(at.chromium, size, own.address);
    await openExample(page);
    await page.getByRole("button", { name: "Strength", exact: true }).click();
    const form = page
      .locator("form")
      .filter({ has: page.getByRole("button", { name: "Work out the strength" }) });
    await form.getByLabel("Covering", { exact: true }).selectOption({ index: 1 });
    await form.getByLabel(/^Snow zone/).fill("9");
    await form.getByLabel(/sea/).fill("120");
    await form.getByLabel(/[Ww]ind/).fill("0.85");
    await form.getByRole("button", { name: "Work out the strength" }).click();
    // A zone that is not on the map is told at its field, and what was typed is still there.
    await form.getByText(/outside 1 to 5/).waitFor();
    expect(await form.getByLabel(/sea/).inputValue()).toBe("120");
    await form.getByLabel(/^Snow zone/).fill("3");
    await form.getByRole("button", { name: "Work out the strength" }).click();
    await kept(page);
    await page.getByText("Most used timber").waitFor();
    await page.getByText("The ten most used").waitFor();
    await page.getByRole("heading", { name: "For an engineer" }).waitFor();
    expect(await page.getByText(/over, \d+ %/).count()).toBeGreaterThan(0);

    await openCard(page, "Hip-1");
    await page.getByRole("button", { name: /^Strength: \d+ % used/ }).click();
    const why = page.getByRole("dialog");
    await why
      .getByText(/EN 1995-1-1/)
      .first()
      .waitFor();
    await page.keyboard.press("Escape");
    await context.close();
    await own.stop("SIGKILL");
    await own.clear();
  });
