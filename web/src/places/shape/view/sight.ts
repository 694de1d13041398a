// Where the eye stands and what it looks at. Pure sums of the camera, nothing of the roof.
// Angles in radians, lengths in mm; x east, y north, z up.

export type Point = readonly [number, number, number];

/** One way of looking at the roof. The eye stands `away` from the target, `turn` round it and `lift` above it. */
export interface Sight {
  /** What is looked at. */
  readonly target: Point;
  /** Where the eye stands round the target, anticlockwise from the east. */
  readonly turn: number;
  /** How far the eye stands above the level of the target. */
  readonly lift: number;
  /** Half the height that is seen at the target. */
  readonly reach: number;
  /** Angle of view, upright. */
  readonly field: number;
}

/** Right, up and back of the eye, unit vectors. */
export interface Axes {
  readonly right: Point;
  readonly up: Point;
  readonly back: Point;
}

/** Angle of view when walking round the roof: near enough to be a thing, far enough not to be bent. */
export const ROUND_FIELD = rad(32);
/** So small that level lines stay level: a plan or an elevation to the eye. */
export const FLAT_FIELD = rad(2);
/** Angle of view when standing in the roof: much of what a head sees that turns a little. */
export const STAND_FIELD = rad(68);
/** Eye height of a person, mm. */
export const EYE_HEIGHT = 1600;
/** One step, mm. */
export const STEP = 700;
/** The lowest that the eye goes round the roof: a little from below, to see the eaves. */
const LOWEST = rad(-25);
const HIGHEST = rad(90);
/** How far up and down a head nods. */
const NOD = rad(85);
/** Least and greatest half height in view, mm: a joint, a street. */
const NEAREST = 120;
const FARTHEST = 200_000;
/** How far ahead the target lies while standing, mm; any length does, it only carries the direction. */
const AHEAD = 1000;
/** Share of the screen that the roof fills after fitting; the rest is air for marks and fingers. */
const FILL = 0.86;
/** A fit comes to rest within a px in so many rounds. */
const FIT_ROUNDS = 8;

export function rad(deg: number): number {
  return (deg * Math.PI) / 180;
}

export function axes(sight: Pick<Sight, "turn" | "lift">): Axes {
  const [c, s] = [Math.cos(sight.turn), Math.sin(sight.turn)];
  const [cl, sl] = [Math.cos(sight.lift), Math.sin(sight.lift)];
  return { right: [-s, c, 0], up: [-c * sl, -s * sl, cl], back: [c * cl, s * cl, sl] };
}

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function along(from: Point, way: Point, by: number): Point {
  return [from[0] + way[0] * by, from[1] + way[1] * by, from[2] + way[2] * by];
}

