// Rows in memory: for a browser that keeps nothing, and while its store is full.

import type { JobRow, Keeper, Rows, Version } from "./rows";

interface Held {
  jobs: Map<string, JobRow>;
  versions: Map<string, Map<number, Version>>;
  notes: Map<string, unknown>;
}

function rowsOf(held: Held): Rows {
  const versionsOf = (job: string) => held.versions.get(job) ?? new Map<number, Version>();
  return {
    jobs: async () => [...held.jobs.values()],
    job: async (id) => held.jobs.get(id),
    putJob: async (row) => void held.jobs.set(row.id, row),
    dropJob: async (id) => void held.jobs.delete(id),
    version: async (job, n) => versionsOf(job).get(n),
    putVersion: async (version) => {
      held.versions.set(version.job, new Map(versionsOf(version.job)).set(version.n, version));
    },
    dropVersion: async (job, n) => {
      const left = new Map(versionsOf(job));
      left.delete(n);
      held.versions.set(job, left);
    },
    numbers: async (job) => [...versionsOf(job).keys()].sort((a, b) => a - b),
    note: async <T>(key: string) => held.notes.get(key) as T | undefined,
    putNote: async (key, value) => void held.notes.set(key, value),
    dropNote: async (key) => void held.notes.delete(key),
    noteKeys: async (prefix) => [...held.notes.keys()].filter((key) => key.startsWith(prefix)),
  };
}

export function memoryKeeper(): Keeper {
  let held: Held = { jobs: new Map(), versions: new Map(), notes: new Map() };
  let last: Promise<unknown> = Promise.resolve();
  // One after the other, each on a copy that takes the place of what was held when it went well.
  const write = <T>(work: (rows: Rows) => Promise<T>): Promise<T> => {
    const turn = last.then(async () => {
      const copy: Held = {
        jobs: new Map(held.jobs),
        versions: new Map(held.versions),
        notes: new Map(held.notes),
      };
      const result = await work(rowsOf(copy));
      held = copy;
      return result;
    });
    last = turn.catch(() => undefined);
    return turn;
  };
  return { read: (work) => work(rowsOf(held)), write };
}
