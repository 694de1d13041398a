// Turns pointer events on the picture into strokes, pinches and touches.

export interface Strokes {
  /** One finger moved, px. */
  stroke(dx: number, dy: number): void;
  /** Two fingers, or the other mouse button, moved, px. */
  shift(dx: number, dy: number): void;
  /** Two fingers came together or apart, or the wheel turned; `at` from -1 to 1, y up. */
  zoom(factor: number, at: readonly [number, number]): void;
  /** A short touch, px from the top left. */
  touch(x: number, y: number): void;
}

/** A finger in a glove trembles this much in a touch, px. */
const TREMBLE = 9;
/** Longer than this is no touch, ms. */
const LONG = 700;
/** Zoom for a px of the wheel. */
const WHEEL = 0.0014;

interface Finger {
  x: number;
  y: number;
}

/** Listens until the function that it gives back is called. */
export function listen(to: HTMLElement, tell: Strokes): () => void {
  const fingers = new Map<number, Finger>();
  let start: { x: number; y: number; at: number } | null = null;

  const place = (x: number, y: number): readonly [number, number] => {
    const box = to.getBoundingClientRect();
    return [((x - box.left) / box.width) * 2 - 1, 1 - ((y - box.top) / box.height) * 2];
  };

  function down(event: PointerEvent): void {
    to.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    start = fingers.size === 1 ? { x: event.clientX, y: event.clientY, at: event.timeStamp } : null;
  }

  function move(event: PointerEvent): void {
    const finger = fingers.get(event.pointerId);
    if (!finger) return;
    const [dx, dy] = [event.clientX - finger.x, event.clientY - finger.y];
    if (fingers.size === 1) {
      if (start && Math.hypot(event.clientX - start.x, event.clientY - start.y) < TREMBLE) return;
      start = null;
      if (event.buttons & 2 || event.shiftKey) tell.shift(dx, dy);
      else tell.stroke(dx, dy);
    } else if (fingers.size === 2) {
      const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
      if (other) {
        const before = Math.hypot(finger.x - other.x, finger.y - other.y);
        const after = Math.hypot(event.clientX - other.x, event.clientY - other.y);
        const middle = place((event.clientX + other.x) / 2, (event.clientY + other.y) / 2);
        tell.shift(dx / 2, dy / 2);
        if (before > 1 && after > 1) tell.zoom(before / after, middle);
      }
    }
    finger.x = event.clientX;
    finger.y = event.clientY;
  }

  function up(event: PointerEvent): void {
    fingers.delete(event.pointerId);
    if (start && event.timeStamp - start.at < LONG) {
      const box = to.getBoundingClientRect();
      tell.touch(event.clientX - box.left, event.clientY - box.top);
    }
    start = null;
  }

  function cancel(event: PointerEvent): void {
    fingers.delete(event.pointerId);
    start = null;
  }

  function wheel(event: WheelEvent): void {
    event.preventDefault();
    tell.zoom(Math.exp(event.deltaY * WHEEL), place(event.clientX, event.clientY));
  }

  const menu = (event: Event) => event.preventDefault();

  to.addEventListener("pointerdown", down);
  to.addEventListener("pointermove", move);
  to.addEventListener("pointerup", up);
  to.addEventListener("pointercancel", cancel);
  to.addEventListener("wheel", wheel, { passive: false });
  to.addEventListener("contextmenu", menu);
  return () => {
    to.removeEventListener("pointerdown", down);
    to.removeEventListener("pointermove", move);
    to.removeEventListener("pointerup", up);
    to.removeEventListener("pointercancel", cancel);
    to.removeEventListener("wheel", wheel);
    to.removeEventListener("contextmenu", menu);
  };
}
