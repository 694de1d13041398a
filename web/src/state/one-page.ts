// The open job as one page: app, core and job in one file, that opens with no server.

import { pageTemplate } from "../core/sources";
import { t } from "../words";
import { app } from "./app.svelte";
import { fileName } from "./carry";
import { escaped } from "./escaping";
import { Refused } from "./session";

const OPENING = '<script type="application/toml" id="job">';
/** Where the job's text goes. */
const MARKER = `${OPENING}</script>`;

async function template(): Promise<string> {
  let why: unknown = "";
  try {
    const page = await pageTemplate();
    if (page.includes(MARKER)) return page;
  } catch (thrown) {
    why = thrown;
  }
  throw new Refused({
    code: "no-template",
    what: t("share.no_template", { why: String(why) }),
    remedy: t("share.no_template_remedy"),
    faults: [],
  });
}

/** Puts a job's text into a page that has none. */
export function withJob(page: string, text: string): string {
  return page.replace(MARKER, () => `${OPENING}${escaped(text)}</script>`);
}

export async function onePage(): Promise<File | null> {
  const { text, standing } = app.session;
  if (text === null) return null;
  const page = withJob(await template(), text);
  return new File([page], fileName(standing?.title ?? "", "html"), { type: "text/html" });
}
