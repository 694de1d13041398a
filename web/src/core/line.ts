// How the page speaks with the core: to a worker, or on the page itself.

import { Engine } from "./engine";
import type { Ask, Posted, Reply } from "./messages";

/** A way to ask the core. Rejects when the core is gone. */
export interface Line {
  ask(body: Ask): Promise<Reply>;
  /** Stops the core, whatever it does. */
  cut(): void;
  /** False on the page itself, where a module can't be started twice. */
  readonly canStartAnew: boolean;
}

/** A line to a worker. */
export function workerLine(worker: Worker): Line {
  let next = 0;
  const waiting = new Map<number, { resolve(reply: Reply): void; reject(why: Error): void }>();
  const failAll = (why: string) => {
    for (const one of waiting.values()) one.reject(new Error(why));
    waiting.clear();
  };
  worker.addEventListener("message", (event: MessageEvent<Posted<Reply>>) => {
    waiting.get(event.data.id)?.resolve(event.data.body);
    waiting.delete(event.data.id);
  });
  worker.addEventListener("error", (event) => failAll(event.message || "the worker does not start"));
  worker.addEventListener("messageerror", () => failAll("a reply can't be read"));
  return {
    canStartAnew: true,
    ask: (body) =>
      new Promise((resolve, reject) => {
        const id = next++;
        waiting.set(id, { resolve, reject });
        worker.postMessage({ id, body } satisfies Posted<Ask>);
      }),
    cut: () => {
      worker.terminate();
      failAll("stopped");
    },
  };
}

/** The core on the page: the page waits while it works. */
export function pageLine(): Line {
  const engine = new Engine();
  return { canStartAnew: false, ask: (body) => engine.answer(body), cut: () => undefined };
}
