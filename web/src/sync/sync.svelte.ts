// Sends what is kept here to the workshop and fetches what other devices kept, in the background. The app never
// waits for it: what is to be sent follows from the store alone, so it survives reloads.

import { MovedOn } from "../store/history";
import type { JobRow } from "../store/rows";
import type { Store } from "../store/store";
import { newId } from "../state/ids";
import * as workshop from "./workshop";
import { Denied, Unreached, type Clashing } from "./workshop";

/** What is known of a job in the workshop. */
export interface Link {
  /** The revision that our version `n` grew from, or is. */
  revision: number;
  /** Our version that the workshop has. */
  n: number;
  /** A save under way: the same may be sent again when its answer was lost. */
  save?: { id: string; n: number; base: number };
  /** What was changed on both sides, until the user chose. */
  clash?: Clashing & { n: number };
  /** It was taken off the workshop's shelf. */
  gone?: boolean;
}

/** How long after an edit it is sent, ms: several in a row go together. */
const SEND_AFTER_MS = 400;
/** How often the workshop is asked for what is new, ms. */
const ASK_EVERY_MS = 15_000;

/** What the sync needs of the app. */
export interface Around {
  store: Store;
  /** A job has another version now, or came, or went. */
  changed(job: string): Promise<void>;
  /** Words for the version that comes from the workshop. */
  said(): string;
  deviceName(): string;
}

