// Elements of the page that are held at points of the roof: handles, letters of walls, sizes.

import type { Crowd } from "./crowd";
import type { Projector } from "./projector";
import type { Point } from "./sight";

interface Pin {
  point: Point;
  /** Stands even where it covers others. */
  firm: boolean;
  width: number;
  height: number;
}

export class Pins {
  readonly #pins = new Map<HTMLElement, Pin>();
  /** Sizes as measured, and of which content: asking the page for a size makes it lay itself out. */
  readonly #sizes = new WeakMap<HTMLElement, { content: string; width: number; height: number }>();

  constructor(private readonly ask: () => void) {}

  /** Holds an element at a point until the function that it gives back is called. */
  hold(element: HTMLElement, point: Point, firm: boolean, content: string): () => void {
    let size = this.#sizes.get(element);
    if (size?.content !== content) {
      size = { content, width: element.offsetWidth, height: element.offsetHeight };
      this.#sizes.set(element, size);
    }
    this.#pins.set(element, { point, firm, width: size.width, height: size.height });
    this.ask();
    return () => this.#pins.delete(element);
  }

  /** Firm pins come first, so that the others give way to them. */
  place(view: Projector, crowd: Crowd): void {
    for (const firm of [true, false]) {
      for (const [element, pin] of this.#pins) {
        if (pin.firm !== firm) continue;
        const spot = view.spot(pin.point);
        const inside = spot && spot.x >= 0 && spot.x <= view.width && spot.y >= 0 && spot.y <= view.height;
        const seen = inside && (crowd.admit({ ...spot, width: pin.width, height: pin.height }) || firm);
        element.style.visibility = seen ? "visible" : "hidden";
        if (seen) move(element, spot.x, spot.y);
      }
    }
  }
}

export function move(element: HTMLElement, x: number, y: number): void {
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
}
