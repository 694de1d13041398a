// What the device keeps. Where the browser's database fails, the work goes on in memory and is put into the
// database when it takes it again; nothing is lost while the page is open, and the user is told.

import { openDatabase, NewerDatabase, type Opened } from "./database";
import * as history from "./history";
import { MovedOn, NoSuchJob, type Next, type OpenJob } from "./history";
import { memoryKeeper } from "./memory";
import type { Glance, JobRow, Keeper, Rows, Version } from "./rows";

/** Why the work is only in memory. */
export type Trouble =
  /** The device has no room left. */
  | "full"
  /** The browser keeps nothing: private window, blocked, broken. */
  | "blocked"
  /** The database belongs to a newer app. */
  | "newer"
  | null;

export class Store {
  #db: Opened | null = null;
  /** Everything that the database did not take. */
  #memory: Keeper = memoryKeeper();
  /** Jobs and notes that are in memory and not in the database. */
  #strandedJobs = new Set<string>();
  #strandedNotes = new Set<string>();
  trouble: Trouble = null;
  /** Writes go one after the other, so that none slips between the halves of a rescue. */
  #last: Promise<unknown> = Promise.resolve();

  /** `heard` is called whenever `trouble` changes. */
  constructor(
    private readonly heard: () => void = () => undefined,
    private readonly now: () => number = () => Date.now(),
  ) {}

