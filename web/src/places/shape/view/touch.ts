// What a finger touches: a timber, a slope, or the ground. Fingers are thicker than rafters look on a phone, so
// when a touch goes between two of them, the nearest within a finger's width is meant.

import type { Run, Scene } from "../../../core/bindings";
import type { SceneBuffers } from "../../../state/session";
import { boxes, first, type Hit, type Ray } from "./picking";
import type { Projector } from "./projector";
import { along, type Point } from "./sight";
import type { Look, Tint } from "./tints";

/** `level`: where the touch meets the level of the plates, whatever stands in between. */
export type Touched =
  | { is: "timber"; mark: string; level: Point | null }
  | { is: "wall"; wall: string; level: Point | null }
  | { is: "ground"; level: Point }
  | { is: "nothing" };

/** Rings about the middle of the finger, px, and how many tries on each. */
const RINGS = [5, 10, 15];
const TRIES = 8;
/** A timber so close under a slope belongs to it: the depth of a hip, and more when seen from the side, mm. */
const UNDER_SLOPE = 600;

export class Touch {
  #scene: Scene | null = null;
  #buffers: SceneBuffers | null = null;
  #timberRuns: Run[] = [];
  #slopeRuns: Run[] = [];
  #timberBoxes: Float32Array | null = null;
  #slopeBoxes: Float32Array | null = null;
  #tints: readonly Tint[] = [];
  #slopes = false;

  take(scene: Scene, buffers: SceneBuffers): void {
    this.#scene = scene;
    this.#buffers = buffers;
    this.#timberRuns = scene.members.map((member) => member.triangles);
    this.#slopeRuns = scene.slopes.map((slope) => slope.triangles);
    // Measured when a finger comes down, not while one drags.
    this.#timberBoxes = null;
    this.#slopeBoxes = null;
  }

  see(tints: readonly Tint[], look: Look): void {
    this.#tints = tints;
    this.#slopes = look.slopes || look.wall !== null;
  }

  at(view: Projector, x: number, y: number): Touched {
    const straight = view.ray(x, y);
    const level = onLevel(straight);
    const timber = this.#timber(straight);
    const slope = this.#slopes ? this.#slope(straight) : null;
    if (timber && (!slope || timber.far < slope.far + UNDER_SLOPE)) return this.#asTimber(timber, level);
    if (slope) return this.#asWall(slope, level);
    for (const ring of RINGS) {
      let best: Hit | null = null;
      for (let k = 0; k < TRIES; k++) {
        const way = (k / TRIES) * 2 * Math.PI;
        const ray = view.ray(x + ring * Math.cos(way), y + ring * Math.sin(way));
        const hit = this.#timber(ray);
        if (hit && (!best || hit.far < best.far)) best = hit;
      }
      if (best) return this.#asTimber(best, level);
    }
    return level ? { is: "ground", level } : { is: "nothing" };
  }

  /** Solid timbers come before see-through ones. */
  #timber(ray: Ray): Hit | null {
    const points = this.#buffers?.timbers;
    if (!points) return null;
    this.#timberBoxes ??= boxes(points, this.#timberRuns);
    const around = this.#timberBoxes;
    const of = (presence: Tint["presence"]) =>
      first(ray, points, this.#timberRuns, around, (k) => this.#tints[k]?.presence === presence);
    return of("solid") ?? of("faded");
  }

  #slope(ray: Ray): Hit | null {
    const points = this.#buffers?.slopes;
    if (!points) return null;
    this.#slopeBoxes ??= boxes(points, this.#slopeRuns);
    return first(ray, points, this.#slopeRuns, this.#slopeBoxes, () => true);
  }

  #asTimber(hit: Hit, level: Point | null): Touched {
    const mark = this.#scene?.members[hit.run]?.mark;
    return mark === undefined ? { is: "nothing" } : { is: "timber", mark, level };
  }

  #asWall(hit: Hit, level: Point | null): Touched {
    const wall = this.#scene?.slopes[hit.run]?.wall;
    return wall === undefined ? { is: "nothing" } : { is: "wall", wall, level };
  }
}

function onLevel(ray: Ray): Point | null {
  const far = ray.way[2] === 0 ? -1 : -ray.from[2] / ray.way[2];
  return far > 0 ? along(ray.from, ray.way, far) : null;
}
