// The slopes as thin see-through sheets on the rafters; the chosen one stands out.

import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, MeshLambertMaterial } from "three";
import type { Scene } from "../../../core/bindings";
import * as growing from "./growing";
import { mix, word, type Palette } from "./palette";
import { paint, type Look } from "./tints";

/** How much of what is behind it a sheet hides. */
const SHEET = 0.2;
const CHOSEN_SHEET = 0.5;
/** With the sheets put away, the chosen one is still shown, faintly. */
const CHOSEN_ALONE = 0.4;
/** Sheets hide behind timbers so thick, mm: wood keeps its colour and the sheet is seen between the rafters. */
const BEHIND = 120;
/** Moves the depth of a point, and not its place on the screen, away from the eye. */
const PUSH = /* glsl */ `
  #include <project_vertex>
  vec4 pushed = projectionMatrix * vec4(mvPosition.xyz + normalize(mvPosition.xyz) * ${BEHIND.toFixed(1)}, 1.0);
  gl_Position.z = pushed.z / pushed.w * gl_Position.w;
`;

export class Slopes {
  readonly mesh: Mesh<BufferGeometry, MeshLambertMaterial>;
  #position: BufferAttribute | null = null;
  #colour: BufferAttribute | null = null;
  #words = new Uint32Array(0);

  constructor() {
    const material = new MeshLambertMaterial({
      vertexColors: true,
      flatShading: true,
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
    });
    material.onBeforeCompile = (shader) => {
      shader.vertexShader = shader.vertexShader.replace("#include <project_vertex>", PUSH);
    };
    this.mesh = new Mesh(new BufferGeometry(), material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 3;
  }

  take(buffer: Float32Array): void {
    const count = buffer.length / 3;
    if (!growing.holds(this.#position, count)) this.#grow(count);
    if (!this.#position) return;
    (this.#position.array as Float32Array).set(buffer);
    growing.send(this.#position, count);
    this.mesh.geometry.setDrawRange(0, count);
  }

  dress(scene: Scene, look: Look, palette: Palette): void {
    // Nothing lies between the eye and a timber that is chosen.
    const sheets = look.slopes && look.timber === null;
    for (const slope of scene.slopes) {
      const chosen = look.wall !== null && slope.walls.includes(look.wall);
      const colour = chosen ? mix(palette.chosen, palette.slope, 0.25) : palette.slope;
      const alpha = chosen ? (sheets ? CHOSEN_SHEET : CHOSEN_ALONE) : sheets ? SHEET : 0;
      paint(this.#words, slope.triangles, word(colour, alpha));
    }
    if (this.#colour) growing.send(this.#colour, this.#words.length);
    this.mesh.visible = sheets || look.wall !== null;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }

  #grow(count: number): void {
    const room = growing.room(count);
    this.#words = new Uint32Array(room);
    this.#position = growing.points(new Float32Array(room * 3), 3);
    this.#colour = growing.points(new Uint8Array(this.#words.buffer), 4, true);
    this.mesh.geometry.dispose();
    this.mesh.geometry = new BufferGeometry();
    this.mesh.geometry.setAttribute("position", this.#position);
    this.mesh.geometry.setAttribute("color", this.#colour);
  }
}
