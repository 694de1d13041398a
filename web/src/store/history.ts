// The versions of a job: what is put, undone and done again. All of it within one transaction of rows.

import type { Glance, JobRow, Rows, Version } from "./rows";

/** Most versions that are kept of one job: a day's work at the bench; older ones are let go first. */
export const MOST_VERSIONS = 300;
/** Most characters that the versions of one job take together, some 16 MB: phones give a site little room. */
export const MOST_CHARS = 8_000_000;
/** Versions that are kept whatever they take, so that the last step can be undone. */
export const LEAST_VERSIONS = 2;
/** Most jobs in the bin: a slip is seen soon, and the bin must not fill the phone. */
export const BIN_HOLDS = 20;

/** The job has another version now than the one this was made from: another tab was there. */
export class MovedOn extends Error {}
/** There is no such job. */
export class NoSuchJob extends Error {}

/** A job as it is open. */
export interface OpenJob {
  row: JobRow;
  version: Version;
  /** What undo would take back, what redo would do again. */
  undoable: string | null;
  redoable: string | null;
}

async function rowOf(rows: Rows, id: string): Promise<JobRow> {
  const row = await rows.job(id);
  if (!row) throw new NoSuchJob(id);
  return row;
}

/** The next number of a counter that all jobs share. */
async function turn(rows: Rows): Promise<number> {
  const next = ((await rows.note<number>("counter")) ?? 0) + 1;
  await rows.putNote("counter", next);
  return next;
}

export async function openJob(rows: Rows, id: string): Promise<OpenJob> {
  const row = await rowOf(rows, id);
  const numbers = await rows.numbers(id);
  // A cursor that points nowhere must not hide a job: the newest version is shown.
  const shown = numbers.includes(row.cursor) ? row.cursor : numbers.at(-1);
  const version = shown === undefined ? undefined : await rows.version(id, shown);
  if (!version) throw new NoSuchJob(id);
  const at = numbers.indexOf(version.n);
  const after = numbers[at + 1];
  return {
    row: { ...row, cursor: version.n },
    version,
    undoable: at > 0 ? version.said : null,
    redoable: after === undefined ? null : ((await rows.version(id, after))?.said ?? null),
  };
}

/** Puts a new job on the shelf. */
export async function addJob(
  rows: Rows,
  job: { id: string; title: string; text: string },
  now: number,
): Promise<OpenJob> {
  const row: JobRow = {
    id: job.id,
    title: job.title,
    cursor: 1,
    newest: 1,
    place: await turn(rows),
    count: 1,
    chars: job.text.length,
    glance: null,
    binned: null,
    madeAt: now,
    changedAt: now,
  };
  await rows.putVersion({ job: job.id, n: 1, text: job.text, said: "", at: now });
  await rows.putJob(row);
  return openJob(rows, job.id);
}

/** What is put as the next version. */
export interface Next {
  text: string;
  said: string;
  title: string;
  glance: Glance | null;
}

/** Puts the next version of a job, made from version `from`. What was undone is let go. */
export async function putVersion(
  rows: Rows,
  id: string,
  from: number,
  next: Next,
  now: number,
): Promise<OpenJob> {
  const row = await rowOf(rows, id);
  if (row.cursor !== from) throw new MovedOn(id);
  let { count, chars } = row;
  const numbers = await rows.numbers(id);
  const drop = async (n: number) => {
    chars -= (await rows.version(id, n))?.text.length ?? 0;
    count -= 1;
    await rows.dropVersion(id, n);
  };
  for (const n of numbers.filter((n) => n > from)) await drop(n);
  const n = row.newest + 1;
  await rows.putVersion({ job: id, n, text: next.text, said: next.said, at: now });
  count += 1;
  chars += next.text.length;
  for (const old of numbers.filter((n) => n <= from)) {
    const tooMany = count > MOST_VERSIONS || chars > MOST_CHARS;
    if (!tooMany || count <= LEAST_VERSIONS) break;
    await drop(old);
  }
  await rows.putJob({
    ...row,
    title: next.title,
    glance: next.glance ?? row.glance,
    cursor: n,
    newest: n,
    place: await turn(rows),
    count,
    chars,
    changedAt: now,
  });
  return openJob(rows, id);
}

/** Goes one version back or forward from version `from`; stays where there is none. */
export async function step(rows: Rows, id: string, from: number, way: "back" | "forward"): Promise<OpenJob> {
  const row = await rowOf(rows, id);
  if (row.cursor !== from) throw new MovedOn(id);
  const numbers = await rows.numbers(id);
  const to = numbers[numbers.indexOf(from) + (way === "back" ? -1 : 1)];
  if (to !== undefined) await rows.putJob({ ...row, cursor: to });
  return openJob(rows, id);
}

/** Notes how a job stands, for the shelf. */
export async function noteGlance(rows: Rows, id: string, title: string, glance: Glance): Promise<void> {
  const row = await rows.job(id);
  if (row) await rows.putJob({ ...row, title, glance });
}

/** Lays a job in the bin, and empties what is too much there. */
export async function binJob(rows: Rows, id: string): Promise<void> {
  await rows.putJob({ ...(await rowOf(rows, id)), binned: await turn(rows) });
  const binned = (await rows.jobs()).filter((job) => job.binned !== null);
  binned.sort((a, b) => (a.binned ?? 0) - (b.binned ?? 0));
  for (const job of binned.slice(0, Math.max(0, binned.length - BIN_HOLDS))) await dropJob(rows, job.id);
}

/** Takes a job out of the bin again. */
export async function unbinJob(rows: Rows, id: string): Promise<void> {
  await rows.putJob({ ...(await rowOf(rows, id)), binned: null, place: await turn(rows) });
}

async function dropJob(rows: Rows, id: string): Promise<void> {
  for (const n of await rows.numbers(id)) await rows.dropVersion(id, n);
  for (const key of [`draft:${id}`, `sync:${id}`]) await rows.dropNote(key);
  await rows.dropJob(id);
}
