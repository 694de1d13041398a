// Where the app served from a folder finds the core. The one-file page puts `sources.one-file.ts` in its place.

import coreUrl from "./wasm/web_core_bg.wasm?url";
import papersUrl from "./wasm/web_papers_bg.wasm?url";
import type { ModuleSource } from "./messages";

// The worker lies in another folder than the page, so it is told whole addresses.
const whole = (url: string): string => new URL(url, document.baseURI).href;

export const coreSource = async (): Promise<ModuleSource> => whole(coreUrl);
export const papersSource = async (): Promise<ModuleSource> => whole(papersUrl);
export const newWorker = (): Worker =>
  new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "core" });
