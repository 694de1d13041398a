// What the app fetches before it works, weighed as it is sent.
// usage: node first_load.mjs DIST
// Fails when it is more than the limit, with the heavier of the two packings that servers send.

import { readFileSync, readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

/** What a phone should have to fetch before the app works, bytes: a few seconds on a poor signal. */
const MOST = 1.5 * 1024 * 1024;
/** Fetched when they are wanted, or in idle time after the first load. */
const LATER = [/(^|\/)one-file\.html$/, /web_(side|papers)/, /\.map$/];
/** Good enough to judge by, and quick. */
const BROTLI_QUALITY = 9;

const dist = process.argv[2];
const files = (folder) =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? files(path) : [path];
  });

let total = { plain: 0, gzip: 0, brotli: 0 };
for (const path of files(dist).sort()) {
  const name = relative(dist, path);
  if (LATER.some((later) => later.test(name))) continue;
  const bytes = readFileSync(path);
  const sizes = {
    plain: bytes.length,
    gzip: gzipSync(bytes, { level: 9 }).length,
    brotli: brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } }).length,
  };
  for (const how of Object.keys(total)) total[how] += sizes[how];
  if (sizes.plain > 100_000) console.log(`    ${name}: ${sizes.plain}, gzip ${sizes.gzip}, brotli ${sizes.brotli}`);
}
console.log(`    first load: ${total.plain} bytes, gzip ${total.gzip}, brotli ${total.brotli}, at most ${MOST}`);
if (Math.max(total.gzip, total.brotli) > MOST) {
  console.error("    FAULT: the first load is too heavy for a phone on a poor signal");
  process.exit(1);
}
