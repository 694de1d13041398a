// The main job: plates drawn, a hip made, a jack's length read, and the same figure from the command line.

import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { picture, SIZES, type Size } from "./browser";
import { house } from "./house";
import { figure, jobText, kept, oblong, openCard, openExample, openWall, toPlace } from "./steps";
import { seatcut } from "./workshop";

const at = house();

interface Solved {
  members: { mark: string; kind: string; count_as: string; cut_length_mm: number; true_length_mm: number }[];
}
function solvedByCommand(text: string): Solved {
  const file = join(mkdtempSync(join(tmpdir(), "seatcut-e2e-")), "job.toml");
  writeFileSync(file, text);
  return JSON.parse(seatcut("solve", file, "--json")) as Solved;
}
/** A pencil line on timber: the app writes lengths to the nearest half mm. */
const halves = (mm: number) => `${(Math.round(mm * 2) / 2).toString()} mm`;

describe.each(Object.keys(SIZES) as Size[])("on a %s", (size) => {
  test("plates are drawn, an end is made a gable and a hip again, and a jack reads as on the command line", async () => {
    const { page, context, faults } = await at.device(size);
    await oblong(page, `Shed for a ${size}`, "8400", "5200");

    await toPlace(page, "Shape");
    await openWall(page, "B");
    await page.getByText("Gable", { exact: true }).click();
    await page.getByText("A gable is carried up").waitFor();
    await kept(page);
    expect(await jobText(page)).toMatch(/B = \{ gable = true \}|\[roof\.walls\.B\]\s+gable = true/);
    await page.getByText("Hip", { exact: true }).click();
    await page.getByRole("button", { name: "Half a degree more" }).waitFor();
    await kept(page);
    await picture(page, `shape-${size}`);

    const text = await jobText(page);
    const jack = solvedByCommand(text).members.find((member) => member.kind === "jack_rafter");
    expect(jack).toBeDefined();
    await openCard(page, jack!.count_as);
    expect(await figure(page, "Cut length")).toBe(halves(jack!.cut_length_mm));
    expect(await figure(page, "True length")).toBe(halves(jack!.true_length_mm));
    await picture(page, `card-${size}`);

    // Asked why, the figure is what the working comes to.
    await page.locator("article .figures .ask").filter({ hasText: "True length" }).first().click();
    const why = page.getByRole("dialog");
    await why.getByText("Rule:").waitFor();
    expect(await why.locator(".figure").first().innerText()).toBe(halves(jack!.true_length_mm));
    expect(await why.locator("li").last().innerText()).toContain(halves(jack!.true_length_mm));
    expect(faults).toEqual([]);
    await context.close();
  });

  test("a pitch is dragged and taken back", async () => {
    const { page, context, faults } = await at.device(size);
    await openExample(page);
    await openWall(page, "F");
    const handle = page.getByRole("slider", { name: "Pitch of wall F" });
    await handle.waitFor();
    const before = await jobText(page);
    const box = await handle.boundingBox();
    const [x, y] = [box!.x + box!.width / 2, box!.y + box!.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    // A little steeper: much steeper, and this roof's birdsmouths pass what is sound and the drag is refused.
    const now = async () => Number(await handle.getAttribute("aria-valuenow"));
    for (let up = 1; up <= 40 && (await now()) < 46; up += 1) {
      await page.mouse.move(x, y - up);
      await page.waitForTimeout(100);
    }
    await expect.poll(now).toBeGreaterThan(45);
    // While it is held nothing is written.
    expect(await jobText(page)).toBe(before);
    await page.mouse.up();
    await expect.poll(() => jobText(page)).not.toBe(before);
    await kept(page);
    const [, pitch] = /F = \{ pitch = ([\d.]+)/.exec(await jobText(page)) ?? [];
    expect(Number(pitch)).toBeGreaterThan(45);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await expect.poll(() => jobText(page)).toBe(before);
    expect(faults).toEqual([]);
    await context.close();
  });

  test("a piece is ticked, in British and American words, in mm and in feet", async () => {
    const { page, context, faults } = await at.device(size);
    await openExample(page);
    await openCard(page, "Ridge-1a");
    await page.getByRole("group", { name: "Ridge-1a" }).getByText("Cut", { exact: true }).click();
    await kept(page);
    await expect.poll(() => jobText(page)).toMatch(/Ridge-1a = \{ state = "cut"/);
    await page.evaluate(() =>
      localStorage.setItem("seatcut.settings", JSON.stringify({ words: "us", lengths: "feet-inches" })),
    );
    await page.reload();
    await page.getByRole("heading", { name: "Ridge-1a", level: 2 }).waitFor();
    await expect.poll(() => figure(page, "Cut length")).toMatch(/^\d+' \d+( \d+\/\d+)?"$/);
    await openCard(page, "Plate-A");
    await page.getByRole("article").getByText("Top plate").first().waitFor();
    expect(faults).toEqual([]);
    await context.close();
  });
});
