// What this device was told about how to show things. No job holds any of it.

import type { LengthStyle, Dialect } from "../core/bindings";

export type Theme = "device" | "light" | "dark" | "sun";
/** Which way the bench shows cuts. */
export type BenchWay = "degrees" | "square" | "gauge" | "saw";

const CHOICES = {
  theme: ["device", "light", "dark", "sun"] as readonly Theme[],
  lengths: ["as-job", "mm", "feet-inches"] as readonly LengthStyle[],
  words: ["uk", "us"] as readonly Dialect[],
  way: ["degrees", "square", "gauge", "saw"] as readonly BenchWay[],
};

/** Where the settings lie: read before the first paint, so not in the database, which answers later. */
const DRAWER = "seatcut.settings";

function fromDrawer(): Record<string, unknown> {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(DRAWER) ?? "{}");
    return typeof read === "object" && read !== null ? (read as Record<string, unknown>) : {};
  } catch {
    // Blocked or damaged: the usual settings hold.
    return {};
  }
}

class DeviceSettings {
  theme = $state<Theme>("device");
  lengths = $state<LengthStyle>("as-job");
  words = $state<Dialect>("uk");
  way = $state<BenchWay>("degrees");

  constructor() {
    const kept = fromDrawer();
    const pick = <T extends string>(choices: readonly T[], value: unknown, usual: T): T =>
      choices.find((choice) => choice === value) ?? usual;
    this.theme = pick(CHOICES.theme, kept["theme"], "device");
    this.lengths = pick(CHOICES.lengths, kept["lengths"], "as-job");
    this.words = pick(CHOICES.words, kept["words"], "uk");
    this.way = pick(CHOICES.way, kept["way"], "degrees");
  }

  /** Keeps what is set now for the next time. */
  keep(): void {
    const { theme, lengths, words, way } = this;
    try {
      localStorage.setItem(DRAWER, JSON.stringify({ theme, lengths, words, way }));
    } catch {
      // The browser keeps nothing: the settings hold until the page is closed.
    }
  }
}

export const settings = new DeviceSettings();
