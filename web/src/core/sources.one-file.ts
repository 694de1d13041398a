// Where the one-file page finds its parts: in itself.

import { unescaped } from "../state/escaping";
import CoreWorker from "./worker?worker&inline";
import type { ModuleSource } from "./messages";

/** A module as the build packed it: gzip, in base64. */
async function unpacked(id: "core" | "side" | "papers"): Promise<ArrayBuffer> {
  const text = document.getElementById(`module-${id}`)?.textContent ?? "";
  const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
}

export const coreSource = (): Promise<ModuleSource> => unpacked("core");
export const sideSource = (): Promise<ModuleSource> => unpacked("side");
export const papersSource = (): Promise<ModuleSource> => unpacked("papers");
export const newWorker = (): Worker => new CoreWorker({ name: "core" });

/** This very page, as it was before it was drawn on and without its job. */
export async function pageTemplate(): Promise<string> {
  const page = document.documentElement.cloneNode(true) as HTMLElement;
  page.querySelector("#app")?.replaceChildren();
  page.querySelector("#job")?.replaceChildren();
  page.removeAttribute("data-theme");
  return `<!doctype html>\n${page.outerHTML}\n`;
}

/** The job that was put into the page. */
export function carriedJob(): string | null {
  const text = document.getElementById("job")?.textContent;
  return text ? unescaped(text) : null;
}

export const laterParts = (): string[] => [];

/** The page brings everything with it, and no server is behind it. */
export const oneFile = true;
