// The same job must give the same bytes natively and in WebAssembly.
// usage: node same_bytes.mjs SEATCUT WASM JOB…
// Runs the shipped binary and crates/wasm-check over each job and compares solution, sheets, list and spreadsheet.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";

const [seatcut, wasmFile, ...jobs] = process.argv.slice(2);
if (jobs.length === 0) {
  console.error("    FAULT: no jobs to compare");
  process.exit(1);
}

const module = await WebAssembly.compile(readFileSync(wasmFile));
const imports = WebAssembly.Module.imports(module);
if (imports.length > 0) {
  console.error("    FAULT: the pure crates ask something of their host:", imports);
  process.exit(1);
}

// Document numbers of crates/wasm-check.
const DOCUMENTS = ["solution", "sheets", "list", "spreadsheet"];

async function inWasm(job) {
  const { exports: desk } = await WebAssembly.instantiate(module, {});
  for (const byte of readFileSync(job)) desk.seatcut_put(byte);
  return DOCUMENTS.map((name, number) => {
    const made = desk.seatcut_make(number) === 1;
    const bytes = Buffer.alloc(desk.seatcut_length());
    for (let at = 0; at < bytes.length; at++) bytes[at] = desk.seatcut_get(at);
    if (!made) throw new Error(`${job}: WebAssembly makes no ${name}: ${bytes}`);
    return bytes;
  });
}

const folder = mkdtempSync(join(tmpdir(), "seatcut-same-"));
function natively(job) {
  const pdf = join(folder, "pack.pdf");
  const csv = join(folder, "members.csv");
  const run = (...args) => execFileSync(seatcut, args, { maxBuffer: 1 << 30, stdio: ["ignore", "pipe", "inherit"] });
  const json = run("solve", job, "--json");
  const sheet = join(folder, "order.xlsx");
  run("pack", job, "-o", pdf, "--csv", csv);
  run("order", job, "--sheet", sheet);
  return [json, readFileSync(pdf), readFileSync(csv), readFileSync(sheet)];
}

let differing = 0;
try {
  for (const job of jobs) {
    let native, wasm;
    try {
      native = natively(job);
      wasm = await inWasm(job);
    } catch (error) {
      differing++;
      console.error(`    FAULT: ${job}: ${error.message}`);
      continue;
    }
    DOCUMENTS.forEach((name, k) => {
      if (native[k].length > 0 && native[k].equals(wasm[k])) return;
      differing++;
      const at = native[k].findIndex((byte, i) => byte !== wasm[k][i]);
      const around = (bytes) => JSON.stringify(bytes.subarray(Math.max(0, at - 40), at + 40).toString("latin1"));
      console.error(`    FAULT: ${job}: ${name} differs at byte ${at} of ${native[k].length} and ${wasm[k].length}`);
      console.error(`      native ${around(native[k])}\n      wasm   ${around(wasm[k])}`);
    });
    const sizes = DOCUMENTS.map((name, k) => `${name} ${native[k].length}`).join(", ");
    console.log(`    ${basename(job)}: ${sizes} bytes`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
if (differing > 0) process.exit(1);
