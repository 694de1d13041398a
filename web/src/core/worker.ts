// The worker that holds the core, so that the page never waits for a roof.

import { Engine, handedOver } from "./engine";
import type { Ask, Posted } from "./messages";

const engine = new Engine();
// One after the other: a paper that is fetched must not be overtaken by what was asked after it.
let last: Promise<unknown> = Promise.resolve();

addEventListener("message", (event: MessageEvent<Posted<Ask>>) => {
  const { id, body } = event.data;
  last = last.then(async () => {
    const reply = await engine.answer(body);
    postMessage({ id, body: reply }, { transfer: handedOver(reply) });
  });
});
