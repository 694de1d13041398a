// Sets the camera to a sight.

import { Matrix4, Vector3, type PerspectiveCamera } from "three";
import type { Scene } from "../../../core/bindings";
import { Projector } from "./projector";
import { axes, dot, eye, less, type Point, type Sight } from "./sight";

/** Nothing nearer than this to the eye is drawn, mm. */
const NEAR = 60;
/** Near and far may be so far apart and no further, or the card can't tell what lies in front. */
const DEEPEST = 4000;
/** The ground and what else lies round the roof is drawn as far as this share of its size. */
const ROUND_ABOUT = 2.5;

/** Turns the camera to a sight and gives the projector that goes with it. */
export function see(
  sight: Sight,
  camera: PerspectiveCamera,
  width: number,
  height: number,
  { low, high }: Scene,
): Projector {
  const { right, up, back } = axes(sight);
  const from = eye(sight);
  const middle: Point = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  const size = Math.hypot(...less(high, low)) * ROUND_ABOUT;
  const depth = dot(less(from, middle), back);
  camera.far = Math.max(depth + size, 10 * NEAR);
  camera.near = Math.max(NEAR, depth - size, camera.far / DEEPEST);
  camera.fov = (sight.field * 180) / Math.PI;
  camera.aspect = width / height;
  camera.updateProjectionMatrix();
  const turn = new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...back));
  // The sight says where it stands; three.js must not put it back.
  camera.matrixAutoUpdate = false;
  camera.matrix.copy(turn).setPosition(...from);
  camera.updateMatrixWorld(true);
  const forward = new Matrix4().multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
  return new Projector(forward.elements, forward.clone().invert().elements, from, width, height);
}
