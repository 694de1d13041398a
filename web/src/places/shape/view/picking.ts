// Which timber or slope a ray meets first. Pure; by ranges of the buffers.

import type { Run } from "../../../core/bindings";
import type { Point } from "./sight";

export interface Ray {
  readonly from: Point;
  /** Unit vector. */
  readonly way: Point;
}

export interface Hit {
  /** Which run was met. */
  readonly run: number;
  /** How far along the ray, mm. */
  readonly far: number;
}

/** Boxes round runs: low x, y, z, high x, y, z, for each. */
export function boxes(points: Float32Array, runs: readonly Run[]): Float32Array {
  const all = new Float32Array(runs.length * 6);
  runs.forEach((run, k) => {
    let [lx, ly, lz, hx, hy, hz] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    const end = Math.min(points.length, (run.first + run.count) * 3);
    for (let i = run.first * 3; i + 2 < end; i += 3) {
      const [x, y, z] = [points[i]!, points[i + 1]!, points[i + 2]!];
      if (x < lx) lx = x;
      if (x > hx) hx = x;
      if (y < ly) ly = y;
      if (y > hy) hy = y;
      if (z < lz) lz = z;
      if (z > hz) hz = z;
    }
    all.set([lx, ly, lz, hx, hy, hz], k * 6);
  });
  return all;
}

/** The first run that the ray meets, of those that `seen` lets through. */
export function first(
  ray: Ray,
  points: Float32Array,
  runs: readonly Run[],
  around: Float32Array,
  seen: (run: number) => boolean,
): Hit | null {
  let best: Hit | null = null;
  runs.forEach((run, k) => {
    if (!seen(k) || !meetsBox(ray, around, k * 6, best?.far ?? Infinity)) return;
    const end = Math.min(points.length, (run.first + run.count) * 3);
    for (let i = run.first * 3; i + 8 < end; i += 9) {
      const far = meetsTriangle(ray, points, i);
      if (far !== null && far < (best?.far ?? Infinity)) best = { run: k, far };
    }
  });
  return best;
}

/** Which run a point of the buffer belongs to, by halving; runs lie in the order of the buffer. -1 for none. */
export function runOfPoint(runs: readonly Run[], point: number): number {
  let [low, high] = [0, runs.length - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const run = runs[middle]!;
    if (point < run.first) high = middle - 1;
    else if (point >= run.first + run.count) low = middle + 1;
    else return middle;
  }
  return -1;
}

function meetsBox(ray: Ray, around: Float32Array, at: number, nearer: number): boolean {
  let [enter, leave] = [0, nearer];
  for (let axis = 0; axis < 3; axis++) {
    const [from, way] = [ray.from[axis]!, ray.way[axis]!];
    const [low, high] = [around[at + axis]!, around[at + 3 + axis]!];
    if (Math.abs(way) < PARALLEL) {
      if (from < low || from > high) return false;
      continue;
    }
    const [a, b] = [(low - from) / way, (high - from) / way];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave;
}

/** Below this a direction counts as none: a ray of 1000 m leaves the plane by less than a micron. */
const PARALLEL = 1e-12;

/** Distance along the ray to a triangle of nine numbers, seen from either side. */
function meetsTriangle(ray: Ray, p: Float32Array, i: number): number | null {
  const [ax, ay, az] = [p[i]!, p[i + 1]!, p[i + 2]!];
  const [ux, uy, uz] = [p[i + 3]! - ax, p[i + 4]! - ay, p[i + 5]! - az];
  const [vx, vy, vz] = [p[i + 6]! - ax, p[i + 7]! - ay, p[i + 8]! - az];
  const [dx, dy, dz] = ray.way;
  const [hx, hy, hz] = [dy * vz - dz * vy, dz * vx - dx * vz, dx * vy - dy * vx];
  const area = ux * hx + uy * hy + uz * hz;
  if (Math.abs(area) < PARALLEL) return null;
  const [sx, sy, sz] = [ray.from[0] - ax, ray.from[1] - ay, ray.from[2] - az];
  const u = (sx * hx + sy * hy + sz * hz) / area;
  if (u < 0 || u > 1) return null;
  const [qx, qy, qz] = [sy * uz - sz * uy, sz * ux - sx * uz, sx * uy - sy * ux];
  const v = (dx * qx + dy * qy + dz * qz) / area;
  if (v < 0 || u + v > 1) return null;
  const far = (vx * qx + vy * qy + vz * qz) / area;
  return far > 0 ? far : null;
}