export class Sync {
  /** The workshop's name; null where none ever answered. */
  name = $state<string | null>(null);
  /** It answered the last time. */
  inReach = $state(false);
  needsPairing = $state(false);
  /** Jobs that are not sent yet. */
  waiting = $state(0);
  /** Jobs in which both sides changed the same figure. */
  clashing = $state.raw<string[]>([]);
  #around: Around;
  #running: Promise<void> | null = null;
  #again = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(around: Around) {
    this.#around = around;
  }

  /** Looks for a workshop. True when one answers, or was known before. */
  async start(): Promise<boolean> {
    this.name = (await this.#around.store.note<string>("workshop")) ?? null;
    try {
      await this.#greet();
    } catch (thrown) {
      if (!(thrown instanceof Unreached || thrown instanceof Denied)) throw thrown;
    }
    if (this.name === null) return false;
    addEventListener("online", () => this.soon());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "visible") this.soon();
    });
    setInterval(() => {
      if (document.visibilityState === "visible") this.soon();
    }, ASK_EVERY_MS);
    this.soon();
    return true;
  }

  async #greet(): Promise<void> {
    const said = await workshop.hello();
    if (typeof said.name !== "string") throw new Unreached("not a workshop");
    this.inReach = true;
    this.needsPairing = said.needs_pairing && !said.paired;
    if (said.name !== this.name) {
      this.name = said.name;
      await this.#around.store.putNote("workshop", said.name);
    }
  }

  /** Pairs this device by the code that the workshop shows. Rejects with `Denied` or `Unreached`. */
  async pair(code: string): Promise<void> {
    await workshop.pair(code, this.#around.deviceName());
    this.needsPairing = false;
    this.soon();
  }

  /** Sends and fetches a little later. */
  soon(): void {
    if (this.name === null) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.now(), SEND_AFTER_MS);
  }

  /** Sends and fetches now. What is asked for while it runs is done after it. */
  now(): Promise<void> {
    if (this.#running) {
      this.#again = true;
      return this.#running;
    }
    this.#running = this.#round().finally(() => {
      this.#running = null;
      if (this.#again) {
        this.#again = false;
        this.soon();
      }
    });
    return this.#running;
  }

  async #round(): Promise<void> {
    try {
      await this.#greet();
      if (!this.needsPairing) {
        await this.#fetch();
        await this.#send();
      }
    } catch (thrown) {
      if (thrown instanceof Unreached) this.inReach = false;
      else if (thrown instanceof Denied) this.needsPairing ||= thrown.status === 401;
      else throw thrown;
    }
    await this.#count();
  }

  link(id: string): Promise<Link | undefined> {
    return this.#around.store.note<Link>(`sync:${id}`);
  }
  #keepLink(id: string, link: Link): Promise<void> {
    return this.#around.store.putNote(`sync:${id}`, link);
  }

  /** Brings what other devices kept. */
  async #fetch(): Promise<void> {
    const { store } = this.#around;
    const { jobs, gone } = await workshop.list();
    const rows = new Map((await store.jobs()).map((row) => [row.id, row]));
    for (const job of jobs) {
      const row = rows.get(job.id);
      const link = await this.link(job.id);
      if (row && link && (link.revision >= job.revision || link.n !== row.cursor || link.clash)) continue;
      // A job that is here and was never sent is merged when it is sent.
      if (row && !link) continue;
      const { revision, text } = await workshop.read(job.id);
      await this.#takeIn(job.id, row, text, job.title, revision);
    }
    for (const job of gone) {
      const [row, link] = [rows.get(job.id), await this.link(job.id)];
      if (!row || !link || link.gone || row.binned !== null || link.n !== row.cursor) continue;
      await store.bin(job.id);
      await this.#keepLink(job.id, { ...link, revision: job.revision, gone: true });
      await this.#around.changed(job.id);
    }
  }

  /** Puts the workshop's text over our version `row.cursor`, or a new job on the shelf. */
  async #takeIn(
    id: string,
    row: JobRow | undefined,
    text: string,
    title: string,
    revision: number,
  ): Promise<boolean> {
    const { store } = this.#around;
    try {
      const next = { text, said: this.#around.said(), title, glance: null };
      const open = row ? await store.put(id, row.cursor, next) : await store.add({ id, title, text });
      await this.#keepLink(id, { revision, n: open.version.n });
    } catch (thrown) {
      // It was edited meanwhile: sent and merged the next time.
      if (thrown instanceof MovedOn) return false;
      throw thrown;
    }
    await this.#around.changed(id);
    return true;
  }

  async #toSend(): Promise<[JobRow, Link | undefined][]> {
    const example = await this.#around.store.note<string>("example");
    const found: [JobRow, Link | undefined][] = [];
    for (const row of await this.#around.store.jobs()) {
      const link = await this.link(row.id);
      const untouched = row.id === example && row.newest === 1;
      const toTakeOff = row.binned !== null && link !== undefined && !link.gone;
      const toKeep = row.binned === null && !untouched && !link?.clash && link?.n !== row.cursor;
      if (toTakeOff || toKeep) found.push([row, link]);
    }
    return found;
  }

  async #count(): Promise<void> {
    this.waiting = (await this.#toSend()).length;
    const clashing: string[] = [];
    for (const row of await this.#around.store.jobs()) {
      if (row.binned === null && (await this.link(row.id))?.clash) clashing.push(row.id);
    }
    this.clashing = clashing;
  }

  /** Sends what was kept here. */
  async #send(): Promise<void> {
    for (const [row, link] of await this.#toSend()) {
      if (row.binned !== null && link) await this.#sendBinned(row, link);
      else await this.#sendJob(row, link);
    }
  }

  async #sendBinned(row: JobRow, link: Link): Promise<void> {
    if (await workshop.takeOff(row.id, link.revision, this.#around.deviceName())) {
      await this.#keepLink(row.id, { ...link, gone: true });
      return;
    }
    // Someone went on with it: it comes back, with what they did.
    await this.#around.store.unbin(row.id);
    await this.#around.changed(row.id);
  }

  async #sendJob(row: JobRow, link: Link | undefined): Promise<void> {
    const { store } = this.#around;
    const { version } = await store.read(row.id);
    const base = link?.revision ?? 0;
    const again = link?.save?.n === version.n && link.save.base === base ? link.save : null;
    const save = again ?? { id: newId(), n: version.n, base };
    // Kept before it is sent, so that a lost answer is asked for again and not made twice.
    await this.#keepLink(row.id, { revision: base, n: link?.n ?? 0, save });
    const sent = { base, text: version.text, device: this.#around.deviceName(), save: save.id };
    const answer = await workshop.save(row.id, sent);
    if (answer.is === "clash") {
      const { revision, theirs, merged, clashes } = answer;
      await this.#keepLink(row.id, {
        revision: base,
        n: link?.n ?? 0,
        clash: { revision, theirs, merged, clashes, n: version.n },
      });
    } else if (answer.is === "gone") {
      // Nothing new in it: off the shelf here too, unless it was put back here by hand.
      if (!link?.gone) await store.bin(row.id);
      await this.#keepLink(row.id, { revision: answer.revision, n: version.n, gone: true });
      await this.#around.changed(row.id);
    } else if (answer.text === version.text) {
      await this.#keepLink(row.id, { revision: answer.revision, n: version.n });
    } else {
      await this.#takeIn(row.id, { ...row, cursor: version.n }, answer.text, row.title, answer.revision);
    }
  }

  /** The user chose between two sides: the text that is the job's version `n` now is sent over theirs. */
  async chosen(id: string): Promise<void> {
    const link = await this.link(id);
    if (!link?.clash) return;
    await this.#keepLink(id, { revision: link.clash.revision, n: 0 });
    await this.#count();
    this.soon();
  }
}
