// Rows in the browser's own database.

import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from "idb";
import type { JobRow, Keeper, Rows, Version } from "./rows";

export const DATABASE = "seatcut";
/** Raised with every change of what is kept; a database of a greater one belongs to a newer app. */
export const DATABASE_VERSION = 1;

interface Schema extends DBSchema {
  jobs: { key: string; value: JobRow };
  versions: { key: [string, number]; value: Version };
  notes: { key: string; value: unknown };
}

type Names = ("jobs" | "versions" | "notes")[];
const ALL: Names = ["jobs", "versions", "notes"];

/** A database that this app must leave alone. */
export class NewerDatabase extends Error {}

export interface Opened extends Keeper {
  close(): void;
}

/** Opens the database. `lost` is called when it is taken away: by a newer app in another tab, or the browser. */
export async function openDatabase(lost: () => void): Promise<Opened> {
  let db: IDBPDatabase<Schema>;
  try {
    db = await openDB<Schema>(DATABASE, DATABASE_VERSION, {
      upgrade(fresh) {
        fresh.createObjectStore("jobs", { keyPath: "id" });
        fresh.createObjectStore("versions", { keyPath: ["job", "n"] });
        fresh.createObjectStore("notes");
      },
      blocking() {
        // Another tab has a newer app: make way, or it waits for ever.
        db.close();
        lost();
      },
      terminated: lost,
    });
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === "VersionError") throw new NewerDatabase();
    throw thrown;
  }
  return {
    close: () => db.close(),
    read: (work) => run(db.transaction(ALL, "readonly"), work),
    write: (work) => run(db.transaction(ALL, "readwrite", { durability: "strict" }), work),
  };
}

type Either = IDBPTransaction<Schema, StoreNames<Schema>[], "readonly" | "readwrite">;

async function run<T>(opened: unknown, work: (rows: Rows) => Promise<T>): Promise<T> {
  const tx = opened as Either;
  // Heard from the start, so that an abort is never an unheard rejection.
  const done = tx.done.then(
    () => null,
    (why: unknown) => ({ why }),
  );
  let result: T;
  try {
    result = await work(rowsOf(opened as IDBPTransaction<Schema, StoreNames<Schema>[], "readwrite">));
  } catch (thrown) {
    try {
      tx.abort();
    } catch {
      // It has ended by itself.
    }
    const failed = await done;
    // A full store fails the transaction, and only its error says so.
    throw failed?.why instanceof DOMException && failed.why.name === "QuotaExceededError"
      ? failed.why
      : thrown;
  }
  const failed = await done;
  if (failed) throw failed.why ?? new Error("aborted");
  return result;
}

function rowsOf(tx: IDBPTransaction<Schema, StoreNames<Schema>[], "readwrite">): Rows {
  const jobs = tx.objectStore("jobs");
  const versions = tx.objectStore("versions");
  const notes = tx.objectStore("notes");
  return {
    jobs: () => jobs.getAll(),
    job: (id) => jobs.get(id),
    putJob: async (row) => void (await jobs.put(row)),
    dropJob: (id) => jobs.delete(id),
    version: (job, n) => versions.get([job, n]),
    putVersion: async (version) => void (await versions.put(version)),
    dropVersion: (job, n) => versions.delete([job, n]),
    numbers: async (job) => {
      const keys = await versions.getAllKeys(IDBKeyRange.bound([job, -Infinity], [job, Infinity]));
      return keys.map((key) => key[1]);
    },
    note: async <T>(key: string) => (await notes.get(key)) as T | undefined,
    putNote: async (key, value) => void (await notes.put(value, key)),
    dropNote: (key) => notes.delete(key),
    // The keys that start with the prefix lie between it and it with the last character added.
    noteKeys: (prefix) => notes.getAllKeys(IDBKeyRange.bound(prefix, `${prefix}\uffff`)),
  };
}
