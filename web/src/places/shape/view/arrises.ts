// All arrises in one draw, as lines of so many px. The graphics card's own lines are a hair wide; a carpenter
// reads timbers by their arrises, so each is drawn as a thin ribbon that faces the eye.

import { BufferAttribute, InstancedBufferGeometry, Mesh, ShaderMaterial, Vector2 } from "three";
import type { InstancedBufferAttribute } from "three";
import type { Run, Scene } from "../../../core/bindings";
import * as growing from "./growing";
import { brightness, type Palette } from "./palette";
import { clamp } from "./sight";
import { paintPairs, type Tint } from "./tints";

/** Arrises lie this many px in front of their faces, so that they are not eaten by them. */
const PULL_PX = 1.5;
/** Width of an arris, CSS px. */
const WIDTH = 1.2;
/** From here on, mm in a CSS px, a rafter is only some px wide and its arrises would hide its wood: they pale. */
const FULL_MM = 6;
const PALEST = 0.13;
/** But wood that is hardly told from the ground, as in the sun, lives by its arrises. */
const PALEST_ALIKE = 0.7;
/** From this difference of brightness (of 255) on, wood and ground are told apart without them. */
const APART = 22;

const VERTEX = /* glsl */ `
  attribute vec3 from;
  attribute vec3 to;
  attribute vec4 tint;
  uniform vec2 half_screen;
  uniform float width;
  uniform float pull;
  uniform float near;
  uniform float strength;
  varying vec4 paint;

  void main() {
    paint = vec4(tint.rgb, tint.a * strength);
    vec4 a = modelViewMatrix * vec4(from, 1.0);
    vec4 b = modelViewMatrix * vec4(to, 1.0);
    bool behind = a.z > -near && b.z > -near;
    if (tint.a == 0.0 || behind) {
      gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      return;
    }
    // What reaches behind the eye is cut off at the near plane: it has no place on the screen.
    if (a.z > -near) a = mix(a, b, (-near - a.z) / (b.z - a.z));
    if (b.z > -near) b = mix(b, a, (-near - b.z) / (a.z - b.z));
    a.xyz -= normalize(a.xyz) * pull;
    b.xyz -= normalize(b.xyz) * pull;
    vec4 ca = projectionMatrix * a;
    vec4 cb = projectionMatrix * b;
    vec2 way = (cb.xy / cb.w - ca.xy / ca.w) * half_screen;
    float size = length(way);
    way = size > 0.0001 ? way / size : vec2(1.0, 0.0);
    vec4 c = position.x < 0.5 ? ca : cb;
    // A little longer than the arris, so that corners close.
    vec2 out_by = vec2(-way.y, way.x) * position.y + way * (position.x - 0.5);
    c.xy += out_by * width * 0.5 / half_screen * c.w;
    gl_Position = c;
  }
`;

const FRAGMENT = /* glsl */ `
  varying vec4 paint;
  void main() { gl_FragColor = paint; }
`;

export class Arrises {
  readonly mesh: Mesh<InstancedBufferGeometry, ShaderMaterial>;
  #ends: [InstancedBufferAttribute, InstancedBufferAttribute] | null = null;
  #tint: InstancedBufferAttribute | null = null;
  #words = new Uint32Array(0);
  #palest = PALEST;

  /** `through`: drawn over everything that stands in front of them. */
  constructor(private readonly through = false) {
    const material = new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      transparent: true,
      depthWrite: false,
      depthTest: !through,
      uniforms: {
        half_screen: { value: new Vector2(1, 1) },
        width: { value: 1 },
        pull: { value: 1 },
        near: { value: 1 },
        strength: { value: 1 },
      },
    });
    this.mesh = new Mesh(new InstancedBufferGeometry(), material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = through ? 4 : 1;
  }

  take(buffer: Float32Array): void {
    const count = buffer.length / 6;
    if (!growing.holds(this.#tint, count)) this.#grow(count);
    if (!this.#ends) return;
    const [from, to] = this.#ends.map((end) => end.array as Float32Array) as [Float32Array, Float32Array];
    for (let k = 0, i = 0, j = 0; k < count; k++) {
      from[i] = buffer[j]!;
      from[i + 1] = buffer[j + 1]!;
      from[i + 2] = buffer[j + 2]!;
      to[i] = buffer[j + 3]!;
      to[i + 1] = buffer[j + 4]!;
      to[i + 2] = buffer[j + 5]!;
      i += 3;
      j += 6;
    }
    for (const end of this.#ends) growing.send(end, count);
    this.mesh.geometry.instanceCount = count;
  }

  dress(scene: Scene, tints: readonly Tint[]): void {
    scene.members.forEach((member, k) => paintPairs(this.#words, member.arrises, tints[k]?.edge ?? 0));
    if (this.#tint) growing.send(this.#tint, this.#words.length);
  }

  /** Shows the arrises of one timber alone, in one colour. */
  showRun(buffer: Float32Array, run: Run, paint: number): void {
    this.take(buffer.subarray(run.first * 3, (run.first + run.count) * 3));
    this.#words.fill(paint);
    if (this.#tint) growing.send(this.#tint, this.#words.length);
  }

  /** Tells how large the screen is, px of the card, how many of them a CSS px has, and how many mm one shows. */
  screen(width: number, height: number, density: number, mmPerPx: number, near: number): void {
    const uniforms = this.mesh.material.uniforms;
    (uniforms["half_screen"]!.value as Vector2).set(width / 2, height / 2);
    uniforms["width"]!.value = WIDTH * density;
    uniforms["pull"]!.value = PULL_PX * mmPerPx;
    uniforms["near"]!.value = near;
    uniforms["strength"]!.value = this.through ? 1 : clamp(FULL_MM / (mmPerPx * density), this.#palest, 1);
  }

  colour({ ground, wood }: Palette): void {
    const alike = 1 - Math.min(1, Math.abs(brightness(ground) - brightness(wood)) / APART);
    this.#palest = PALEST + (PALEST_ALIKE - PALEST) * alike;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }

  #grow(count: number): void {
    const room = growing.room(count);
    this.#words = new Uint32Array(room);
    this.#ends = [
      growing.instances(new Float32Array(room * 3), 3),
      growing.instances(new Float32Array(room * 3), 3),
    ];
    this.#tint = growing.instances(new Uint8Array(this.#words.buffer), 4, true);
    const geometry = new InstancedBufferGeometry();
    // End (0 or 1) and side (-1 or 1) of the ribbon.
    const ribbon = new Float32Array([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0]);
    geometry.setAttribute("position", new BufferAttribute(ribbon, 3));
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    geometry.setAttribute("from", this.#ends[0]);
    geometry.setAttribute("to", this.#ends[1]);
    geometry.setAttribute("tint", this.#tint);
    this.mesh.geometry.dispose();
    this.mesh.geometry = geometry;
  }
}
