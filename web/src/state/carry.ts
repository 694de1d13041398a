// Jobs in and out of the app as files.

import type { Refusal } from "../core/bindings";
import { t } from "../words";
import { app } from "./app.svelte";
import { firstPlace } from "./places";
import { go } from "./route.svelte";

/** Largest job file that is read, bytes: the core's own limit (`LARGEST_FILE` of the crate `job`). */
const LARGEST_FILE = 1 << 20;
/** Largest page with a job in it, bytes: app and core together take a few MB. */
const LARGEST_PAGE = 32 << 20;
/** Where a text that was refused is kept until it is mended. */
export const REFUSED_NOTE = "refused";
/** How long a file that is handed to the browser is held, ms: phones ask for it late. */
const HOLD_MS = 60_000;

/** A text that came from outside and was refused. */
export interface RefusedText {
  name: string;
  text: string;
}

/** A name that every file system takes. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize("NFKD")
    .replace(/[^\w\s-]/g, "")
    .trim()
    .replace(/\s+/g, "-")
    .toLowerCase();
  return `${plain || "job"}.${ending}`;
}

/** Hands a file to the browser to be saved. */
export function save(name: string, type: string, content: BlobPart): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), HOLD_MS);
}

/** Whether this device passes such files on to other apps. */
export function canSend(file: File): boolean {
  return navigator.canShare?.({ files: [file] }) ?? false;
}

/** Passes a file on by the device's own means; saves it where that is missing. False when the user thought better. */
export async function send(file: File): Promise<boolean> {
  if (!canSend(file)) {
    save(file.name, file.type, file);
    return true;
  }
  try {
    await navigator.share({ files: [file], title: file.name });
    return true;
  } catch (thrown) {
    if (thrown instanceof DOMException && thrown.name === "AbortError") return false;
    save(file.name, file.type, file);
    return true;
  }
}

/** The open job as a file. */
export function jobFile(): File | null {
  const { text, standing } = app.session;
  if (text === null) return null;
  return new File([text], fileName(standing?.title ?? "", "toml"), { type: "application/toml" });
}

export async function exportJob(): Promise<void> {
  const file = jobFile();
  if (file) save(file.name, file.type, file);
}

/** The open job, or every job on the shelf, each as a file. */
export async function exportAll(): Promise<void> {
  if (app.session.text !== null) return exportJob();
  for (const row of app.shelf) {
    const { version } = await app.store.read(row.id);
    save(fileName(row.title, "toml"), "application/toml", version.text);
  }
}

/** Takes in a file: a job, or a page with a job in it. What is refused is kept, to be seen and mended. */
export async function importFile(file: File): Promise<void> {
  const isPage = /\.html?$/i.test(file.name);
  if (file.size > (isPage ? LARGEST_PAGE : LARGEST_FILE))
    return refuse("too-large", t("import.too_large", { name: file.name }), t("import.not_ours_remedy"));
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    return refuse("not-text", t("import.not_text", { name: file.name }), t("import.not_ours_remedy"));
  }
  if (text.includes("\0"))
    return refuse("not-text", t("import.not_text", { name: file.name }), t("import.not_ours_remedy"));
  const job = isPage ? jobOfPage(text) : text;
  if (job === null)
    return refuse(
      "no-job-inside",
      t("import.no_job_inside", { name: file.name }),
      t("import.not_ours_remedy"),
    );
  await importText(job, file.name);
}

/** Takes in the text of a job. */
export async function importText(text: string, name: string): Promise<void> {
  const made = await app.session.create(text);
  if (made) {
    const first = firstPlace();
    return first ? go("job", made, first) : go();
  }
  await app.store.putNote(REFUSED_NOTE, { name, text } satisfies RefusedText);
  go("text");
}

/** The job inside a page that carries one. */
export function jobOfPage(page: string): string | null {
  // A parsed document that is not shown runs nothing.
  const inside = new DOMParser().parseFromString(page, "text/html").getElementById("job");
  return inside?.textContent?.trim() ? inside.textContent : null;
}

function refuse(code: string, what: string, remedy: string): void {
  const refusal: Refusal = { code, what, remedy, faults: [] };
  app.session.refuse(refusal);
}
