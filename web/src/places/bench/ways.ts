// The ways in which a cut is set, in the order of the switch.

import type { Figure, Ways } from "../../core/bindings";
import type { BenchWay } from "../../state/settings.svelte";

export const WAYS: readonly BenchWay[] = ["degrees", "square", "gauge", "saw"];

export function settingsOf(ways: Ways, way: BenchWay): Figure[] {
  return ways[way];
}
