// What the app says, by key. British words are whole; American ones hold only what differs.

import { settings } from "../state/settings.svelte";
import ukBench from "./uk/bench.json";
import ukMeasure from "./uk/measure.json";
import ukOrder from "./uk/order.json";
import ukShape from "./uk/shape.json";
import ukShell from "./uk/shell.json";
import ukSite from "./uk/site.json";
import usBench from "./us/bench.json";
import usMeasure from "./us/measure.json";
import usOrder from "./us/order.json";
import usShape from "./us/shape.json";
import usShell from "./us/shell.json";
import usSite from "./us/site.json";

const uk = { ...ukShell, ...ukMeasure, ...ukShape, ...ukOrder, ...ukBench, ...ukSite };

/** The key of something that the app says. */
export type Word = keyof typeof uk;

const us: Partial<Record<Word, string>> = {
  ...usShell,
  ...usMeasure,
  ...usShape,
  ...usOrder,
  ...usBench,
  ...usSite,
};

/** What the app says under this key, with `{name}` filled in. Drawn again when the words are changed. */
export function t(key: Word, values: Record<string, string | number> = {}): string {
  const words = (settings.words === "us" ? us[key] : undefined) ?? uk[key];
  return words.replace(/\{(\w+)\}/g, (whole, name: string) => String(values[name] ?? whole));
}
