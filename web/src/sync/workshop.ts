// The calls of the workshop server, as docs/workshop.md says. Each rejects with `Unreached` where no answer comes.

import type { Refusal } from "../core/bindings";

/** No answer: out of reach, or no workshop at all. */
export class Unreached extends Error {}
/** The workshop answered, and not with what was asked for. */
export class Denied extends Error {
  constructor(
    readonly status: number,
    readonly refusal: Refusal,
  ) {
    super(refusal.what);
  }
}

export interface Hello {
  name: string;
  paired: boolean;
  needs_pairing: boolean;
}
export interface ServerJob {
  id: string;
  title: string;
  revision: number;
}
export interface Kept {
  revision: number;
  text: string;
  gone?: boolean;
}
/** One figure that two devices changed; values as written in the file. */
export interface Clash {
  path: string;
  words: string;
  base: string | null;
  ours: string | null;
  theirs: string | null;
}
export interface Clashing {
  revision: number;
  theirs: string;
  merged: string | null;
  clashes: Clash[];
}
export interface Save {
  base: number;
  text: string;
  device: string;
  save: string;
}
export type Saved = ({ is: "kept" } & Kept) | ({ is: "clash" } & Clashing) | { is: "gone"; revision: number };

/** Longest that the workshop may take to answer, ms; it is in the same house. */
const PATIENCE_MS = 10_000;

async function ask(path: string, init: RequestInit = {}, takes: number[] = []): Promise<[number, unknown]> {
  let reply: Response;
  let body: unknown;
  try {
    reply = await fetch(new URL(`api/1/${path}`, document.baseURI), {
      ...init,
      cache: "no-store",
      signal: AbortSignal.timeout(PATIENCE_MS),
      ...(init.body ? { headers: { "content-type": "application/json" } } : {}),
    });
    body = await reply.json();
  } catch (thrown) {
    throw new Unreached(String(thrown));
  }
  if (reply.ok || takes.includes(reply.status)) return [reply.status, body];
  throw new Denied(reply.status, body as Refusal);
}

export async function hello(): Promise<Hello> {
  const [, body] = await ask("hello");
  return body as Hello;
}
export async function pair(code: string, device: string): Promise<void> {
  await ask("pair", { method: "POST", body: JSON.stringify({ code, device }) });
}
export async function list(): Promise<{ jobs: ServerJob[]; gone: ServerJob[] }> {
  const [, body] = await ask("jobs");
  return body as { jobs: ServerJob[]; gone: ServerJob[] };
}
export async function read(id: string): Promise<Kept> {
  const [, body] = await ask(`jobs/${id}`);
  return body as Kept;
}
export async function save(id: string, what: Save): Promise<Saved> {
  const [status, body] = await ask(`jobs/${id}`, { method: "PUT", body: JSON.stringify(what) }, [409, 410]);
  if (status === 409) return { is: "clash", ...(body as Clashing) };
  if (status === 410) return { is: "gone", ...(body as Kept) };
  return { is: "kept", ...(body as Kept) };
}
/** Takes a job off the workshop's shelf. False when it was changed there since. */
export async function takeOff(id: string, revision: number, device: string): Promise<boolean> {
  const query = new URLSearchParams({ revision: String(revision), device });
  const [status] = await ask(`jobs/${id}?${query}`, { method: "DELETE" }, [404, 409, 410]);
  return status !== 409;
}
