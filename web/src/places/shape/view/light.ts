// A soft sky, a sun from the south, and a little light from where the eye is, so that no side is lost in the dark.

import { DirectionalLight, Group, HemisphereLight, type Camera } from "three";
import { along, less, type Point } from "./sight";

/** From the roof to the sun. */
const TO_SUN: Point = [0.3, -0.62, 0.85];
/** Shares of the light; together a face that has all of it shows its own colour. three.js divides by pi. */
const SKY = 0.6 * Math.PI;
const SUN = 0.36 * Math.PI;
const EYE = 0.2 * Math.PI;
/** What comes up from the ground, warm and half as bright as the sky. */
const FROM_BELOW = 0xa88c64;
const SHADOW_PX = 2048;
const SHADOW_BLUR = 2.5;
/** How much of the sun a shadow takes. */
const SHADOW = 0.8;
/** Share of the depth of the shadow by which faces do not shade themselves. */
const SHADOW_BIAS = -0.0006;

export class Light {
  readonly group = new Group();
  readonly #sun = new DirectionalLight(0xffffff, SUN);
  readonly #eye = new DirectionalLight(0xffffff, EYE);

  constructor() {
    const sky = new HemisphereLight(0xffffff, FROM_BELOW, SKY);
    sky.position.set(0, 0, 1);
    const { shadow } = this.#sun;
    this.#sun.castShadow = true;
    shadow.mapSize.set(SHADOW_PX, SHADOW_PX);
    shadow.radius = SHADOW_BLUR;
    shadow.intensity = SHADOW;
    shadow.bias = SHADOW_BIAS;
    this.group.add(sky, this.#sun, this.#sun.target, this.#eye, this.#eye.target);
  }

  /** Puts the sun so that the whole roof, and its shadow on the ground, is in its light. */
  aim(low: Point, high: Point): void {
    const size = less(high, low);
    const radius = Math.hypot(...size) / 2;
    const middle: Point = [low[0] + size[0] / 2, low[1] + size[1] / 2, low[2] + size[2] / 2];
    this.#sun.position.set(...along(middle, TO_SUN, radius * 2));
    this.#sun.target.position.set(...middle);
    const { camera } = this.#sun.shadow;
    [camera.left, camera.right, camera.bottom, camera.top] = [-radius, radius, -radius, radius];
    [camera.near, camera.far] = [radius * 0.5, radius * 4];
    camera.updateProjectionMatrix();
  }

  /** The light of the eye comes from over its right shoulder. */
  follow(camera: Camera): void {
    const m = camera.matrixWorld.elements;
    const way = [0, 1, 2].map((k) => m[8 + k]! + m[k]! * 0.35 + m[4 + k]! * 0.5);
    this.#eye.position.set(way[0]!, way[1]!, way[2]!);
  }
}
