// Spoilt job files through the shipped binary: it must answer, never fall over.
// usage: node bad_input.mjs SEATCUT FOLDER-OF-BAD-JOBS JOB…
// 1. Every file of the folder is refused with exit code 2, a message and nothing else.
// 2. Each JOB, spoilt in some dozens of seeded ways, ends with a code that the help lists.

import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { join } from "node:path";

const SPOILT_PER_JOB = 50;
const SECONDS_AT_MOST = 20; // for one run; a roof with its order takes a second or two
const [seatcut, bad, ...jobs] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), "seatcut-bad-"));
let faults = 0;
let runs = 0;

/** One run: its exit code or signal, and what it wrote. */
function run(args, input) {
  runs++;
  return new Promise((done) => {
    const child = spawn(seatcut, args, { timeout: SECONDS_AT_MOST * 1000, stdio: ["pipe", "pipe", "pipe"] });
    const result = { status: null, signal: null, stdout: "", stderr: "" };
    child.stdout.on("data", (data) => (result.stdout += data));
    child.stderr.on("data", (data) => (result.stderr += data));
    // A job that is refused at once is not read to its end.
    child.stdin.on("error", () => undefined);
    child.stdin.end(input);
    child.on("error", (error) => done({ ...result, stderr: String(error) }));
    child.on("close", (status, signal) => done({ ...result, status, signal }));
  });
}

/** Does all of these, as many at once as there are processors. */
async function all(tasks) {
  const next = tasks[Symbol.iterator]();
  const worker = async () => {
    for (let task = next.next(); !task.done; task = next.next()) await task.value();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, worker));
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
  await all(
    names.map((name, k) => async () => {
      const pdf = join(folder, `pack-${k}.pdf`);
      for (const args of [["check"], ["solve", "--json"], ["pack", "-o", pdf]]) {
        const result = await run([args[0], join(bad, name), ...args.slice(1)]);
        const refused = result.status === 2 && result.stderr.length > 0 && result.stdout.length === 0;
        expect(refused, `${args[0]} ${name}`, result);
      }
    }),
  );
  if (readdirSync(folder).length > 0) throw new Error(`a refused job left a file behind: ${readdirSync(folder)}`);
  // Spoilt in turn, so that they are the same in every run; solved at once.
  const spoilt = jobs.flatMap((job) => {
    const text = readFileSync(job, "utf8");
    return Array.from({ length: SPOILT_PER_JOB }, (_, k) => ({ job, text: SPOILERS[k % SPOILERS.length](text) }));
  });
  await all(
    spoilt.map(({ job, text }) => async () => {
      const result = await run(["solve", "-"], text);
      if ([0, 1, 2].includes(result.status)) return;
      const kept = join(tmpdir(), `seatcut-fell-over-${faults}.toml`);
      writeFileSync(kept, text);
      expect(false, `spoilt ${job}, kept as ${kept}`, result);
    }),
  );
} finally {
  rmSync(folder, { recursive: true });
}
console.log(`    ${runs} runs, ${faults} faults`);
if (faults > 0) process.exit(1);
