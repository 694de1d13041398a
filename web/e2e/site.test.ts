// Putting up: steps are walked, a check is met, the crew moves the end, an answer comes into the job.

import { expect, test } from "vitest";
import { visit } from "./browser";
import { house } from "./house";
import { jobText, kept, looker, takeIn, toPlace } from "./steps";
import { workshop } from "./workshop";

const at = house();

/** Longest that an order of work may take here, ms: it is found in the worker, on a loaded machine. */
const FOUND = 30_000;

for (const size of ["phone", "desktop"] as const)
  test(`a roof is put up step by step, and its days, access and papers are kept, on a ${size}`, async () => {
    const own = await workshop();
    const { page, context, faults } = await visit(at.chromium, size, own.address);
    const { look, found } = looker(page, "site", size);
    const tab = (name: string) =>
      page.getByRole("navigation", { name: "What of putting up" }).getByRole("link", { name, exact: true });
    await takeIn(page, "whole-house");

    // Step after step, up to the first that ends in a check.
    await toPlace(page, "Putting up");
    await page.getByRole("region", { name: /^Step 1 of \d+$/ }).waitFor({ timeout: FOUND });
    await page.locator("main svg.picture").waitFor();
    await look("step-1");
    const hold = page.getByRole("heading", { name: "Stop and check" });
    let step = 1;
    while ((await hold.count()) === 0) {
      await page.getByRole("button", { name: "Next step" }).click();
      step += 1;
      await page.getByRole("region", { name: new RegExp(`^Step ${step} of `) }).waitFor();
    }
    await page.getByText(/^± /).first().waitFor();
    await look("check");
    await page.getByRole("button", { name: "Back", exact: true }).isVisible();
    await page.getByRole("button", { name: "Walk round the roof" }).click();

    await tab("Lifts").click();
    await page
      .getByText(/^To carry:/)
      .first()
      .waitFor();
    await look("lifts");
    // The place in the steps is not lost meanwhile.
    await tab("Steps").click();
    await page.getByRole("region", { name: new RegExp(`^Step ${step} of `) }).waitFor();

    // More hands, an earlier end.
    await tab("Days").click();
    const last = page.locator(".last .figure");
    await last.waitFor({ timeout: FOUND });
    await page.getByLabel("First day on site").fill("2027-03-01");
    await page.getByLabel("First day on site").blur();
    await expect.poll(() => last.innerText(), { timeout: FOUND }).toMatch(/2027$/);
    const before = await last.innerText();
    await page.getByLabel("Carpenters at work together").fill("5");
    await page.getByLabel("Carpenters at work together").blur();
    await expect.poll(() => last.innerText(), { timeout: FOUND }).not.toBe(before);
    await kept(page);
    expect(await jobText(page)).toMatch(/crew = 5/);
    await look("days");
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save the calendar file" }).click(),
    ]);
    expect(file.suggestedFilename()).toMatch(/\.ics$/);
    await page.getByLabel("Carpenters at work together").fill("many");
    await page.getByLabel("Carpenters at work together").blur();
    await page.locator("main .fault").first().waitFor();
    expect(await page.getByLabel("Carpenters at work together").inputValue()).toBe("many");

    await tab("Access").click();
    await page.getByRole("region", { name: "One bay" }).waitFor({ timeout: FOUND });
    await look("access");

    // A question is answered: it stands in the job.
    await tab("Papers").click();
    const answer = page.getByRole("textbox", { name: /^Where is it: address/ });
    await answer.waitFor({ timeout: FOUND });
    await look("papers");
    await answer.fill("Mill Lane, by the ford");
    await page.getByRole("button", { name: /^Keep ?: Where is it: address/ }).click();
    await page.getByText("Written on site:").first().waitFor({ timeout: FOUND });
    await kept(page);
    expect(await jobText(page)).toContain("Mill Lane, by the ford");
    expect(found).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
    await own.stop("SIGKILL");
    await own.clear();
  });
