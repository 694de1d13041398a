// Where the app served from a folder finds its parts. In the one-file page `sources.one-file.ts` stands in.

import { unescaped } from "../state/escaping";
import coreUrl from "./wasm/web_core_bg.wasm?url";
import papersUrl from "./wasm/web_papers_bg.wasm?url";
import sideUrl from "./wasm/web_side_bg.wasm?url";
import type { ModuleSource } from "./messages";

// The worker lies in another folder than the page, so it is told whole addresses.
const whole = (url: string): string => new URL(url, document.baseURI).href;

export const coreSource = async (): Promise<ModuleSource> => whole(coreUrl);
export const sideSource = async (): Promise<ModuleSource> => whole(sideUrl);
export const papersSource = async (): Promise<ModuleSource> => whole(papersUrl);
export const newWorker = (): Worker =>
  new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "core" });

/** The one-file page without a job, built beside the app. Rejects when it is out of reach. */
export async function pageTemplate(): Promise<string> {
  const reply = await fetch(whole("one-file.html"));
  if (!reply.ok) throw new Error(String(reply.status));
  return reply.text();
}

/** The job that the page brings with it: the workshop server may put one into the page it serves. */
export function carriedJob(): string | null {
  const text = document.getElementById("job")?.textContent;
  return text ? unescaped(text) : null;
}

/** What is fetched once the app stands, so that it is there with no network. */
export const laterParts = (): string[] => [whole(sideUrl), whole(papersUrl), whole("one-file.html")];

/** The page brings everything with it, and no server is behind it. */
export const oneFile = false;
