// Draws the icons of public/icons/ from seatcut.svg: `node build/icons.mjs`. The path of a browser may be given in CHROMIUM.

import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const folder = fileURLToPath(new URL("../public/icons/", import.meta.url));
const drawing = readFileSync(`${folder}seatcut.svg`, "utf8");
/** A masked icon keeps its middle four fifths whatever the mask. */
const masked = drawing
  .replace('rx="96"', "")
  .replace('viewBox="0 0 512 512"', 'viewBox="-64 -64 640 640"')
  .replace('width="512" height="512"', 'x="-64" y="-64" width="640" height="640"');

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const page = await browser.newPage();
for (const [name, size, svg] of [
  ["seatcut-180", 180, drawing],
  ["seatcut-192", 192, drawing],
  ["seatcut-512", 512, drawing],
  ["seatcut-mask-512", 512, masked],
]) {
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<style>body{margin:0;background:transparent}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`,
  );
  await page.screenshot({ path: `${folder}${name}.png`, omitBackground: true });
}
await browser.close();
