// The same job must give the same figures and the same bytes natively and in the browser's modules.
// usage: node same_bytes.mjs SEATCUT JOB…
// Runs the shipped binary over each job, and beside it the modules of the app (web/src/core/wasm, as scripts/wasm_web.sh
// makes them). Compares every value of the solved job, and every byte of sheets, list, spreadsheet and labels.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";

/** What the modules may ask of their host: what the bindings are made of, and errors. No files, clock or randomness. */
const MAY_ASK = /^__wbindgen_|throw|error/i;

const [seatcut, ...jobs] = process.argv.slice(2);
if (jobs.length === 0) {
  console.error("    FAULT: no jobs to compare");
  process.exit(1);
}

const modules = new URL("../web/src/core/wasm/", import.meta.url);
async function loaded(name) {
  const bytes = readFileSync(new URL(`${name}_bg.wasm`, modules));
  const asked = WebAssembly.Module.imports(await WebAssembly.compile(bytes)).map((one) => one.name);
  const strange = asked.filter((one) => !MAY_ASK.test(one));
  if (strange.length > 0) {
    console.error(`    FAULT: ${name} asks of its host:`, strange);
    process.exit(1);
  }
  const glue = await import(new URL(`${name}.js`, modules).href);
  await glue.default({ module_or_path: bytes });
  return glue;
}
const { Side } = await loaded("web_side");
const { paper } = await loaded("web_papers");

/** The papers, with what the native command writes them with. */
const PAPERS = [
  { paper: "pack", file: "pack.pdf", args: (job, file) => ["pack", job, "-o", file] },
  { paper: "list", file: "members.csv", args: (job, file) => ["pack", job, "-o", `${file}.pdf`, "--csv", file] },
  { paper: "spreadsheet", file: "order.xlsx", args: (job, file) => ["order", job, "--sheet", file] },
  { paper: "labels", file: "labels.pdf", args: (job, file) => ["order", job, "--labels", file] },
];

function inWasm(job) {
  const side = new Side();
  try {
    side.call("open", JSON.stringify({ text: readFileSync(job, "utf8") }));
    const document = side.forPapers();
    const papers = PAPERS.map((one) => Buffer.from(paper(document, JSON.stringify({ paper: one.paper }))));
    return { document: JSON.parse(document), papers };
  } finally {
    side.free();
  }
}

const folder = mkdtempSync(join(tmpdir(), "seatcut-same-"));
function natively(job) {
  const run = (args) => execFileSync(seatcut, args, { maxBuffer: 1 << 30, stdio: ["ignore", "pipe", "inherit"] });
  const papers = PAPERS.map(({ file, args }) => {
    const path = join(folder, file);
    run(args(job, path));
    return readFileSync(path);
  });
  const { strength, order, site, ...solution } = JSON.parse(run(["solve", job, "--json"]));
  return { document: { solution, strength, order, site }, papers };
}

/** Where two values differ first, or null. A number is its bits: 0 is not -0. */
function difference(one, other, path) {
  const plain = (value) => value === null || typeof value !== "object";
  if (plain(one) || plain(other)) {
    return Object.is(one ?? null, other ?? null) ? null : `${path}: ${JSON.stringify(one)}, ${JSON.stringify(other)}`;
  }
  for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const found = difference(one[key], other[key], `${path}.${key}`);
    if (found) return found;
  }
  return null;
}

let differing = 0;
const fault = (what) => {
  differing += 1;
  console.error(`    FAULT: ${what}`);
};
try {
  for (const job of jobs) {
    let native, wasm;
    try {
      native = natively(job);
      wasm = inWasm(job);
    } catch (error) {
      fault(`${job}: ${error.message ?? error}`);
      continue;
    }
    // The working of the strength goes with the papers only.
    const strength = wasm.document.strength?.strength;
    const found = difference(native.document, { ...wasm.document, strength }, "");
    if (found) fault(`${job}: natively and in WebAssembly, ${found}`);
    PAPERS.forEach(({ paper }, k) => {
      const [here, there] = [native.papers[k], wasm.papers[k]];
      if (here.length > 0 && here.equals(there)) return;
      const at = here.findIndex((byte, i) => byte !== there[i]);
      const around = (bytes) => JSON.stringify(bytes.subarray(Math.max(0, at - 40), at + 40).toString("latin1"));
      fault(`${job}: ${paper} differs at byte ${at} of ${here.length} and ${there.length}`);
      console.error(`      native ${around(here)}\n      wasm   ${around(there)}`);
    });
    const sizes = PAPERS.map(({ paper }, k) => `${paper} ${native.papers[k].length}`).join(", ");
    console.log(`    ${basename(job)}: ${sizes} bytes`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
if (differing > 0) process.exit(1);
