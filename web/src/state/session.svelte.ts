// The open job: what places show, and how it is changed, undone and kept.

import { untrack } from "svelte";
import type { Calls, Edit, Nudge, Refusal, Settings, SideCalls, Sketch, Standing } from "../core/bindings";
import type { CoreClient } from "../core/core";
import { MovedOn, NoSuchJob, type Next, type OpenJob } from "../store/history";
import type { Glance } from "../store/rows";
import type { Store } from "../store/store";
import { t } from "../words";
import { Refused, type Paper, type SceneBuffers, type Session } from "./session";
import { newId } from "./ids";
import type { Clashing } from "../sync/workshop";

/** How often an edit is made again on what another tab kept, before it is given back as refused. */
const MOST_TRIES = 5;
/** The draft of a plan that belongs to no job yet. */
const NO_JOB = "new";

/** What the session tells the rest of the app. */
export interface Told {
  /** A version was kept: other tabs and the workshop want to know. */
  kept(job: string): void;
  /** A new job was made here. */
  made(job: string): void;
}

export class OpenSession implements Session {
  #open = $state.raw<OpenJob | null>(null);
  #standing = $state.raw<Standing | null>(null);
  #buffers = $state.raw<SceneBuffers | null>(null);
  #nudged = $state.raw<Standing | null>(null);
  #refusal = $state.raw<Refusal | null>(null);
  #busy = $state(0);
  /** The scene of the job as it is, while a nudged one is shown. */
  #settled: SceneBuffers | null = null;
  /** Rises when a finger lets go, so that a late nudge is not shown. */
  #grip = 0;
  /** Changes go one after the other. */
  #last: Promise<unknown> = Promise.resolve();
  #settings: Settings = { lengths: "as-job", words: "uk" };
  /** What the core aside was told last, and the last thing that it was asked. */
  #aside: { text: string | null; settings: Settings | null } = { text: null, settings: null };
  #lastAside: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly core: CoreClient,
    private readonly store: Store,
    private readonly told: Told,
    private readonly aside: CoreClient = core,
  ) {}

  get jobId(): string | null {
    return this.#open?.row.id ?? null;
  }
  get standing(): Standing | null {
    return this.#standing;
  }
  get buffers(): SceneBuffers | null {
    return this.#buffers;
  }
  get nudged(): Standing | null {
    return this.#nudged;
  }
  get refusal(): Refusal | null {
    return this.#refusal;
  }
  get undoable(): string | null {
    return this.#open?.undoable ?? null;
  }
  get redoable(): string | null {
    return this.#open?.redoable ?? null;
  }
  /** A change is being made or kept. */
  get busy(): boolean {
    return this.#busy > 0;
  }
  /** The text of the open job, even when the core refuses it. */
  get text(): string | null {
    return this.#open?.version.text ?? null;
  }

  putAway(): void {
    this.#refusal = null;
  }
  /** Shows why something was not done. */
  refuse(refusal: Refusal): void {
    this.#refusal = refusal;
  }

  /** Opens a job of the store. */
  openJob(id: string): Promise<boolean> {
    return this.#inTurn(async () => {
      this.#refusal = null;
      if (id !== this.jobId) this.#clear();
      try {
        await this.#show(await this.store.read(id));
        return true;
      } catch (thrown) {
        this.#caught(thrown);
        return false;
      }
    });
  }

  closeJob(): Promise<void> {
    return this.#inTurn(async () => this.#clear());
  }

  #clear(): void {
    this.#open = null;
    this.#standing = null;
    this.#buffers = null;
    this.#settled = null;
    this.#nudged = null;
    this.#grip += 1;
  }

  /** Another tab, or the workshop, kept a version of a job: if it is ours, we follow. */
  follow(job: string): Promise<void> {
    return this.#inTurn(async () => {
      if (job !== this.jobId) return;
      try {
        const now = await this.store.read(job);
        if (now.version.n === this.#open?.version.n) this.#open = now;
        else await this.#show(now);
      } catch (thrown) {
        this.#caught(thrown);
      }
    });
  }

  settle(settings: Settings): Promise<void> {
    this.#settings = settings;
    return this.#inTurn(async () => {
      try {
        const answer = await this.core.call("settle", settings);
        if (answer.gives && this.#standing) this.#stand({ gives: answer.gives, buffers: answer.buffers });
      } catch (thrown) {
        this.#caught(thrown);
      }
    });
  }

  edit(edit: Edit): Promise<boolean> {
    return this.#inTurn(async () => {
      this.#refusal = null;
      try {
        for (let tries = 0; this.#open && tries < MOST_TRIES; tries += 1) {
          const answer = await this.core.call("edit", edit);
          if (answer.gives.said === "" && answer.gives.text === this.#open.version.text) return true;
          // Shown at once; done only when it is kept.
          this.#stand(answer);
          if (await this.#keep(answer.gives)) return true;
          // Another tab was quicker: the same edit again, on what it left.
          await this.#show(await this.store.read(this.#open.row.id));
        }
      } catch (thrown) {
        this.#caught(thrown);
      }
      return false;
    });
  }

  /** Puts a whole text in place of the open job's: a file mended by hand, a plan measured anew, a merge. */
  replace(text: string, said: string): Promise<boolean> {
    return this.#inTurn(async () => {
      const open = this.#open;
      if (!open) return false;
      try {
        const answer = await this.core.call("open", { text });
        readable(answer.gives);
        const next = {
          text: answer.gives.text,
          said,
          title: answer.gives.title,
          glance: glanceOf(answer.gives),
        };
        this.#open = await this.#putOver(open, next);
        this.#stand(answer);
        this.told.kept(open.row.id);
        return true;
      } catch (thrown) {
        await this.core.call("open", { text: open.version.text }).catch(() => undefined);
        this.#caught(thrown);
        return false;
      }
    });
  }

  /** A text that replaces all of a job goes over whatever another tab left; that stays to be undone to. */
  async #putOver(open: OpenJob, next: Next): Promise<OpenJob> {
    for (let from = open.version.n, tries = 0; ; tries += 1) {
      try {
        return await this.store.put(open.row.id, from, next);
      } catch (thrown) {
        if (!(thrown instanceof MovedOn) || tries >= MOST_TRIES) throw thrown;
        from = (await this.store.read(open.row.id)).version.n;
      }
    }
  }

  async take(text: string, said: string): Promise<boolean> {
    if (this.jobId) return this.replace(text, said);
    return (await this.create(text)) !== null;
  }

  /** Puts a new job on the shelf, if its text can be read. Gives its id. */
  create(text: string): Promise<string | null> {
    return this.#inTurn(async () => {
      this.#refusal = null;
      try {
        const answer = await this.core.call("open", { text });
        readable(answer.gives);
        const made = await this.store.add({
          id: newId(),
          title: answer.gives.title,
          text: answer.gives.text,
        });
        this.#clear();
        this.#open = made;
        this.#stand(answer);
        await this.#noteGlance(answer.gives);
        this.told.kept(made.row.id);
        this.told.made(made.row.id);
        return made.row.id;
      } catch (thrown) {
        const open = this.#open;
        if (open) await this.core.call("open", { text: open.version.text }).catch(() => undefined);
        this.#caught(thrown);
        return null;
      }
    });
  }

  /** Makes one text of two sides: theirs merged with ours, and of each clash the side that was chosen. */
  async settleClash(clash: Clashing, mine: boolean[]): Promise<boolean> {
    const ours = this.text;
    if (ours === null) return false;
    const said = t("clash.said");
    const whole = clash.clashes.some((one, k) => one.path === "" && mine[k]);
    if (whole || (clash.merged === null && mine.every(Boolean))) return this.replace(ours, said);
    const text = await this.#inTurn(async () => {
      try {
        let now = (await this.core.call("open", { text: clash.merged ?? clash.theirs })).gives.text;
        for (const [k, { path, ours: value }] of clash.clashes.entries()) {
          if (!mine[k]) continue;
          const edit: Edit = value === null ? { do: "remove", path } : { do: "set", path, value };
          now = (await this.core.call("edit", edit)).gives.text;
        }
        return now;
      } catch (thrown) {
        await this.core.call("open", { text: ours }).catch(() => undefined);
        this.#caught(thrown);
        return null;
      }
    });
    return text !== null && this.replace(text, said);
  }

  undo(): Promise<void> {
    return this.#step("back");
  }
  redo(): Promise<void> {
    return this.#step("forward");
  }
  #step(way: "back" | "forward"): Promise<void> {
    return this.#inTurn(async () => {
      const open = this.#open;
      if (!open) return;
      this.#refusal = null;
      try {
        await this.#show(await this.store.step(open.row.id, open.version.n, way));
        this.told.kept(open.row.id);
      } catch (thrown) {
        if (thrown instanceof MovedOn) await this.#show(await this.store.read(open.row.id));
        else this.#caught(thrown);
      }
    });
  }

  async nudge(nudge: Nudge): Promise<void> {
    const grip = this.#grip;
    try {
      const answer = await this.core.nudge(nudge);
      if (!answer || grip !== this.#grip || !this.#standing) return;
      this.#settled ??= this.#buffers;
      this.#nudged = answer.gives;
      if (answer.buffers) this.#buffers = answer.buffers;
    } catch (thrown) {
      if (grip === this.#grip) this.#caught(thrown);
    }
  }
  letGo(): void {
    this.#grip += 1;
    this.#nudged = null;
    if (this.#settled) this.#buffers = this.#settled;
    this.#settled = null;
  }

  async ask<K extends keyof Calls>(name: K, takes: Calls[K][0]): Promise<Calls[K][1]> {
    return (await this.core.call(name, takes)).gives;
  }
  askAside<K extends keyof SideCalls>(name: K, takes: SideCalls[K][0]): Promise<SideCalls[K][1]> {
    return this.#atTheSide(async (aside) => (await aside.call(name, takes)).gives);
  }
  /** One after the other, each with the open job as it is when its turn comes. */
  #atTheSide<T>(ask: (aside: CoreClient) => Promise<T>): Promise<T> {
    const answer = this.#lastAside.then(async () => {
      if (this.aside !== this.core) await this.#tellAside();
      return ask(this.aside);
    });
    this.#lastAside = answer.catch(() => undefined);
    return answer;
  }
  /** Puts the open job before the core aside, as it is now. */
  async #tellAside(): Promise<void> {
    const [text, settings] = [this.#standing?.text ?? this.text, this.#settings];
    if (this.#aside.settings !== settings) {
      await this.aside.call("settle", settings);
      this.#aside.settings = settings;
    }
    if (text === null || text === this.#aside.text) return;
    this.#aside.text = null;
    await this.aside.call("open", { text });
    this.#aside.text = text;
  }

  async paper(what: Paper): Promise<Uint8Array<ArrayBuffer>> {
    const text = this.#standing?.text ?? this.text;
    if (text === null) throw new Refused(plain("no-job", t("session.no_job"), t("session.no_job_remedy")));
    return this.#atTheSide((aside) => aside.paper(what));
  }

  async draft(): Promise<Sketch | null> {
    return (await this.store.note<Sketch>(`draft:${this.jobId ?? NO_JOB}`)) ?? null;
  }
  keepDraft(sketch: Sketch | null): Promise<void> {
    // A copy: what is kept must not change under a place that goes on drawing.
    const copy = sketch === null ? undefined : (JSON.parse(JSON.stringify(sketch)) as Sketch);
    return this.store.putNote(`draft:${this.jobId ?? NO_JOB}`, copy);
  }

  /** Shows a version of the store. A text that the core refuses stays open, with what is wrong. */
  async #show(open: OpenJob): Promise<void> {
    this.#open = open;
    try {
      this.#stand(await this.core.call("open", { text: open.version.text }));
      const { standing } = this;
      if (standing) await this.#noteGlance(standing);
    } catch (thrown) {
      this.#standing = null;
      this.#buffers = null;
      this.#caught(thrown);
    }
  }

  #stand(answer: { gives: Standing; buffers: SceneBuffers | null }): void {
    this.#grip += 1;
    this.#nudged = null;
    this.#settled = null;
    this.#standing = answer.gives;
    this.#buffers = answer.gives.overview ? answer.buffers : null;
  }

  /** Keeps what an edit made. False when another tab has put a version since. */
  async #keep(standing: Standing): Promise<boolean> {
    const open = this.#open;
    if (!open) return false;
    const { text, said, title } = standing;
    try {
      const next = { text, said: said || t("session.changed"), title, glance: glanceOf(standing) };
      this.#open = await this.store.put(open.row.id, open.version.n, next);
    } catch (thrown) {
      if (thrown instanceof MovedOn) return false;
      throw thrown;
    }
    this.told.kept(open.row.id);
    return true;
  }

  async #noteGlance(standing: Standing): Promise<void> {
    const open = this.#open;
    const glance = glanceOf(standing);
    if (
      !open ||
      JSON.stringify([open.row.title, open.row.glance]) === JSON.stringify([standing.title, glance])
    )
      return;
    await this.store.glance(open.row.id, standing.title, glance);
  }

  #caught(thrown: unknown): void {
    if (thrown instanceof Refused) this.#refusal = thrown.refusal;
    else if (thrown instanceof NoSuchJob)
      this.#refusal = plain("no-such-job", t("session.no_such_job"), t("session.no_such_job_remedy"));
    else
      this.#refusal = plain(
        "not-kept",
        t("session.not_kept", { why: String(thrown) }),
        t("session.not_kept_remedy"),
      );
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    // Counting is no reading: an effect that opens a job must not run again because of it.
    untrack(() => (this.#busy += 1));
    const turn = this.#last.then(work).finally(() => (this.#busy -= 1));
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}

/** A text with faults is no job yet: it does not go on the shelf, nor over a job. */
function readable(standing: Standing): void {
  if (standing.refusal && standing.refusal.faults.length > 0) throw new Refused(standing.refusal);
}

function plain(code: string, what: string, remedy: string): Refusal {
  return { code, what, remedy, faults: [] };
}

export function glanceOf(standing: Standing): Glance {
  const { overview } = standing;
  return {
    timbers: overview?.tally.timbers ?? 0,
    cut: overview?.tally.cut ?? 0,
    fixed: overview?.tally.fixed ?? 0,
    notices: overview?.notices.filter((notice) => notice.level !== "note").length ?? 0,
    built: overview !== null,
  };
}
