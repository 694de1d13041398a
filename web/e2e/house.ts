// A browser and a workshop for the checks of one file, put away behind the last.

import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { browser, visit, type Size, type Visit } from "./browser";
import { workshop, type Workshop } from "./workshop";

export interface House {
  readonly chromium: Browser;
  readonly workshop: Workshop;
  /** A new device that opens the app. */
  device(size: Size): Promise<Visit>;
}

export function house(): House {
  let chromium: Browser | undefined;
  let own: Workshop | undefined;
  beforeAll(async () => {
    [chromium, own] = await Promise.all([browser(), workshop()]);
  });
  afterAll(async () => {
    await chromium?.close();
    await own?.clear();
  });
  const there = <T>(thing: T | undefined): T => {
    if (thing === undefined) throw new Error("the house is not up yet");
    return thing;
  };
  return {
    get chromium() {
      return there(chromium);
    },
    get workshop() {
      return there(own);
    },
    device: (size) => visit(there(chromium), size, there(own).address),
  };
}
