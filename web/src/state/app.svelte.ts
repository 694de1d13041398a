// The app as a whole: its core, its store, the open job and the shelf, joined together once.

import { CoreClient } from "../core/core";
import * as sources from "../core/sources";
import type { Settings } from "../core/bindings";
import example from "../../../examples/boathouse.toml?raw";
import { bell, type Bell } from "../store/bell";
import type { JobRow } from "../store/rows";
import { Store, type Trouble } from "../store/store";
import { keepOnDevice } from "./service";
import { firstPlace } from "./places";
import { goInstead, route } from "./route.svelte";
import { newId } from "./ids";
import { Sync } from "../sync/sync.svelte";
import { t } from "../words";
import { OpenSession } from "./session.svelte";
import { settings } from "./settings.svelte";

/** How often work that is only in memory is offered to the store again, ms. */
const RETRY_MS = 15_000;

/** How long the first start waits for a workshop to answer, ms. */
const WORKSHOP_MS = 1_500;

/** Longest that a cutting plan or a paper may take, ms: a slow phone is not to be thought stuck over a large roof. */
const ASIDE_PATIENCE_MS = 180_000;

class App {
  readonly core = new CoreClient(sources);
  /** For what takes long or is wanted late. Its module is fetched, and its worker starts when it is first asked. */
  readonly aside = new CoreClient(sources, ASIDE_PATIENCE_MS, "side");
  readonly store = new Store(() => this.#heardTrouble());
  readonly session = new OpenSession(
    this.core,
    this.store,
    {
      kept: (job) => this.#kept(job),
      made: () => undefined,
    },
    this.aside,
  );
  readonly sync = new Sync({
    store: this.store,
    changed: async (job) => {
      await this.session.follow(job);
      await this.changed(job);
    },
    said: () => t("workshop.said"),
    deviceName: () => deviceName(),
  });
  /** The jobs, first the one last worked on; those in the bin apart. */
  shelf = $state.raw<JobRow[]>([]);
  bin = $state.raw<JobRow[]>([]);
  /** The shelf has been read. */
  ready = $state(false);
  trouble = $state<Trouble>(null);
  online = $state(navigator.onLine);
  #bell: Bell | null = null;

  async start(): Promise<void> {
    addEventListener("online", () => (this.online = true));
    addEventListener("offline", () => (this.online = false));
    this.#bell = bell(({ job }) => {
      void this.session.follow(job);
      void this.readShelf();
    });
    await this.store.open();
    const carried = sources.carriedJob();
    if (carried) await this.#openCarried(carried);
    const workshop = !sources.oneFile && (await this.#findWorkshop());
    if (!carried && !workshop) await this.#firstUse();
    await this.readShelf();
    this.ready = true;
    setInterval(() => void this.#retry(), RETRY_MS);
    void this.#askToStay();
    void keepOnDevice();
  }

  /** A page that brings a job opens it: as it was left here, if this very page was here before. */
  async #openCarried(text: string): Promise<void> {
    const key = `carried:${nameOf(text)}`;
    const known = await this.store.note<string>(key);
    const jobs = await this.store.jobs();
    let id = jobs.find((job) => job.id === known && job.binned === null)?.id;
    if (!id) {
      id = newId();
      await this.store.add({ id, title: titleOf(text), text });
      await this.store.putNote(key, id);
    }
    const first = firstPlace();
    if (route.room === "" && first) goInstead("job", id, first);
  }

  /** On the first use the example lies on the shelf. */
  async #firstUse(): Promise<void> {
    if (await this.store.note<boolean>("used")) return;
    const id = newId();
    await this.store.add({ id, title: titleOf(example), text: example });
    await this.store.putNote("example", id);
    await this.store.putNote("used", true);
  }

  /** A workshop brings its own shelf. Only the first time is it waited for, and not long. */
  async #findWorkshop(): Promise<boolean> {
    const found = this.sync.start();
    if (await this.store.note<boolean>("used")) return true;
    const late = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), WORKSHOP_MS));
    return Promise.race([found, late]);
  }

  /** Asks the browser not to clear the jobs away when the device runs short of room. */
  async #askToStay(): Promise<void> {
    try {
      await navigator.storage?.persist?.();
    } catch {
      // It can refuse; then jobs are as safe as the browser keeps them.
    }
  }

  async readShelf(): Promise<void> {
    const jobs = await this.store.jobs();
    this.shelf = jobs.filter((job) => job.binned === null);
    this.bin = jobs.filter((job) => job.binned !== null).sort((a, b) => (b.binned ?? 0) - (a.binned ?? 0));
  }

  /** Something of the shelf was changed here: shown, and told to other tabs. */
  async changed(job: string): Promise<void> {
    await this.readShelf();
    this.#bell?.ring({ job });
    this.sync.soon();
  }

  #kept(job: string): void {
    void this.changed(job);
  }

  #heardTrouble(): void {
    this.trouble = this.store.trouble;
  }

  async #retry(): Promise<void> {
    if (this.trouble && this.trouble !== "newer" && (await this.store.retry())) await this.readShelf();
  }
  retryNow(): Promise<void> {
    return this.#retry();
  }

  /** Shows everything in the lengths and words that are set. */
  settle(): void {
    settings.keep();
    const now: Settings = { lengths: settings.lengths, words: settings.words };
    void this.session.settle(now);
  }
}

/** The title as the text gives it, until the core has read it. */
function titleOf(text: string): string {
  return /^title\s*=\s*"(.*)"/m.exec(text)?.[1] ?? "";
}

/** A short name for a text (FNV-1a, 32 bits): tells pages apart on one device. `crypto.subtle` is missing in files. */
function nameOf(text: string): string {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return `${text.length}-${hash.toString(16)}`;
}

/** What this device calls itself in the workshop's history. */
function deviceName(): string {
  return /iPhone|Android|Mobile/.test(navigator.userAgent) ? "phone" : "computer";
}

export const app = new App();
