// All timbers as one body of triangles: drawn once solid and once see-through, by numbers of points.

import { BufferAttribute, BufferGeometry, Group, Mesh, MeshLambertMaterial } from "three";
import type { Scene } from "../../../core/bindings";
import * as growing from "./growing";
import { gather, paint, type Tint } from "./tints";

export class Timbers {
  readonly group = new Group();
  readonly #solid: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly #faded: Mesh<BufferGeometry, MeshLambertMaterial>;
  #position: BufferAttribute | null = null;
  #colour: BufferAttribute | null = null;
  #words = new Uint32Array(0);

  constructor() {
    const solid = new MeshLambertMaterial({ vertexColors: true, flatShading: true });
    // Pulled back a little, so that arrises and slopes lie on top of faces.
    solid.polygonOffset = true;
    solid.polygonOffsetFactor = 1;
    solid.polygonOffsetUnits = 1;
    const faded = new MeshLambertMaterial({ vertexColors: true, flatShading: true, transparent: true });
    faded.depthWrite = false;
    this.#solid = new Mesh(new BufferGeometry(), solid);
    this.#faded = new Mesh(new BufferGeometry(), faded);
    this.#solid.castShadow = true;
    this.#solid.receiveShadow = true;
    this.#faded.renderOrder = 2;
    for (const mesh of [this.#solid, this.#faded]) {
      mesh.frustumCulled = false;
      this.group.add(mesh);
    }
  }

  /** Takes the points of a roof. They are copied: the buffer stays with its owner. */
  take(buffer: Float32Array): void {
    const count = buffer.length / 3;
    if (!growing.holds(this.#position, count)) this.#grow(count);
    if (!this.#position) return;
    (this.#position.array as Float32Array).set(buffer);
    growing.send(this.#position, count);
  }

  /** Gives every timber its look; `tints` in the order of the scene's members. */
  dress(scene: Scene, tints: readonly Tint[]): void {
    scene.members.forEach((member, k) => paint(this.#words, member.triangles, tints[k]?.face ?? 0));
    if (this.#colour) growing.send(this.#colour, this.#words.length);
    for (const [mesh, presence] of [
      [this.#solid, "solid"],
      [this.#faded, "faded"],
    ] as const) {
      const index = mesh.geometry.index;
      if (!index) continue;
      const n = gather(index.array as Uint32Array, scene.members, tints, presence);
      growing.send(index, n);
      mesh.geometry.setDrawRange(0, n);
      mesh.visible = n > 0;
    }
  }

  /** Throws away what the graphics card holds. */
  dispose(): void {
    for (const mesh of [this.#solid, this.#faded]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
  }

  #grow(count: number): void {
    const room = growing.room(count);
    this.#words = new Uint32Array(room);
    this.#position = growing.points(new Float32Array(room * 3), 3);
    this.#colour = growing.points(new Uint8Array(this.#words.buffer), 4, true);
    for (const mesh of [this.#solid, this.#faded]) {
      mesh.geometry.dispose();
      mesh.geometry = new BufferGeometry();
      mesh.geometry.setAttribute("position", this.#position);
      mesh.geometry.setAttribute("color", this.#colour);
      mesh.geometry.setIndex(growing.points(new Uint32Array(room), 1));
    }
  }
}
