// A soft sky and a sun from the south-west, as in the afternoon; the shadows tell what lies in front of what.

import { type DirectionalLight, type HemisphereLight, type Scene as Stage } from "three";
import { along, less, type Point } from "./sight";

/** From the roof to the sun. */
const TO_SUN: Point = [-0.42, -0.6, 0.9];
const SHADOW_PX = 2048;

export function lightUp(stage: Stage, sky: HemisphereLight, sun: DirectionalLight): void {
  // Together they give a face that looks at the sun its own colour, and never more than white.
  sky.color.setHex(0xffffff);
  sky.groundColor.setHex(0xb9b2a8);
  sky.intensity = Math.PI * 0.66;
  sky.position.set(0, 0, 1);
  sun.color.setHex(0xffffff);
  sun.intensity = Math.PI * 0.44;
  sun.castShadow = true;
  sun.shadow.mapSize.set(SHADOW_PX, SHADOW_PX);
  sun.shadow.radius = 2.5;
  sun.shadow.intensity = 0.75;
  stage.add(sky, sun, sun.target);
}

/** Puts the sun so that the whole roof is in its light and its shadow. */
export function aim(sun: DirectionalLight, low: Point, high: Point): void {
  const size = less(high, low);
  const radius = Math.hypot(...size) / 2;
  const middle: Point = [low[0] + size[0] / 2, low[1] + size[1] / 2, low[2] + size[2] / 2];
  sun.position.set(...along(middle, TO_SUN, radius * 2));
  sun.target.position.set(...middle);
  const camera = sun.shadow.camera;
  // The shadow on the ground is longer than the roof.
  [camera.left, camera.right, camera.bottom, camera.top] = [-radius, radius, -radius, radius];
  [camera.near, camera.far] = [radius * 0.2, radius * 5];
  // Half a px of the shadow, so that faces do not shade themselves.
  sun.shadow.bias = -0.0012;
  camera.updateProjectionMatrix();
}