export function less(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** From the eye to the target, mm. */
export function away(sight: Pick<Sight, "reach" | "field">): number {
  return sight.reach / Math.tan(sight.field / 2);
}

export function eye(sight: Sight): Point {
  return along(sight.target, axes(sight).back, away(sight));
}

/**
 * A look from a side at points (three numbers each), so that all are in view and none sits in a corner.
 * `aspect` is width over height of the screen.
 */
export function fit(
  points: ArrayLike<number>,
  way: Pick<Sight, "turn" | "lift" | "field">,
  aspect: number,
): Sight {
  const { right, up, back } = axes(way);
  const slope = Math.tan(way.field / 2) * FILL;
  // In the axes of the eye, from where the first point lies.
  const size = points.length - (points.length % 3);
  const flat = new Float64Array(size);
  let [near, far] = [-Infinity, Infinity];
  for (let i = 0; i < size; i += 3) {
    const at: Point = [points[i]!, points[i + 1]!, points[i + 2]!];
    flat[i] = dot(at, right);
    flat[i + 1] = dot(at, up);
    flat[i + 2] = dot(at, back);
    near = Math.max(near, flat[i + 2]!);
    far = Math.min(far, flat[i + 2]!);
  }
  if (size === 0) return { target: [0, 0, 0], reach: AHEAD, ...way };
  const middle = (near + far) / 2;
  let [x, y, distance] = [flat[0]!, flat[1]!, (near - far + AHEAD) / slope];
  for (let turn = 0; turn < FIT_ROUNDS; turn++) {
    let [left, rightmost, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let i = 0; i < size; i += 3) {
      // Never behind the eye, however bad the guess is.
      const depth = Math.max(distance - (flat[i + 2]! - middle), distance / 10);
      const across = (flat[i]! - x) / depth;
      const upright = (flat[i + 1]! - y) / depth;
      left = Math.min(left, across);
      rightmost = Math.max(rightmost, across);
      low = Math.min(low, upright);
      high = Math.max(high, upright);
    }
    x += ((left + rightmost) / 2) * distance;
    y += ((low + high) / 2) * distance;
    distance *= Math.max((rightmost - left) / 2 / (slope * aspect), (high - low) / 2 / slope, 0.1);
  }
  const target = along(along(along([0, 0, 0], right, x), up, y), back, middle);
  const reach = clamp(distance * Math.tan(way.field / 2), NEAREST, FARTHEST);
  return { target, turn: way.turn, lift: way.lift, field: way.field, reach };
}

/** The screen, px, and what of it is covered at its top and bottom. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly bottom: number;
}

/** Fits into what of the screen is not covered; never into less than this share of it. */
const LEAST_CLEAR = 0.4;

export function fitWithin(
  points: ArrayLike<number>,
  way: Pick<Sight, "turn" | "lift" | "field">,
  { width, height, top, bottom }: Frame,
): Sight {
  const clear = Math.max(height * LEAST_CLEAR, height - top - bottom);
  const half = Math.tan(way.field / 2);
  // The clear part is a smaller screen with a smaller angle of view, its middle off the middle of the whole.
  const inner = fit(points, { ...way, field: 2 * Math.atan((half * clear) / height) }, width / clear);
  const whole = { ...inner, field: way.field, reach: away(inner) * half };
  return shifted(whole, 0, (top - bottom) / 2, height);
}

/** Walks round the target. */
export function turned(sight: Sight, by: number, up: number): Sight {
  return { ...sight, turn: sight.turn + by, lift: clamp(sight.lift + up, LOWEST, HIGHEST) };
}

/** Turns the head: the eye stays where it is. */
export function lookedAround(sight: Sight, by: number, up: number): Sight {
  const from = eye(sight);
  const next = { ...sight, turn: sight.turn + by, lift: clamp(sight.lift - up, -NOD, NOD) };
  return { ...next, target: along(from, axes(next).back, -away(sight)) };
}

/** Stands on a place and looks level towards another. */
export function standing(at: Point, towards: Point): Sight {
  const turn = Math.atan2(at[1] - towards[1], at[0] - towards[0]);
  const reach = AHEAD * Math.tan(STAND_FIELD / 2);
  const lift = rad(-8);
  const { back } = axes({ turn, lift });
  const from: Point = [at[0], at[1], at[2] + EYE_HEIGHT];
  return { target: along(from, back, -AHEAD), turn, lift, reach, field: STAND_FIELD };
}

/** Steps ahead (or back, below 0) on the level. */
export function stepped(sight: Sight, by: number): Sight {
  const ahead: Point = [-Math.cos(sight.turn), -Math.sin(sight.turn), 0];
  return { ...sight, target: along(sight.target, ahead, by) };
}

/** Climbs up or down. */
export function climbed(sight: Sight, by: number): Sight {
  return { ...sight, target: along(sight.target, [0, 0, 1], by) };
}

/** mm at the target that one px shows. */
export function mmPerPx(sight: Sight, screenHeight: number): number {
  return (2 * sight.reach) / screenHeight;
}

/** Moves the paper under the eye, by px. */
export function shifted(sight: Sight, dx: number, dy: number, screenHeight: number): Sight {
  const { right, up } = axes(sight);
  const mm = mmPerPx(sight, screenHeight);
  return { ...sight, target: along(along(sight.target, right, -dx * mm), up, dy * mm) };
}

/** Comes nearer (factor below 1) or goes away; what is at `at` on the screen (-1 to 1, y up) stays there. */
export function zoomed(sight: Sight, factor: number, at: readonly [number, number], aspect: number): Sight {
  const reach = clamp(sight.reach * factor, NEAREST, FARTHEST);
  const { right, up } = axes(sight);
  const gain = sight.reach - reach;
  const target = along(along(sight.target, right, at[0] * aspect * gain), up, at[1] * gain);
  return { ...sight, reach, target };
}

/** On the way from one sight to another; `t` from 0 to 1. */
export function between(from: Sight, to: Sight, t: number): Sight {
  const s = t * t * (3 - 2 * t);
  const mix = (a: number, b: number) => a + (b - a) * s;
  const bylog = (a: number, b: number) => Math.exp(mix(Math.log(a), Math.log(b)));
  const whole = 2 * Math.PI;
  const swing = ((((to.turn - from.turn) % whole) + whole + Math.PI) % whole) - Math.PI;
  return {
    target: [
      mix(from.target[0], to.target[0]),
      mix(from.target[1], to.target[1]),
      mix(from.target[2], to.target[2]),
    ],
    turn: from.turn + swing * s,
    lift: mix(from.lift, to.lift),
    reach: bylog(from.reach, to.reach),
    field: bylog(from.field, to.field),
  };
}
