// The order: what to buy, a price written, a price list refused and taken, a covering that is too flat, a length cut.

import { expect, test } from "vitest";
import { visit } from "./browser";
import { house } from "./house";
import { jobText, kept, looker, takeIn, toPlace } from "./steps";
import { workshop } from "./workshop";

const at = house();

/** Longest that a cutting plan may take here, ms: it is found in the worker, on a loaded machine. */
const PLAN = 30_000;

for (const size of ["phone", "desktop"] as const)
  test(`a roof is ordered, priced and cut, on a ${size}`, async () => {
    const own = await workshop();
    const { page, context, faults } = await visit(at.chromium, size, own.address);
    const { look, found } = looker(page, "order", size);
    const tab = (name: string) =>
      page.getByRole("navigation", { name: "What of the order" }).getByRole("link", { name, exact: true });
    await takeIn(page, "whole-house");

    // What to buy, and what it costs once a price is written.
    await toPlace(page, "Order");
    const rafters = page.getByRole("region", { name: "47 × 150 mm, C24", exact: true });
    await rafters.waitFor({ timeout: PLAN });
    const lengths = rafters.getByRole("list", { name: "To buy" }).getByRole("listitem");
    expect(await lengths.count()).toBeGreaterThan(0);
    expect(await lengths.first().innerText()).toMatch(/\d+\s+of\s+\d+ mm/);
    await rafters
      .getByText(/proven|over the least/)
      .first()
      .waitFor();
    await look("buy");
    const summary = rafters.locator("summary").first();
    await summary.click();
    await rafters.getByText("By the metre", { exact: true }).click();
    await rafters.getByLabel("Price of a metre").fill("free");
    await rafters.getByRole("button", { name: "Keep this price" }).click();
    await rafters.getByText(/is no price/).waitFor();
    await rafters.getByLabel("Price of a metre").fill("3.20");
    await rafters.getByLabel("Asked on").fill("2026-11-02");
    await rafters.getByRole("button", { name: "Keep this price" }).click();
    await kept(page);
    await rafters.getByText(/^£[\d,]+\.\d\d$/).waitFor({ timeout: PLAN });
    expect(await jobText(page)).toContain('dated = "2026-11-02"');

    // One length after the other, cut by cut.
    await tab("Cut").click();
    const first = page
      .getByRole("region", { name: "47 × 150 mm, C24", exact: true })
      .getByRole("link")
      .first();
    await first.waitFor({ timeout: PLAN });
    await look("cut");
    await first.click();
    await page.getByRole("region", { name: /^Cut 1 of/ }).waitFor();
    await page.getByRole("button", { name: "Next cut" }).click();
    await page.getByRole("region", { name: /^Cut 2 of/ }).waitFor();
    await look("length");
    await page.getByRole("button", { name: "Tick its timbers as cut" }).click();
    await page.getByText("Its timbers are ticked as cut.").waitFor();

    // A covering that wants a steeper roof.
    await tab("Covering").click();
    const choice = page.getByLabel("What covers the slopes");
    await choice.selectOption("plain-tile");
    await page.getByRole("heading", { name: "To order" }).waitFor({ timeout: PLAN });
    await look("covering");
    await page.getByText("What its maker says, and how it is laid").click();
    await page.getByLabel(/Least pitch/).fill("45");
    await page.getByLabel(/Least pitch/).blur();
    await page.getByText("It can't be laid so").waitFor({ timeout: PLAN });
    await look("refused");

    await tab("Fixings").click();
    await page.getByRole("heading", { name: "Fixings and the rest" }).waitFor();
    await page.locator("main summary").first().click();
    await look("fixings");

    // A price list with a fault changes nothing and says where; mended, it is taken.
    await tab("Prices").click();
    const list = page.getByLabel("Or paste it here");
    const text =
      "what,thickness_mm,depth_mm,length_mm,class,price,per,dated\ntimber,32,225,,,4.10,m,2026-11-02\n";
    await list.fill(text.replace("4.10", "cheap"));
    await page.getByRole("button", { name: "Read it in" }).click();
    await page.getByRole("button", { name: "Line 2" }).waitFor();
    expect(await list.inputValue()).toContain("cheap");
    await look("prices");
    await list.fill(text);
    await page.getByRole("button", { name: "Read it in" }).click();
    await page.getByText("The prices are in the job.").waitFor();
    expect(await jobText(page)).toContain("4.1");
    expect(found).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
    await own.stop("SIGKILL");
    await own.clear();
  });
