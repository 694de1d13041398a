// What a finger on a handle means. Handles of slopes and ridges move plumb; the finger's ray is carried to that
// plumb line. This is a matter of the view: what becomes of the roof is the core's.

import type { Ray } from "./picking";
import type { Projector } from "./projector";
import { clamp, rad, type Point } from "./sight";

/** The core takes pitches in this range, degrees, and says so when asked for others. */
export const PITCH_RANGE = { least: 5, most: 80 } as const;
/** Fingers set pitches in steps of this many degrees, as they are spoken of. */
export const PITCH_STEP = 0.5;
/** Fingers set heights in steps of this many mm. */
export const HEIGHT_STEP = 5;
/** A metre of plumb line shorter than this on the screen, px, can't be followed: seen from above. */
const LEAST_METRE = 14;
/** Then a px of the finger is so many mm. */
const BLIND_MM = 8;

/** Height of the point of a plumb line that a ray passes nearest, mm. */
export function heightNearest(ray: Ray, x: number, y: number): number {
  const [dx, dy, dz] = ray.way;
  const level = dx * dx + dy * dy;
  if (level === 0) return ray.from[2];
  // Where the ray, seen from above, passes nearest to the line.
  const far = ((x - ray.from[0]) * dx + (y - ray.from[1]) * dy) / level;
  return ray.from[2] + far * dz;
}

/** A drag of a handle along its plumb line. */
export class PlumbDrag {
  readonly #slip: number;
  readonly #blind: boolean;

  constructor(
    view: Projector,
    readonly start: Point,
    x: number,
    private readonly startY: number,
  ) {
    const foot = view.spot(start);
    const metre = view.spot([start[0], start[1], start[2] + 1000]);
    this.#blind = !foot || !metre || Math.hypot(metre.x - foot.x, metre.y - foot.y) < LEAST_METRE;
    // Fingers seldom land on the middle of a handle; the handle must not jump when they do.
    this.#slip = this.#blind ? 0 : start[2] - heightNearest(view.ray(x, startY), start[0], start[1]);
  }

  /** Height that the finger asks for, mm. */
  height(view: Projector, x: number, y: number): number {
    if (this.#blind) return this.start[2] + (this.startY - y) * BLIND_MM;
    return heightNearest(view.ray(x, y), this.start[0], this.start[1]) + this.#slip;
  }
}

/** The pitch of a slope whose handle, `run` mm inside its wall, is lifted by `lift` mm from a pitch. */
export function pitchLifted(pitch: number, run: number, lift: number): number {
  const asked = (Math.atan2(run * Math.tan(rad(pitch)) + lift, run) * 180) / Math.PI;
  return clamp(Math.round(asked / PITCH_STEP) * PITCH_STEP, PITCH_RANGE.least, PITCH_RANGE.most);
}

/** How much higher the handle stands when the pitch is another, mm. */
export function liftOfPitch(from: number, to: number, run: number): number {
  return run * (Math.tan(rad(to)) - Math.tan(rad(from)));
}

/** How far a point lies off a line in plan, mm. */
export function offLine(
  point: Point,
  line: readonly [readonly [number, number], readonly [number, number]],
): number {
  const [[ax, ay], [bx, by]] = line;
  const size = Math.hypot(bx - ax, by - ay);
  if (size === 0) return Math.hypot(point[0] - ax, point[1] - ay);
  return Math.abs((bx - ax) * (point[1] - ay) - (by - ay) * (point[0] - ax)) / size;
}

/** A height in the steps of a finger. */
export function stepHeight(mm: number): number {
  return Math.round(mm / HEIGHT_STEP) * HEIGHT_STEP;
}
