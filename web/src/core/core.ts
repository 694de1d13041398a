// The core, typed. Starts it, asks it, and starts it anew when it breaks or hangs: the job is opened again.

import { Refused, type Paper, type SceneBuffers } from "../state/session";
import { t } from "../words";
import type { Nudge, Refusal, Settings, SideCalls } from "./bindings";
import { pageLine, workerLine, type Line } from "./line";
import type { Ask, CallName, CoreModule, ModuleSource, Reply } from "./messages";

/** What the core works with: where its modules are, how a worker is started. */
export interface Sources {
  coreSource(): Promise<ModuleSource>;
  sideSource(): Promise<ModuleSource>;
  papersSource(): Promise<ModuleSource>;
  newWorker(): Worker;
}

/** An answer, with the scene where the call makes one. */
export interface Answer<K extends CallName> {
  gives: SideCalls[K][1];
  buffers: SceneBuffers | null;
}

/** Longest that an answer may take, ms. The largest roofs take a slow phone a few seconds; past this it hangs. */
export const PATIENCE_MS = 30_000;
/** Longest that a worker may take to start, ms, before the page does its work: some browsers never say why. */
const START_PATIENCE_MS = 20_000;

/** What has to be said again to a core that is started anew. */
interface Said {
  settings: Settings | null;
  text: string | null;
}

export class CoreClient {
  #line: Promise<Line> | null = null;
  #said: Said = { settings: null, text: null };
  #nudging = false;
  #waitingNudge: {
    takes: Nudge;
    done(answer: Answer<"nudge"> | null): void;
    fail(why: unknown): void;
  } | null = null;

  constructor(
    private readonly sources: Sources,
    private readonly patience = PATIENCE_MS,
    /** The core of the roof, or the one at its side. */
    private readonly which: CoreModule["which"] = "core",
  ) {}

  /** Starts the core, so that it is ready when it is asked. */
  async start(): Promise<void> {
    await this.#ready();
  }

  /** Asks the core. Rejects with a `Refused`. */
  async call<K extends CallName>(name: K, takes: SideCalls[K][0]): Promise<Answer<K>> {
    const line = await this.#ready();
    const reply = await this.#ask(line, { do: "call", name, takes: JSON.stringify(takes) });
    if (reply.is !== "answer") throw new Refused(brokenRefusal());
    const gives = JSON.parse(reply.gives) as SideCalls[K][1];
    this.#remember(name, takes, gives);
    return { gives, buffers: reply.buffers };
  }

  /** Shows the roof as it would be. Of several in flight only the newest is solved; the others give null. */
  nudge(takes: Nudge): Promise<Answer<"nudge"> | null> {
    return new Promise((done, fail) => {
      this.#waitingNudge?.done(null);
      this.#waitingNudge = { takes, done, fail };
      if (!this.#nudging) void this.#nudgeNext();
    });
  }

  async #nudgeNext(): Promise<void> {
    this.#nudging = true;
    while (this.#waitingNudge) {
      const { takes, done, fail } = this.#waitingNudge;
      this.#waitingNudge = null;
      await this.call("nudge", takes).then(done, fail);
    }
    this.#nudging = false;
  }

  /** A paper of the open job, of the core at the side. Rejects with a `Refused`. */
  async paper(what: Paper): Promise<Uint8Array<ArrayBuffer>> {
    const line = await this.#ready();
    const papers = await this.sources.papersSource();
    const reply = await this.#ask(line, { do: "paper", papers, what });
    if (reply.is !== "paper") throw new Refused(brokenRefusal());
    return reply.bytes;
  }

  #remember<K extends CallName>(name: K, takes: SideCalls[K][0], gives: SideCalls[K][1]): void {
    if (name === "settle") this.#said.settings = takes as Settings;
    if (name === "open" || name === "edit") this.#said.text = (gives as SideCalls["open"][1]).text;
  }

  #ready(): Promise<Line> {
    this.#line ??= this.#begin().catch((thrown: unknown) => {
      this.#line = null;
      throw thrown instanceof Refused ? thrown : new Refused(noStartRefusal(String(thrown)));
    });
    return this.#line;
  }

  async #begin(): Promise<Line> {
    const from = await (this.which === "core" ? this.sources.coreSource() : this.sources.sideSource());
    const module: CoreModule = { which: this.which, from };
    const line = (await this.#inWorker(module)) ?? (await this.#onPage(module));
    // A core that is started anew is told again what it knew.
    const { settings, text } = this.#said;
    if (settings) await this.#ask(line, { do: "call", name: "settle", takes: JSON.stringify(settings) });
    if (text !== null) {
      // If this very text breaks the core, the next start must not run into it again.
      this.#said.text = null;
      await this.#ask(line, { do: "call", name: "open", takes: JSON.stringify({ text }) });
      this.#said.text = text;
    }
    return line;
  }

  async #inWorker(module: CoreModule): Promise<Line | null> {
    let line: Line | null = null;
    try {
      line = workerLine(this.sources.newWorker());
      const reply = await withPatience(line.ask({ do: "load", module }), START_PATIENCE_MS);
      if (reply.is === "loaded") return line;
    } catch {
      // No worker here: a page opened from a file, in some browsers.
    }
    line?.cut();
    return null;
  }

  async #onPage(module: CoreModule): Promise<Line> {
    const line = pageLine();
    const reply = await line.ask({ do: "load", module });
    if (reply.is !== "loaded") throw new Error(reply.is === "broken" ? reply.why : reply.is);
    return line;
  }

  /** Asks, and lets go of a core that breaks or hangs. */
  async #ask(line: Line, ask: Ask): Promise<Reply> {
    let reply: Reply;
    try {
      reply = await withPatience(line.ask(ask), this.patience);
    } catch {
      reply = { is: "broken", why: "no answer" };
    }
    if (reply.is === "refusal") throw new Refused(reply.refusal);
    if (reply.is === "broken") {
      // Papers are another module: the roof's own goes on when they can't be had.
      if (ask.do === "paper" && !line.canStartAnew) throw new Refused(paperRefusal());
      line.cut();
      if (line.canStartAnew) this.#line = null;
      throw new Refused(ask.do === "paper" ? paperRefusal() : brokenRefusal());
    }
    return reply;
  }
}

function withPatience<T>(promise: Promise<T>, ms: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error("no answer")), ms);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

const brokenRefusal = (): Refusal => ({
  code: "core-stopped",
  what: t("core.stopped"),
  remedy: t("core.stopped_remedy"),
  faults: [],
});
const paperRefusal = (): Refusal => ({
  code: "no-paper",
  what: t("core.no_paper"),
  remedy: t("core.no_paper_remedy"),
  faults: [],
});
const noStartRefusal = (why: string): Refusal => ({
  code: "core-not-started",
  what: t("core.not_started", { why }),
  remedy: t("core.not_started_remedy"),
  faults: [],
});
