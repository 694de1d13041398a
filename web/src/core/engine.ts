// A core where it runs: in a worker, or on the page where no worker starts.

import type { SceneBuffers } from "../state/session";
import type { Refusal } from "./bindings";
import type { Ask, CallName, CoreModule, Reply } from "./messages";
import type { Core } from "./wasm/web_core.js";
import type { Side } from "./wasm/web_side.js";

export class Engine {
  #core: Core | null = null;
  #side: Side | null = null;
  #papers: Promise<typeof import("./wasm/web_papers.js")> | null = null;

  /** Answers; never throws. */
  async answer(ask: Ask): Promise<Reply> {
    try {
      switch (ask.do) {
        case "load":
          return await this.#load(ask.module);
        case "call":
          return this.#call(ask.name, ask.takes);
        case "paper":
          return await this.#paper(ask);
      }
    } catch (thrown) {
      // The core refuses by throwing the refusal as JSON; all else is a fault of its own.
      const refusal = typeof thrown === "string" ? readRefusal(thrown) : null;
      return refusal ? { is: "refusal", refusal } : { is: "broken", why: String(thrown) };
    }
  }

  async #load({ which, from }: CoreModule): Promise<Reply> {
    if (which === "core") {
      const glue = await import("./wasm/web_core.js");
      await glue.default({ module_or_path: from });
      this.#core = new glue.Core();
    } else {
      const glue = await import("./wasm/web_side.js");
      await glue.default({ module_or_path: from });
      this.#side = new glue.Side();
    }
    return { is: "loaded" };
  }

  #call(name: CallName, takes: string): Reply {
    if (this.#side) return { is: "answer", gives: this.#side.call(name, takes), buffers: null };
    if (!this.#core) return { is: "broken", why: "not loaded" };
    const gives = this.#core.call(name, takes);
    return { is: "answer", gives, buffers: this.#scene(this.#core) };
  }

  #scene(core: Core): SceneBuffers | null {
    const points = core.takeScene();
    if (!points) return null;
    const scene = {
      timbers: points.takeTimbers(),
      arrises: points.takeArrises(),
      slopes: points.takeSlopes(),
    };
    points.free();
    return scene;
  }

  async #paper(ask: Extract<Ask, { do: "paper" }>): Promise<Reply> {
    this.#papers ??= import("./wasm/web_papers.js").then(async (glue) => {
      await glue.default({ module_or_path: ask.papers });
      return glue;
    });
    let papers;
    try {
      papers = await this.#papers;
    } catch (thrown) {
      // Out of reach now, perhaps not the next time.
      this.#papers = null;
      throw thrown;
    }
    if (!this.#side) return { is: "broken", why: "not loaded" };
    const solution = this.#side.forPapers();
    const bytes = papers.paper(solution, JSON.stringify(ask.what));
    return { is: "paper", bytes: bytes as Uint8Array<ArrayBuffer> };
  }
}

function readRefusal(json: string): Refusal | null {
  try {
    const read: unknown = JSON.parse(json);
    return typeof read === "object" && read !== null && "what" in read ? (read as Refusal) : null;
  } catch {
    return null;
  }
}

/** What a reply hands over instead of copying. */
export function handedOver(reply: Reply): Transferable[] {
  if (reply.is === "paper") return [reply.bytes.buffer];
  if (reply.is !== "answer" || !reply.buffers) return [];
  const { timbers, arrises, slopes } = reply.buffers;
  return [timbers.buffer as ArrayBuffer, arrises.buffer as ArrayBuffer, slopes.buffer as ArrayBuffer];
}
