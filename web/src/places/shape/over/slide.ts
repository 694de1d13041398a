// One finger on a handle, from down to up, in px of the stage it lies on.

import type { Attachment } from "svelte/attachments";

export interface Slide {
  start(x: number, y: number): void;
  move(x: number, y: number): void;
  /** `kept` unless the drag was broken off. */
  end(kept: boolean): void;
}

export function slide(tell: Slide): Attachment<HTMLElement> {
  return (element) => {
    let finger: number | null = null;
    const place = (event: PointerEvent): [number, number] => {
      const box = (element.offsetParent ?? element).getBoundingClientRect();
      return [event.clientX - box.left, event.clientY - box.top];
    };
    const down = (event: PointerEvent) => {
      if (finger !== null) return;
      finger = event.pointerId;
      element.setPointerCapture(finger);
      tell.start(...place(event));
    };
    const move = (event: PointerEvent) => {
      if (event.pointerId === finger) tell.move(...place(event));
    };
    const end = (kept: boolean) => (event: PointerEvent) => {
      if (event.pointerId !== finger) return;
      finger = null;
      tell.end(kept);
    };
    const [up, cancel] = [end(true), end(false)];
    element.addEventListener("pointerdown", down);
    element.addEventListener("pointermove", move);
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", cancel);
    return () => {
      element.removeEventListener("pointerdown", down);
      element.removeEventListener("pointermove", move);
      element.removeEventListener("pointerup", up);
      element.removeEventListener("pointercancel", cancel);
    };
  };
}
