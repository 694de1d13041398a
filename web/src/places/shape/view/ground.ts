// What the roof stands over: a ground that takes its shadow, a grid of metres, and the plate lines.

import {
  BufferAttribute,
  BufferGeometry,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  PlaneGeometry,
  ShadowMaterial,
} from "three";
import { brightness, hex, mix, word, type Palette } from "./palette";
import { less, type Point } from "./sight";

/** A line of the grid every metre. */
const METRE = 1000;
/** The grid reaches past the roof by this share of its size, fading out. */
const MARGIN = 0.75;
/** Below the lowest timber, mm, so that nothing flickers with it. */
const BELOW = 20;
/** How dark the shadow is: on a light ground, on a dark one. */
const SHADOW = 0.2;
const SHADOW_AT_NIGHT = 0.5;
/** The grid is the ground with so much of the text's colour in it: on a light ground, on a dark one. */
const GRID = 0.13;
const GRID_AT_NIGHT = 0.08;

export class Ground {
  readonly group = new Group();
  readonly #shade = new Mesh(new PlaneGeometry(1, 1), new ShadowMaterial({ opacity: SHADOW }));
  readonly #grid = new LineSegments(
    new BufferGeometry(),
    new LineBasicMaterial({ vertexColors: true, transparent: true, depthWrite: false }),
  );
  #low: Point = [0, 0, 0];
  #high: Point = [0, 0, 0];

  constructor() {
    this.#shade.receiveShadow = true;
    this.#shade.material.depthWrite = false;
    this.#shade.renderOrder = -1;
    this.#grid.renderOrder = -2;
    this.#grid.frustumCulled = false;
    this.group.add(this.#grid, this.#shade);
  }

  lay(low: Point, high: Point, palette: Palette): void {
    if (less(low, this.#low).every((d) => d === 0) && less(high, this.#high).every((d) => d === 0)) return;
    this.#low = low;
    this.#high = high;
    const size = less(high, low);
    const level = low[2] - BELOW;
    this.#shade.scale.set(size[0] * 4, size[1] * 4, 1);
    this.#shade.position.set(low[0] + size[0] / 2, low[1] + size[1] / 2, level);
    this.#rule(low, high, level, palette);
  }

  colour(palette: Palette): void {
    const night = isNight(palette);
    this.#shade.material.color.setHex(night ? 0 : hex(palette.text));
    this.#shade.material.opacity = night ? SHADOW_AT_NIGHT : SHADOW;
    const [low, high] = [this.#low, this.#high];
    this.#low = [0, 0, 0];
    this.#high = [0, 0, 0];
    this.lay(low, high, palette);
  }

  dispose(): void {
    this.#shade.geometry.dispose();
    this.#shade.material.dispose();
    this.#grid.geometry.dispose();
    this.#grid.material.dispose();
  }

  #rule(low: Point, high: Point, level: number, palette: Palette): void {
    const reach = Math.max(high[0] - low[0], high[1] - low[1]) * MARGIN;
    const middle = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2] as const;
    const radius = Math.max(high[0] - low[0], high[1] - low[1]) / 2 + reach;
    const points: number[] = [];
    const words: number[] = [];
    const colour = mix(palette.ground, palette.text, isNight(palette) ? GRID_AT_NIGHT : GRID);
    const put = (x: number, y: number) => {
      const far = Math.hypot(x - middle[0], y - middle[1]) / radius;
      points.push(x, y, level);
      words.push(word(colour, Math.max(0, 1 - far * far)));
    };
    const from = (at: number) => Math.floor((at - radius) / METRE) * METRE;
    const to = (at: number) => at + radius;
    for (let x = from(middle[0]); x <= to(middle[0]); x += METRE) {
      for (let y = from(middle[1]); y < to(middle[1]); y += METRE) {
        put(x, y);
        put(x, y + METRE);
        put(x, y);
        put(x + METRE, y);
      }
    }
    this.#grid.geometry.dispose();
    this.#grid.geometry = new BufferGeometry();
    this.#grid.geometry.setAttribute("position", new BufferAttribute(new Float32Array(points), 3));
    const bytes = new Uint8Array(new Uint32Array(words).buffer);
    this.#grid.geometry.setAttribute("color", new BufferAttribute(bytes, 4, true));
  }
}

function isNight({ ground, text }: Palette): boolean {
  return brightness(ground) < brightness(text);
}
