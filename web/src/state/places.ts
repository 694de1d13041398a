// The places of a job, in the order of the day. Those that are not built are not there.

import type { Component } from "svelte";
import type { Place } from "./session";

const built = import.meta.glob<{ default: Component<Place> }>([
  "../places/measure/Measure.svelte",
  "../places/shape/Shape.svelte",
  "../places/order/Order.svelte",
  "../places/bench/Bench.svelte",
  "../places/site/Site.svelte",
]);

export type PlaceName = "measure" | "shape" | "order" | "bench" | "site";

export interface PlaceEntry {
  name: PlaceName;
  load(): Promise<{ default: Component<Place> }>;
}

const ORDER: [PlaceName, string][] = [
  ["measure", "../places/measure/Measure.svelte"],
  ["shape", "../places/shape/Shape.svelte"],
  ["order", "../places/order/Order.svelte"],
  ["bench", "../places/bench/Bench.svelte"],
  ["site", "../places/site/Site.svelte"],
];

export const places: readonly PlaceEntry[] = ORDER.flatMap(([name, path]) => {
  const load = built[path];
  return load ? [{ name, load }] : [];
});

/** Where a job opens: on its roof, if that can be shown. */
export function firstPlace(): PlaceName | null {
  return (places.find((place) => place.name === "shape") ?? places[0])?.name ?? null;
}
