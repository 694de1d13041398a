// The ways to travel: round the roof, from above, from each side, and standing in it.
// Holds the sight, eases from one to the next, and turns strokes of a finger into moves.

import * as sight from "./sight";
import type { Point, Sight } from "./sight";

export type Way = "round" | "above" | "side" | "stand";

/** How long an eased move takes, ms: seen, not waited for. */
const EASE_MS = 420;
/** A stroke over the height of the screen walks half round. */
const STROKE = Math.PI;
/** One press of an arrow. */
const NUDGE = sight.rad(10);
/** Zoom of one press of + or -. */
const PRESS = 0.8;
/** The first look: from the south-east, as one comes up to a house, high enough to see into it. */
const FIRST = { turn: sight.rad(-60), lift: sight.rad(30), field: sight.ROUND_FIELD };
/** On a phone held upright: more from the end and from higher up, so that a long roof fills the screen. */
const FIRST_UPRIGHT = { turn: sight.rad(-38), lift: sight.rad(38), field: sight.ROUND_FIELD };
/** Straight down, north up. */
const ABOVE = { turn: sight.rad(-90), lift: sight.rad(90), field: sight.FLAT_FIELD };
/** The sides in the order in which they are walked: south, east, north, west. */
const SIDES = [-90, 0, 90, 180];

/** What lies over the picture and hides it, px: figures at its top, the ways to travel at its bottom. */
const COVERED = { top: 64, bottom: 76 };
/** On a stage lower than this, px, the figures are put away (over/Figures.svelte). */
const LOW_STAGE = 352;

export class Travel {
  way: Way = "round";
  /** Which side of `SIDES`. */
  side = 0;
  sight: Sight;
  #to: Sight | null = null;
  #from: Sight;
  #since = 0;
  #low: Point = [0, 0, 0];
  #high: Point = [0, 0, 0];
  #points: ArrayLike<number> = [];
  #width = 1;
  #height = 1;
  #moved = false;

  /** `changed` asks for a frame. */
  constructor(private readonly changed: () => void) {
    this.sight = sight.fit([], FIRST, 1);
    this.#from = this.sight;
  }

