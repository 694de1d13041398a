// The open job as one page: app, core and job in one file, that opens with no server.

import { t } from "../words";
import { app } from "./app.svelte";
import { fileName } from "./carry";
import { Refused } from "./session";

/** The page without a job, beside the app; see vite.one-file.config.ts. */
const TEMPLATE = "one-file.html";
/** Where the job's text goes. */
const OPENING = '<script type="application/toml" id="job">';
const MARKER = `${OPENING}</script>`;

/** A text inside a script element: nothing in it may end the element. The page turns it back. */
export function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
}
export function unescaped(text: string): string {
  return text.replace(/&lt;/g, "<").replace(/&amp;/g, "&");
}

async function template(): Promise<string> {
  let why = "";
  try {
    const reply = await fetch(new URL(TEMPLATE, document.baseURI));
    const text = await reply.text();
    if (reply.ok && text.includes(MARKER)) return text;
    why = `${reply.status}`;
  } catch (thrown) {
    why = String(thrown);
  }
  throw new Refused({
    code: "no-template",
    what: t("share.no_template", { why }),
    remedy: t("share.no_template_remedy"),
    faults: [],
  });
}

export async function onePage(): Promise<File | null> {
  const { text, standing } = app.session;
  if (text === null) return null;
  const page = (await template()).replace(MARKER, () => `${OPENING}${escaped(text)}</script>`);
  return new File([page], fileName(standing?.title ?? "", "html"), { type: "text/html" });
}
