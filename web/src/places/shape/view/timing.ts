// Times that others can read: `performance.getEntriesByName("seatcut:scene")`.

/** So many of a name are kept; then they are thrown away, so that a long day fills no memory. */
const KEPT = 2000;
const counts = new Map<string, number>();

export function timed<T>(name: string, work: () => T): T {
  const start = performance.now();
  const result = work();
  record(name, start);
  return result;
}

export function record(name: string, start: number): void {
  const count = (counts.get(name) ?? 0) + 1;
  if (count > KEPT) performance.clearMeasures(name);
  counts.set(name, count > KEPT ? 1 : count);
  performance.measure(name, { start, end: performance.now() });
}
