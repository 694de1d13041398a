// The roof in 3-D: what is given to it is drawn, what a finger does is told. Knows nothing of jobs or sessions.

import { ColorManagement } from "three";
import type { Scene } from "../../../core/bindings";
import type { SceneBuffers } from "../../../state/session";
import { Arrises } from "./arrises";
import { see } from "./camera";
import { Light } from "./light";
import { Crowd } from "./crowd";
import { listen } from "./fingers";
import { Ground } from "./ground";
import { Labels, type Marked } from "./labels";
import { hex, read, watch, word, type Palette } from "./palette";
import { Pins } from "./pins";
import type { Projector } from "./projector";
import { Screen } from "./renderer";
import * as sight from "./sight";
import { Slopes } from "./slopes";
import { Timbers } from "./timbers";
import { keptMarks, tint, type Look, type Stage, type Tint } from "./tints";
import { timed } from "./timing";
import { Touch, type Touched } from "./touch";
import { Travel } from "./travel";

// The colours of a theme are shown as they are: what the page paints and what the roof is painted with must match.
ColorManagement.enabled = false;

export interface Tells {
  touched(what: Touched): void;
  lost(lost: boolean): void;
}

export class RoofView {
  readonly travel: Travel;
  readonly pins: Pins;
  readonly #screen: Screen;
  readonly #timbers = new Timbers();
  readonly #arrises = new Arrises();
  /** Of the chosen timber: it is found behind others, too. */
  readonly #outline = new Arrises(true);
  readonly #slopes = new Slopes();
  readonly #ground = new Ground();
  readonly #labels: Labels;
  readonly #light = new Light();
  readonly #touch = new Touch();
  readonly #stop: (() => void)[] = [];
  #palette: Palette;
  #scene: Scene | null = null;
  #buffers: SceneBuffers | null = null;
  #stages: ReadonlyMap<string, Stage> = new Map();
  #look: Look | null = null;
  #tints: Tint[] = [];
  #projector: Projector | null = null;

  constructor(canvas: HTMLCanvasElement, labels: HTMLElement, tell: Tells) {
    this.#palette = read(canvas);
    this.#labels = new Labels(labels);
    this.travel = new Travel(() => this.#ask());
    this.pins = new Pins(() => this.#ask());
    this.#screen = new Screen(
      canvas,
      (now) => this.#frame(now),
      () => this.#resized(),
      (lost) => tell.lost(lost),
    );
    this.#screen.scene.add(
      this.#light.group,
      this.#ground.group,
      this.#timbers.group,
      this.#arrises.mesh,
      this.#outline.mesh,
      this.#slopes.mesh,
    );
    this.#stop.push(
      watch(() => this.#recolour(read(canvas))),
      listen(canvas, {
        stroke: (dx, dy) => this.travel.stroke(dx, dy),
        shift: (dx, dy) => this.travel.shift(dx, dy),
        zoom: (factor, at) => this.travel.zoom(factor, at),
        touch: (x, y) => {
          if (this.#projector) tell.touched(this.#touch.at(this.#projector, x, y));
        },
      }),
    );
    this.#recolour(this.#palette);
    this.#resized();
  }

  /** Shows a roof. `anew` when it is another job, to be looked at as a whole. */
  show(scene: Scene, buffers: SceneBuffers, stages: ReadonlyMap<string, Stage>, anew: boolean): void {
    timed("seatcut:scene", () => {
      this.#scene = scene;
      this.#buffers = buffers;
      this.#stages = stages;
      this.#timbers.take(buffers.timbers);
      this.#arrises.take(buffers.arrises);
      this.#slopes.take(buffers.slopes);
      this.#touch.take(scene, buffers);
      this.#ground.lay(scene.low, scene.high, this.#palette);
      this.travel.take(scene.low, scene.high, buffers.arrises, anew);
      this.#light.aim(scene.low, scene.high);
      this.#dress();
    });
    this.#screen.castShadows();
  }

  /** Shows it in another way: what is chosen, which layers. */
  look(look: Look): void {
    this.#look = look;
    this.#dress();
    this.#screen.castShadows();
  }

  /** What is written at the timbers. */
  mark(marked: readonly Marked[]): void {
    this.#labels.show(marked);
    this.#ask();
  }

  /** From the roof to the screen, as it is drawn now. */
  get projector(): Projector | null {
    return this.#projector;
  }

  dispose(): void {
    for (const stop of this.#stop) stop();
    for (const part of [this.#timbers, this.#arrises, this.#outline, this.#slopes, this.#ground])
      part.dispose();
    this.#screen.dispose();
  }

  #ask(): void {
    // Travel and pins may ask while the screen is still being made.
    this.#screen?.ask();
  }

  #dress(): void {
    const [scene, look] = [this.#scene, this.#look];
    if (!scene || !look) return;
    const kept = keptMarks(scene.members, look.timber);
    this.#tints = scene.members.map((member, k) =>
      tint(member, k, this.#stages.get(member.mark), kept, look, this.#palette),
    );
    this.#timbers.dress(scene, this.#tints);
    this.#arrises.dress(scene, this.#tints);
    this.#slopes.dress(scene, look, this.#palette);
    const chosen = scene.members.find((member) => member.mark === look.timber);
    this.#outline.mesh.visible = chosen !== undefined;
    if (chosen && this.#buffers) {
      this.#outline.showRun(this.#buffers.arrises, chosen.arrises, word(this.#palette.chosen, 1));
    }
    this.#touch.see(this.#tints, look);
  }

  #recolour(palette: Palette): void {
    this.#palette = palette;
    this.#screen.background(hex(palette.ground));
    this.#ground.colour(palette);
    this.#arrises.colour(palette);
    this.#dress();
  }

  #resized(): void {
    if (!this.#screen) return;
    this.travel.screen(this.#screen.width, this.#screen.height);
  }

  /** All that a frame costs besides drawing. */
  #frame(now: number): boolean {
    const scene = this.#scene;
    if (!scene) return false;
    return timed("seatcut:frame", () => {
      const more = this.travel.tick(now);
      const { width, height, density, camera } = this.#screen;
      this.#projector = see(this.travel.sight, camera, width, height, scene);
      this.#light.follow(camera);
      const mm = sight.mmPerPx(this.travel.sight, height * density);
      for (const lines of [this.#arrises, this.#outline])
        lines.screen(width * density, height * density, density, mm, camera.near);
      const crowd = new Crowd();
      this.#labels.claim(this.#projector, crowd);
      this.pins.place(this.#projector, crowd);
      this.#labels.place(this.#projector, crowd);
      return more;
    });
  }
}