  async open(): Promise<void> {
    try {
      this.#db = await openDatabase(() => {
        this.#db = null;
        this.#say("newer");
      });
      if (this.#strandedJobs.size + this.#strandedNotes.size === 0) this.#say(null);
    } catch (thrown) {
      this.#say(thrown instanceof NewerDatabase ? "newer" : "blocked");
    }
  }

  close(): void {
    this.#db?.close();
    this.#db = null;
  }

  #say(trouble: Trouble): void {
    if (this.trouble === trouble) return;
    this.trouble = trouble;
    this.heard();
  }

  // Jobs

  /** All jobs, the one last worked on first; those in the bin too. */
  async jobs(): Promise<JobRow[]> {
    const kept = this.#db ? await this.#db.read((rows) => rows.jobs()).catch(() => []) : [];
    const inMemory = await this.#memory.read((rows) => rows.jobs());
    const all = new Map([...kept, ...inMemory].map((row) => [row.id, row]));
    return [...all.values()].sort((a, b) => b.place - a.place);
  }
  read(id: string): Promise<OpenJob> {
    return this.#onJob(id, (rows) => history.openJob(rows, id), false);
  }
  add(job: { id: string; title: string; text: string }): Promise<OpenJob> {
    return this.#onJob(job.id, (rows) => history.addJob(rows, job, this.now()));
  }
  put(id: string, from: number, next: Next): Promise<OpenJob> {
    return this.#onJob(id, (rows) => history.putVersion(rows, id, from, next, this.now()));
  }
  step(id: string, from: number, way: "back" | "forward"): Promise<OpenJob> {
    return this.#onJob(id, (rows) => history.step(rows, id, from, way));
  }
  glance(id: string, title: string, glance: Glance): Promise<void> {
    return this.#onJob(id, (rows) => history.noteGlance(rows, id, title, glance));
  }
  bin(id: string): Promise<void> {
    return this.#onJob(id, (rows) => history.binJob(rows, id));
  }
  unbin(id: string): Promise<void> {
    return this.#onJob(id, (rows) => history.unbinJob(rows, id));
  }
  versions(id: string): Promise<Version[]> {
    const all = async (rows: Rows) => {
      const found: Version[] = [];
      for (const n of await rows.numbers(id)) {
        const version = await rows.version(id, n);
        if (version) found.push(version);
      }
      return found;
    };
    return this.#onJob(id, all, false);
  }

  // Notes

  async note<T>(key: string): Promise<T | undefined> {
    if (!this.#db || this.#strandedNotes.has(key)) return this.#memory.read((rows) => rows.note<T>(key));
    return this.#db.read((rows) => rows.note<T>(key));
  }
  /** Keeps a note; `undefined` takes it away. */
  putNote(key: string, value: unknown): Promise<void> {
    return this.#inTurn(() => this.#putNote(key, value));
  }
  async #putNote(key: string, value: unknown): Promise<void> {
    const work = (rows: Rows) => (value === undefined ? rows.dropNote(key) : rows.putNote(key, value));
    if (this.#db && !this.#strandedNotes.has(key)) {
      try {
        return await this.#db.write(work);
      } catch (thrown) {
        this.#fail(thrown);
      }
    }
    this.#strandedNotes.add(key);
    await this.#memory.write(work);
  }
  async noteKeys(prefix: string): Promise<string[]> {
    const kept = this.#db ? await this.#db.read((rows) => rows.noteKeys(prefix)) : [];
    return [...new Set([...kept, ...(await this.#memory.read((rows) => rows.noteKeys(prefix)))])];
  }

  // Where the work goes

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(work);
    this.#last = turn.catch(() => undefined);
    return turn;
  }

  #onJob<T>(id: string, work: (rows: Rows) => Promise<T>, writes = true): Promise<T> {
    return this.#inTurn(() => this.#place(id, work, writes));
  }

  async #place<T>(id: string, work: (rows: Rows) => Promise<T>, writes: boolean): Promise<T> {
    if (this.#db && !this.#strandedJobs.has(id)) {
      const db = this.#db;
      try {
        return await (writes ? db.write(work) : db.read(work));
      } catch (thrown) {
        // What the rows themselves say is no fault of the database.
        if (thrown instanceof MovedOn || thrown instanceof NoSuchJob || !writes) throw thrown;
        this.#fail(thrown);
        await this.#strand(db, id);
      }
    }
    if (writes) this.#strandedJobs.add(id);
    return writes ? this.#memory.write(work) : this.#memory.read(work);
  }

  #fail(thrown: unknown): void {
    const full = thrown instanceof DOMException && thrown.name === "QuotaExceededError";
    this.#say(full ? "full" : "blocked");
  }

  /** Copies a job from the database, which can still be read as a rule, into memory. */
  async #strand(db: Keeper, id: string): Promise<void> {
    const found = await db.read((rows) => gather(rows, id)).catch(() => null);
    if (found) await this.#memory.write((rows) => spread(rows, found));
  }

  /** Puts into the database what is only in memory. True when nothing is left there. */
  retry(): Promise<boolean> {
    return this.#inTurn(() => this.#retry());
  }
  async #retry(): Promise<boolean> {
    if (!this.#db && this.trouble !== "newer") await this.open();
    const db = this.#db;
    if (!db) return false;
    try {
      for (const id of this.#strandedJobs) {
        const found = await this.#memory.read((rows) => gather(rows, id));
        if (found) await db.write((rows) => spread(rows, found));
        this.#strandedJobs.delete(id);
        await this.#memory.write((rows) => rows.dropJob(id));
      }
      for (const key of this.#strandedNotes) {
        const value = await this.#memory.read((rows) => rows.note(key));
        await db.write((rows) => (value === undefined ? rows.dropNote(key) : rows.putNote(key, value)));
        this.#strandedNotes.delete(key);
      }
    } catch (thrown) {
      this.#fail(thrown);
      return false;
    }
    this.#say(null);
    return true;
  }
}

interface Gathered {
  counter: number;
  row: JobRow;
  versions: Version[];
}

async function gather(rows: Rows, id: string): Promise<Gathered | null> {
  const row = await rows.job(id);
  if (!row) return null;
  const versions: Version[] = [];
  for (const n of await rows.numbers(id)) {
    const version = await rows.version(id, n);
    if (version) versions.push(version);
  }
  return { counter: (await rows.note<number>("counter")) ?? 0, row, versions };
}

async function spread(rows: Rows, { counter, row, versions }: Gathered): Promise<void> {
  await rows.putNote("counter", Math.max(counter, (await rows.note<number>("counter")) ?? 0));
  const kept = new Set(versions.map((version) => version.n));
  for (const n of await rows.numbers(row.id)) if (!kept.has(n)) await rows.dropVersion(row.id, n);
  for (const version of versions) await rows.putVersion(version);
  await rows.putJob(row);
}
