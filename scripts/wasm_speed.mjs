// How much slower the core is in WebAssembly than natively, for opening a job and for a nudge of its pitch.
// usage: node wasm_speed.mjs SPEED JOB…
// SPEED is the built example `speed` of crates/app; web/src/core/wasm is as scripts/wasm_web.sh makes it.
// Fails when WebAssembly is slower than MOST times native.

import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";

const MOST = 2.5;
/** As in the example. */
const ROUNDS = 30;

const [speed, ...jobs] = process.argv.slice(2);
const folder = new URL("../web/src/core/wasm/", import.meta.url);
const glue = await import(new URL("web_core.js", folder).href);
await glue.default({ module_or_path: readFileSync(new URL("web_core_bg.wasm", folder)) });

function least(task) {
  let least = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    task(round);
    least = Math.min(least, performance.now() - start);
  }
  return least;
}

const natively = execFileSync(speed, jobs, { encoding: "utf8" }).trim().split("\n").map((line) => JSON.parse(line));
let slow = 0;
for (const native of natively) {
  const text = readFileSync(native.job, "utf8");
  const pitch = Number(/^pitch = ([\d.]+)/m.exec(text)?.[1]);
  const core = new glue.Core();
  const open = JSON.stringify({ text });
  const wasm = {
    open: least(() => core.call("open", open)),
    nudge: least((round) => {
      core.call("nudge", JSON.stringify({ do: "pitch", wall: null, pitch_deg: pitch + round / 100 }));
      core.takeScene()?.free();
    }),
  };
  for (const what of ["open", "nudge"]) {
    const times = wasm[what] / native[what];
    if (times > MOST) slow++;
    console.log(`    ${native.job}: ${what} ${native[what].toFixed(2)} ms native, ${wasm[what].toFixed(2)} ms wasm, ${times.toFixed(2)} times`);
  }
}
if (slow > 0) {
  console.error(`    FAULT: more than ${MOST} times as slow as native`);
  process.exit(1);
}
