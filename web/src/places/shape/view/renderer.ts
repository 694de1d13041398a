// The screen: one canvas, drawn when something changed and never otherwise.

import { PCFShadowMap, PerspectiveCamera, Scene, WebGLRenderer } from "three";

/** More px than this per CSS px cost much and show nothing at arm's length. */
const MOST_DENSE = 2;

/** Fault when the device has no 3-D drawing. */
export class NoDrawing extends Error {}

export class Screen {
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera();
  /** CSS px. */
  width = 1;
  height = 1;
  density = 1;
  readonly #renderer: WebGLRenderer;
  readonly #observer: ResizeObserver;
  #asked = 0;
  #background = 0;
  #lost = false;

  /** `before` is called before each frame with the time, ms, and says whether another follows. */
  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly before: (now: number) => boolean,
    private readonly resized: () => void,
    private readonly lost: (lost: boolean) => void,
  ) {
    try {
      this.#renderer = new WebGLRenderer({ canvas, antialias: true, powerPreference: "low-power" });
    } catch (error) {
      throw new NoDrawing(String(error));
    }
    this.#renderer.shadowMap.enabled = true;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#renderer.shadowMap.autoUpdate = false;
    canvas.addEventListener("webglcontextlost", this.#onlost);
    canvas.addEventListener("webglcontextrestored", this.#onback);
    this.#observer = new ResizeObserver(() => this.#size());
    this.#observer.observe(canvas.parentElement ?? canvas);
    this.#size();
  }

  /** Asks for a frame. */
  ask = (): void => {
    if (this.#asked === 0 && !this.#lost) this.#asked = requestAnimationFrame(this.#frame);
  };

  /** The shadows are cast anew with the next frame. */
  castShadows(): void {
    this.#renderer.shadowMap.needsUpdate = true;
    this.ask();
  }

  background(hex: number): void {
    this.#background = hex;
    this.#renderer.setClearColor(hex);
    this.ask();
  }

  dispose(): void {
    cancelAnimationFrame(this.#asked);
    this.#observer.disconnect();
    this.canvas.removeEventListener("webglcontextlost", this.#onlost);
    this.canvas.removeEventListener("webglcontextrestored", this.#onback);
    this.#renderer.dispose();
  }

  readonly #frame = (now: number): void => {
    this.#asked = 0;
    const more = this.before(now);
    this.#renderer.render(this.scene, this.camera);
    if (more) this.ask();
  };

  readonly #onlost = (event: Event): void => {
    event.preventDefault();
    this.#lost = true;
    this.lost(true);
  };

  readonly #onback = (): void => {
    this.#lost = false;
    // A new context knows nothing of what was set on the old one.
    this.background(this.#background);
    this.lost(false);
    this.castShadows();
  };

  #size(): void {
    const box = this.canvas.parentElement ?? this.canvas;
    this.width = Math.max(1, box.clientWidth);
    this.height = Math.max(1, box.clientHeight);
    this.density = Math.min(MOST_DENSE, devicePixelRatio || 1);
    this.#renderer.setPixelRatio(this.density);
    this.#renderer.setSize(this.width, this.height, false);
    this.resized();
    // Drawn at once: a canvas of a new size is empty until it is drawn.
    this.#frame(performance.now());
  }
}
