// What is picked out of addresses, fields and lists of the order. Pure.

import type { Entry } from "../../core/bindings";

export const TABS = ["buy", "cut", "cover", "fix", "prices"] as const;
export type Tab = (typeof TABS)[number];

/** The part of the order that an address shows, and the length whose cuts it shows. */
export function shown(detail: string | null): { tab: Tab; layout: string | null } {
  const layout = /^cut-(\d+-\d+)$/.exec(detail ?? "")?.[1] ?? null;
  const tab = layout !== null ? "cut" : (TABS.find((one) => one === detail) ?? "buy");
  return { tab, layout };
}

/** A day as prices are dated: `2026-11-02`. */
export function dayOf(date: Date): string {
  const two = (n: number) => String(n).padStart(2, "0");
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** The entries of one group of keys. Those that are left out are shown elsewhere. */
export function entriesOf(
  entries: readonly Entry[],
  group: string,
  left_out: readonly string[] = [],
): Entry[] {
  return entries.filter((entry) => entry.path.startsWith(`${group}.`) && !left_out.includes(entry.path));
}

/** Where a line of a text begins and ends, so that it can be shown as chosen. */
export function placeOfLine(text: string, line: number): [number, number] {
  const lines = text.split("\n");
  const at = Math.min(Math.max(line, 1), lines.length) - 1;
  const from = lines.slice(0, at).reduce((sum, one) => sum + one.length + 1, 0);
  return [from, from + (lines[at]?.length ?? 0)];
}