  /** The size of the screen, px. */
  screen(width: number, height: number): void {
    this.#width = width;
    this.#height = height;
    // The roof stays as it is looked at, and in view: a panel may have come up from below.
    if (!this.#moved) this.#jump(this.#fit(this.#to ?? this.sight));
  }

  /** What is travelled round: its box, and points that are to be in view. `anew` looks at the whole of it. */
  take(low: Point, high: Point, points: ArrayLike<number>, anew: boolean): void {
    this.#low = low;
    this.#high = high;
    this.#points = points;
    if (anew) {
      this.way = "round";
      this.#moved = false;
      this.#jump(this.#whole());
    }
  }

  /** Goes to a way of looking. From each side: a second press goes on to the next side. */
  go(way: Exclude<Way, "stand">): void {
    if (way === "side" && this.way === "side") this.side = (this.side + 1) % SIDES.length;
    this.way = way;
    this.#moved = false;
    this.#ease(this.#whole());
  }

  /** Stands on a place of the plan, at eye height above the level of the plates. */
  stand(x: number, y: number): void {
    const middle: Point = [(this.#low[0] + this.#high[0]) / 2, (this.#low[1] + this.#high[1]) / 2, 0];
    const near = Math.hypot(x - middle[0], y - middle[1]) < sight.STEP;
    // Right in the middle any direction will do: along the longer side.
    const long = this.#high[0] - this.#low[0] > this.#high[1] - this.#low[1];
    const towards: Point = near ? [x + (long ? 1 : 0), y + (long ? 0 : 1), 0] : middle;
    this.way = "stand";
    this.#moved = true;
    this.#ease(sight.standing([x, y, 0], towards));
  }

  /** All of the roof again, as this way of looking starts. */
  whole(): void {
    if (this.way === "stand") this.way = "round";
    this.#moved = false;
    this.#ease(this.#whole());
  }

  /** A stroke of one finger, px. */
  stroke(dx: number, dy: number): void {
    const k = STROKE / this.#height;
    if (this.way === "stand") this.#set(sight.lookedAround(this.sight, dx * k * 0.5, dy * k * 0.5));
    else if (this.way === "round") this.#set(sight.turned(this.sight, -dx * k, dy * k));
    else this.#set(sight.shifted(this.sight, dx, dy, this.#height));
  }

  /** A stroke of two fingers, or of the other button, px. */
  shift(dx: number, dy: number): void {
    if (this.way !== "stand") this.#set(sight.shifted(this.sight, dx, dy, this.#height));
  }

  /** Pinch or wheel; `at` from -1 to 1, y up. Standing, it is steps. */
  zoom(factor: number, at: readonly [number, number] = [0, 0]): void {
    if (this.way === "stand") this.#set(sight.stepped(this.sight, -Math.log(factor) * sight.STEP * 4));
    else this.#set(sight.zoomed(this.sight, factor, at, this.#width / this.#height));
  }

  /** One press of a button or an arrow. */
  press(what: "left" | "right" | "up" | "down" | "nearer" | "farther" | "higher" | "lower"): void {
    const from = this.#to ?? this.sight;
    const [across, rise] = { left: [-1, 0], right: [1, 0], up: [0, 1], down: [0, -1] }[what as "left"] ?? [
      0, 0,
    ];
    if (what === "nearer" || what === "farther") {
      const near = what === "nearer";
      this.#ease(
        this.way === "stand"
          ? sight.stepped(from, near ? sight.STEP : -sight.STEP)
          : sight.zoomed(from, near ? PRESS : 1 / PRESS, [0, 0], this.#width / this.#height),
      );
    } else if (what === "higher" || what === "lower") {
      this.#ease(sight.climbed(from, what === "higher" ? sight.STEP / 2 : -sight.STEP / 2));
    } else if (this.way === "stand") this.#ease(sight.lookedAround(from, -across! * NUDGE, -rise! * NUDGE));
    else if (this.way === "round") this.#ease(sight.turned(from, across! * NUDGE, rise! * NUDGE));
    else
      this.#ease(
        sight.shifted(from, (-across! * this.#height) / 8, (rise! * this.#height) / 8, this.#height),
      );
    this.#moved = true;
  }

  /** Moves on to `now`, ms. True while there is more to come. */
  tick(now: number): boolean {
    if (!this.#to) return false;
    const t = (now - this.#since) / EASE_MS;
    if (t >= 1 || still()) {
      this.sight = this.#to;
      this.#to = null;
      return false;
    }
    this.sight = sight.between(this.#from, this.#to, Math.max(0, t));
    return true;
  }

  #whole(): Sight {
    const way =
      this.way === "above"
        ? ABOVE
        : this.way === "side"
          ? { turn: sight.rad(SIDES[this.side] ?? 0), lift: 0, field: sight.FLAT_FIELD }
          : this.#width < this.#height
            ? FIRST_UPRIGHT
            : FIRST;
    return this.#fit(way);
  }

  #fit({ turn, lift, field }: Sight | typeof FIRST): Sight {
    const top = this.#height < LOW_STAGE ? 0 : COVERED.top;
    const frame = { width: this.#width, height: this.#height, top, bottom: COVERED.bottom };
    return sight.fitWithin(this.#points, { turn, lift, field }, frame);
  }

  #ease(to: Sight): void {
    this.#from = this.sight;
    this.#to = to;
    this.#since = performance.now();
    this.changed();
  }

  #jump(to: Sight): void {
    this.#to = null;
    this.sight = to;
    this.changed();
  }

  #set(to: Sight): void {
    this.#moved = true;
    this.#jump(to);
  }
}

/** Whether the person wants no moves that are not their own. */
function still(): boolean {
  return matchMedia("(prefers-reduced-motion: reduce)").matches;
}
