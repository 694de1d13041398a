// Spoilt job files through the shipped binary: it must answer, never fall over.
// usage: node bad_input.mjs SEATCUT FOLDER-OF-BAD-JOBS JOB…
// 1. Every file of the folder is refused with exit code 2, a message and nothing else.
// 2. Each JOB, spoilt in a few hundred seeded ways, ends with a code that the help lists.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const SPOILT_PER_JOB = 150;
const SECONDS_AT_MOST = 20; // for one run; a roof takes a fraction of a second
const [seatcut, bad, ...jobs] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), "seatcut-bad-"));
let faults = 0;
let runs = 0;

function run(args, input) {
  runs++;
  return spawnSync(seatcut, args, { input, timeout: SECONDS_AT_MOST * 1000, maxBuffer: 1 << 28 });
}
function expect(holds, what, result) {
  if (holds) return;
  faults++;
  console.error(`    FAULT: ${what}: exit ${result.status ?? result.signal}\n${String(result.stderr).slice(0, 600)}`);
}

// A small congruential generator: the same spoilt files on every run.
let state = 20260711;
function below(n) {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return Math.floor((state / 2 ** 32) * n);
}
const ODD_NUMBERS = ["0", "-1", "1e9", "1e308", "nan", "inf", "-0.0", "90", "0.0001", "\"\"", "\"8' 13 77/3\\\"\"", "[]", "{}", "true"];
const SPOILERS = [
  (text) => text.slice(0, below(text.length)),
  (text) => text.replace(/-?\d+(\.\d+)?/g, (number) => (below(8) === 0 ? ODD_NUMBERS[below(ODD_NUMBERS.length)] : number)),
  (text) => text.replace(/-?\d+(\.\d+)?/g, (number) => (below(6) === 0 ? String(below(20000) - 5000) : number)),
  (text) => {
    const lines = text.split("\n");
    lines.splice(below(lines.length), 1);
    return lines.join("\n");
  },
  (text) => {
    const at = below(text.length);
    return text.slice(0, at) + String.fromCodePoint(below(0xd7ff)) + text.slice(at + 1);
  },
];

try {
  const names = readdirSync(bad).filter((name) => name.endsWith(".toml"));
  if (names.length === 0) throw new Error(`no bad jobs in ${bad}`);
  for (const name of names) {
    const pdf = join(folder, "pack.pdf");
    for (const args of [["check"], ["solve", "--json"], ["pack", "-o", pdf]]) {
      const result = run([args[0], join(bad, name), ...args.slice(1)]);
      expect(result.status === 2 && result.stderr.length > 0 && result.stdout.length === 0, `${args[0]} ${name}`, result);
    }
    if (readdirSync(folder).length > 0) throw new Error(`${name} left a file behind`);
  }
  for (const job of jobs) {
    const text = readFileSync(job, "utf8");
    for (let k = 0; k < SPOILT_PER_JOB; k++) {
      const spoilt = SPOILERS[k % SPOILERS.length](text);
      const result = run(["solve", "-"], spoilt);
      if (![0, 1, 2].includes(result.status)) {
        const kept = join(tmpdir(), `seatcut-fell-over-${faults}.toml`);
        writeFileSync(kept, spoilt);
        expect(false, `spoilt ${job}, kept as ${kept}`, result);
      }
    }
  }
} finally {
  rmSync(folder, { recursive: true });
}
console.log(`    ${runs} runs, ${faults} faults`);
if (faults > 0) process.exit(1);
