// What is picked out of the answers of the core about strength. Pure.

import type { Entry, KeyGiven, StrengthField, StrengthView } from "../../../core/bindings";

/** Without these nothing can be checked: they are set, and not taken out one by one. */
const NEEDED = ["loads.covering", "loads.snow_zone", "loads.altitude", "loads.wind"];

/** Whether a key of the job is about strength. */
export function ofStrength(path: string): boolean {
  return path.startsWith("loads.") || path.startsWith("strength.");
}

/** The entries about strength; those that are needed can't be put back to what is usual. */
export function entriesOf(entries: readonly Entry[]): Entry[] {
  return entries
    .filter((entry) => ofStrength(entry.path))
    .map((entry) => (NEEDED.includes(entry.path) ? { ...entry, said: false } : entry));
}

/** What is written at timbers that are over, by the marks that the roof has. */
export function tagsOf(view: StrengthView | null): Map<string, string> {
  const tags = new Map<string, string>();
  if (view?.state !== "checked") return tags;
  for (const row of view.timbers) {
    if (row.tag !== null) for (const mark of row.lengths) tags.set(mark, row.tag);
  }
  return tags;
}

/** What is sent of a form: what was typed, and of the rest what stood there. */
export function given(fields: readonly StrengthField[], typed: Readonly<Record<string, string>>): KeyGiven[] {
  return fields.map(({ path, value }) => ({ path, value: (typed[path] ?? value).trim() }));
}
